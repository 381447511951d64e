// For each hand valve in a suction line: can somebody shut it, and the prime mover start all the
// same?
#include <algorithm>
#include <vector>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/suction_ways.h>

namespace loopwright {

namespace {

bool is_hand_valve(const Edge& edge) { return edge.shift == Shift::hand && !edge.for_towing; }

/// The suction lines of one region: what the reservoirs give oil to and what pumps draw from.
class SuctionLines {
  public:
    /// `in_a_loop`: for each component whether it is a pump of a loop.
    SuctionLines(const FlowGraph& graph, const Region& region,
                 const std::vector<std::uint8_t>& in_a_loop)
        : graph_(graph),
          region_(region),
          in_a_loop_(in_a_loop),
          given_(given(none)),
          drawn_(drawn(none)) {}

    /// A way from a reservoir to the suction port of a pump over the edge; empty if there is none.
    std::vector<FlowArc> way_over(Index e) const {
        const Edge& edge = region_.edges[e];
        std::vector<FlowArc> way = way_over(arc_over(region_, e));
        if (way.empty() && edge.both_ways) way = way_over(arc_over(region_, e, true));
        return way;
    }

  private:
    /// With the oil from all reservoirs, not over the edge `without`.
    Search given(Index without) const {
        Search search;
        search.clear(region_.node_count);
        for (const Index node : region_.reservoirs) search.begin_at(node);
        graph_.work += search.run(region_, [&](Index /*node*/, const FlowArc& arc) {
            return arc.edge != without && region_.is_reservoir[arc.to] == 0 &&
                   draws_over(region_, arc);
        });
        return search;
    }

    /// Against the oil from all pumps, not over the edge `without`.
    Search drawn(Index without) const {
        Search search;
        search.clear(region_.node_count);
        for (const Index c : region_.components) {
            const Index port = suction_port_of(graph_, c);
            // What a pump of a loop takes in is the loop's own oil.
            if (port == none || in_a_loop_[c] != 0) continue;
            const Index node = graph_.node_of(port);
            if (region_.is_reservoir[node] == 0) search.begin_at(node);
        }
        graph_.work += search.run(region_, [&](Index /*node*/, const FlowArc& arc) {
            return arc.edge != without && region_.is_reservoir[arc.to] == 0 &&
                   draws_over(region_, turned_round(region_, arc));
        });
        return search;
    }

    bool by(const Search& search, Index node, Index e) const {
        const Index slot = search.way[node];
        return slot != Search::start && region_.arcs[slot].edge == e;
    }

    std::vector<FlowArc> way_over(const FlowArc& valve) const {
        const Index before = tail(region_, valve);
        if (!given_.reached(before) || !drawn_.reached(valve.to)) return {};
        // A way comes to the valve, or goes on from it, over the valve itself only as its step
        // next to it. Then there may be another way, or the valve may stand on a dead end.
        const bool astray = by(given_, before, valve.edge) || by(drawn_, valve.to, valve.edge);
        if (!astray) return joined(given_, valve, drawn_);
        const Search given_without = given(valve.edge);
        const Search drawn_without = drawn(valve.edge);
        if (!given_without.reached(before) || !drawn_without.reached(valve.to)) return {};
        return joined(given_without, valve, drawn_without);
    }

    std::vector<FlowArc> joined(const Search& given, const FlowArc& valve,
                                const Search& drawn) const {
        std::vector<FlowArc> way;
        given.add_path_to(region_, tail(region_, valve), way);
        way.push_back(valve);
        drawn.add_way_from(region_, valve.to, way);
        return way;
    }

    const FlowGraph& graph_;
    const Region& region_;
    const std::vector<std::uint8_t>& in_a_loop_;
    Search given_;
    Search drawn_;
};

bool drawn_open(const Circuit& circuit, const Component& valve) {
    return circuit.attribute(valve, "position") != nullptr
               ? circuit.choice(valve, "position") == "open"
               : circuit.is_yes(valve, "joined");
}

/// Whether the valve's switch keeps a prime mover from starting while the valve is closed.
bool prevents_start(const Circuit& circuit, Index c) {
    return circuit.is_yes(circuit.components[c], "switched") &&
           std::any_of(circuit.interlocks.begin(), circuit.interlocks.end(),
                       [&](const Interlock& interlock) {
                           return interlock.when == Trigger::closed && interlock.watched == c &&
                                  interlock.prevents == Prevented::start;
                       });
}

Index suction_port_at(const FlowGraph& graph, const Region& region, Index node) {
    for (const Index port : graph.ports_of(region.joints[node])) {
        const Index component = graph.circuit().ports[port].component;
        if (suction_port_of(graph, component) == port) return port;
    }
    return none;
}

void judge_valve(const FlowGraph& graph, const Region& region, Index c,
                 const std::vector<FlowArc>& way, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const Component& valve = circuit.components[c];
    const bool open = drawn_open(circuit, valve);
    const bool locked = circuit.is_yes(valve, "locked");
    const bool watched = prevents_start(circuit, c);
    Verdict& verdict = docket.conclude(ElementType::component, c,
                                       (locked && open) || watched ? Outcome::pass : Outcome::fail);
    if (locked && open)
        verdict.message = docket.text(valve.path, " in the suction line is locked open");
    else if (watched)
        verdict.message = docket.text(
            "with ", valve.path, " in the suction line closed, the prime mover does not start");
    else if (locked)
        verdict.message = docket.text(valve.path, " in the suction line is locked shut");
    else
        verdict.message = docket.text(valve.path,
                                      " in the suction line can be closed: it is neither locked "
                                      "nor does it prevent the start of the prime mover");
    std::vector<Step> steps;
    add_walk(graph, region, way, {.to = suction_port_at(graph, region, way.back().to)}, steps);
    const Index pump = circuit.ports[suction_port_at(graph, region, way.back().to)].component;
    steps.push_back({ElementType::component, pump, suction_port_of(graph, pump), none, "draws"});
    verdict.witness = docket.witness(WitnessShape::path, steps);
}

void judge_region(const FlowGraph& graph, const Region& region,
                  const std::vector<std::uint8_t>& in_a_loop, Docket& docket) {
    if (std::none_of(region.edges.begin(), region.edges.end(), is_hand_valve)) return;
    const SuctionLines lines(graph, region, in_a_loop);
    for (Index e = 0; e < region.edges.size(); ++e) {
        if (!is_hand_valve(region.edges[e])) continue;
        const std::vector<FlowArc> way = lines.way_over(e);
        if (!way.empty()) judge_valve(graph, region, region.edges[e].component, way, docket);
    }
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    std::vector<std::uint8_t> in_a_loop(graph.circuit().components.size(), 0);
    for (const LoopInfo& loop : structure.loops)
        for (const Index pump : loop.pumps) in_a_loop[pump] = 1;
    for (const Region& region : graph.regions()) judge_region(graph, region, in_a_loop, docket);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule suction_shut_off{
    .info = {.id = "suction-shut-off",
             .family = "Suction and reservoir",
             .question = "Is every valve in a suction line locked open, or does a switch on it "
                         "prevent the start?",
             .why = "A pump that starts behind a closed valve runs dry and is destroyed within a "
                    "minute; with the charge pump go braking, brakes and control.",
             .decided = "A valve worked by hand that stands on a way from a reservoir to the "
                        "suction port of a pump is locked and drawn open, or its switch keeps a "
                        "prime mover from starting while it is closed.",
             .data = "joins, position, locked, switched, interlocks",
             .subject = "each hand valve and coupling with valves in a suction line",
             .states = "none",
             .level = Level::error,
             .remedy = "Lock the valve open, or fit a position switch that prevents the start.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
