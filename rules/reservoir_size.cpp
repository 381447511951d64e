// For each reservoir that charge pumps draw from: how long does its oil stay in it? The oil volume
// over what the charge pumps deliver at the rated speed of what turns them.
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <loopwright/graph/search.h>
#include <loopwright/graph/structure.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/suction_ways.h>

namespace loopwright {

namespace {

constexpr std::string_view least_dwell = "dwell";

/// How fast the shafts turn when the nearest prime mover turns at its rated speed; of several on
/// one shaft the fastest.
class ShaftSpeeds {
  public:
    explicit ShaftSpeeds(const Circuit& circuit)
        : circuit_(circuit), shafts_(circuit.shafts.size()) {
        std::vector<Index> queue;
        for (Index shaft = 0; shaft < shafts_.size(); ++shaft)
            if (turned_directly(shaft)) queue.push_back(shaft);
        for (std::size_t i = 0; i < queue.size(); ++i) turn_on(queue[i], queue);
    }

    /// rad/s; nothing where a figure is missing.
    std::optional<double> of(Index shaft) const {
        return shaft == none ? std::nullopt : shafts_[shaft].speed;
    }

    /// The figures that the speed of a shaft hangs on and the file does not give.
    void add_missing(Index shaft, std::vector<std::string>& missing) const {
        for (; shaft != none && shafts_[shaft].by != none; shaft = shafts_[shaft].before) {
            const Component& by = circuit_.components[shafts_[shaft].by];
            if (by.kind->part == Part::gearbox && !circuit_.figure(by, "ratio"))
                missing.push_back(std::string(by.path) + ".ratio");
            if (shafts_[shaft].before != none) continue;
            for (const Index c : circuit_.components_of(circuit_.shafts[shaft]))
                if (is_mover(c) && !circuit_.figure(circuit_.components[c], "speed"))
                    missing.push_back(std::string(circuit_.components[c].path) + ".speed");
        }
    }

  private:
    struct Turned {
        Index by = none;      ///< component: a prime mover, or what passes its torque on
        Index before = none;  ///< shaft that it is turned from
        std::optional<double> speed = {};
    };

    bool is_mover(Index c) const { return circuit_.components[c].kind->part == Part::prime_mover; }

    /// Whether prime movers stand on a shaft. Its speed is known where that of all of them is.
    bool turned_directly(Index shaft) {
        Turned turned;
        for (const Index c : circuit_.components_of(circuit_.shafts[shaft])) {
            if (!is_mover(c)) continue;
            const std::optional<double> speed = circuit_.figure(circuit_.components[c], "speed");
            const bool first = turned.by == none;
            turned.by = c;
            if (!speed || (!first && !turned.speed))
                turned.speed.reset();
            else if (first || *turned.speed < *speed)
                turned.speed = speed;
        }
        shafts_[shaft] = turned;
        return turned.by != none;
    }

    /// To the shafts that gearboxes and engaged clutches turn from this one.
    void turn_on(Index shaft, std::vector<Index>& queue) {
        for (const Index c : circuit_.components_of(circuit_.shafts[shaft])) {
            const Component& between = circuit_.components[c];
            if (between.shaft == none || between.far_shaft == none) continue;
            const Part part = between.kind->part;
            if (!passes_torque(circuit_, between)) continue;
            const bool ahead = between.shaft == shaft;
            const Index next = ahead ? between.far_shaft : between.shaft;
            if (shafts_[next].by != none) continue;
            std::optional<double> speed = shafts_[shaft].speed;
            if (part == Part::gearbox && speed) {
                const std::optional<double> ratio = circuit_.figure(between, "ratio");
                if (ratio)
                    *speed = ahead ? *speed / *ratio : *speed * *ratio;
                else
                    speed.reset();
            }
            shafts_[next] = {c, shaft, speed};
            queue.push_back(next);
        }
    }

    const Circuit& circuit_;
    std::vector<Turned> shafts_;
};

/// The charge pumps that draw from a reservoir.
struct Drawn {
    Index reservoir = none;  ///< component
    std::vector<Index> pumps = {};
};

/// Gathers for each reservoir the charge pumps that draw from it.
class DrawnFrom {
  public:
    explicit DrawnFrom(const FlowGraph& graph)
        : graph_(graph), slot_(graph.circuit().components.size(), none) {}

    void add(Index pump) {
        const Index port = suction_port_of(graph_, pump);
        if (port == none) return;
        const Region& region = graph_.regions()[graph_.region_of(pump)];
        search_.clear(region.node_count);
        search_.begin_at(graph_.node_of(port));
        graph_.work += search_.run(region, [&](Index node, const FlowArc& arc) {
            return region.is_reservoir[node] == 0 && draws_over(region, turned_round(region, arc));
        });
        for (const Index node : region.reservoirs)
            if (search_.reached(node)) add_reservoirs(region.joints[node], pump);
    }

    std::vector<Drawn>& all() { return all_; }

  private:
    void add_reservoirs(Index joint, Index pump) {
        const Circuit& circuit = graph_.circuit();
        for (const Index port : graph_.ports_of(joint)) {
            const Index c = circuit.ports[port].component;
            if (circuit.components[c].kind->part != Part::reservoir) continue;
            if (slot_[c] == none) {
                slot_[c] = static_cast<Index>(all_.size());
                all_.push_back({c, {}});
            }
            std::vector<Index>& pumps = all_[slot_[c]].pumps;
            if (pumps.empty() || pumps.back() != pump) pumps.push_back(pump);
        }
    }

    const FlowGraph& graph_;
    std::vector<Index> slot_;  // by component, into all_
    std::vector<Drawn> all_;
    Search search_;
};

/// What the pumps deliver, m3/s, with what is missing for it.
struct Demand {
    double flow = 0.0;
    std::vector<std::string> missing = {};
};

Demand demand_of(const Circuit& circuit, const ShaftSpeeds& speeds, const Drawn& drawn) {
    Demand demand;
    for (const Index p : drawn.pumps) {
        const Component& pump = circuit.components[p];
        const std::optional<double> displacement = circuit.figure(pump, "displacement");
        const std::optional<double> speed = speeds.of(pump.shaft);
        if (!displacement) demand.missing.push_back(std::string(pump.path) + ".displacement");
        if (!speed) speeds.add_missing(pump.shaft, demand.missing);
        if (displacement && speed) demand.flow += *displacement * *speed;
    }
    return demand;
}

void inconclusive(const Circuit& circuit, Docket& docket, Index c, bool volume_given,
                  const std::vector<std::string>& missing) {
    const Component& reservoir = circuit.components[c];
    Verdict& verdict =
        docket.conclude(ElementType::component, c, Outcome::inconclusive, Level::warning);
    std::vector<std::string_view> data;
    if (!volume_given) data.push_back(docket.text(reservoir.path, ".volume"));
    for (const std::string& datum : missing) {
        const std::string_view kept = docket.text(datum);
        if (std::find(data.begin(), data.end(), kept) == data.end()) data.push_back(kept);
    }
    verdict.missing = docket.missing(data);
    verdict.message = docket.text(
        volume_given ? "the flow of the charge pumps that draw from " : "the oil volume of ",
        reservoir.path, volume_given ? " is not known" : " is not given");
}

void judge(const Circuit& circuit, const ShaftSpeeds& speeds, const Drawn& drawn, Docket& docket) {
    const Component& reservoir = circuit.components[drawn.reservoir];
    const std::optional<double> volume = circuit.figure(reservoir, "volume");
    const Demand demand = demand_of(circuit, speeds, drawn);
    if (!volume || !demand.missing.empty()) {
        inconclusive(circuit, docket, drawn.reservoir, volume.has_value(), demand.missing);
        return;
    }
    const double required = docket.threshold(least_dwell);
    const double dwell = *volume / demand.flow;
    const bool enough = dwell >= required * (1 - 1e-9);  // 30 L are half of 60 L/min
    Verdict& verdict = docket.conclude(ElementType::component, drawn.reservoir,
                                       enough ? Outcome::pass : Outcome::fail, Level::warning);
    verdict.message =
        docket.text("the ", docket.told(*volume, Dimension::volume), " of ", reservoir.path,
                    " are ", docket.told(dwell, Dimension::time), " of the charge flow of ",
                    docket.told(demand.flow, Dimension::flow), "; at least ",
                    docket.told(required, Dimension::time), " are asked for");
    verdict.figures = docket.figures({.measured = {dwell, Dimension::time},
                                      .required = Measure{required, Dimension::time},
                                      .margin = Measure{dwell - required, Dimension::time}});
    std::vector<Step> steps{{ElementType::component, drawn.reservoir, none, none, "reservoir"}};
    for (const Index pump : drawn.pumps)
        steps.push_back({ElementType::component, pump, none, none, "draws from it"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    if (structure.charge_pumps.empty()) return;
    DrawnFrom drawn(graph);
    for (const Index pump : structure.charge_pumps) drawn.add(pump);
    const ShaftSpeeds speeds(graph.circuit());
    for (const Drawn& one : drawn.all()) judge(graph.circuit(), speeds, one, docket);
}

constexpr Citation sources[] = {
    {.work = "US Army TM 5-3895-346-14 (the project's row C-25)",
     .place = "pages 480-482, installing a hydrostatic system: fluid of at least half the charge "
              "flow per minute, 30 s of dwell"}};
constexpr Threshold thresholds[] = {
    {.name = least_dwell,
     .dimension = Dimension::time,
     .value = 30.0,
     .doc = "least oil volume of a reservoir over the flow of the charge pumps that draw from it",
     .example = "30 s",
     .source = sources[0]}};

}  // namespace

extern constinit const Rule reservoir_size{
    .info = {.id = "reservoir-size",
             .family = "Suction and reservoir",
             .question = "Does the oil stay in the reservoir long enough?",
             .why = "Oil that is drawn in again at once brings its air, dirt and heat back: the "
                    "charge pump cavitates, and the drive loses its charge pressure.",
             .decided = "The oil volume at the normal level, over the flow of the charge pumps "
                        "that draw from the reservoir (displacement times the rated speed of what "
                        "turns them), is at least the threshold.",
             .data = "volume, displacement, speed of prime movers, ratio of gearboxes",
             .subject = "each reservoir that a charge pump draws from",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a larger reservoir.",
             .sources = sources,
             .thresholds = thresholds},
    .conclude = conclude};

}  // namespace loopwright
