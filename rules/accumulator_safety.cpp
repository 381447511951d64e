// For each accumulator, the machine stopped: it has lost its oil, or somebody can let it out or
// keep it in; and a relief valve and something that shows its pressure stand at it for good. Each
// is one search against the oil for all accumulators.
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/pressure_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Against the oil from some nodes, by sure ways.
template <typename Begin>
SearchPool::Lease leading_to(const Situation& s, bool hand_valves_opened, Begin begin) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    begin(*search);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        if (s.region.is_reservoir[arc.to] != 0) return false;
        return (hand_valves_opened && edge.shift == Shift::hand) ||
               (sure(edge) && stands_open_back(s.standing, arc));
    });
    return search;
}

/// What a stopped machine's accumulators lead to.
struct Surroundings {
    explicit Surroundings(const Situation& s)
        : discharged(leading_to(s, true,
                                [&](Search& search) {
                                    for (const Index node : s.region.reservoirs)
                                        search.begin_at(node);
                                })),
          relieved(leading_to(s, false,
                              [&](Search& search) {
                                  for (const Edge& edge : s.region.edges)
                                      if (is_relief(edge)) search.begin_at(edge.from);
                              })),
          shown(leading_to(s, false, [&](Search& search) {
              const Circuit& circuit = s.circuit();
              for (const Index port : s.region.guests)
                  if (shows_pressure(circuit, circuit.components[circuit.ports[port].component]))
                      search.begin_at(s.graph.node_of(port));
          })) {}

    SearchPool::Lease discharged;
    SearchPool::Lease relieved;
    SearchPool::Lease shown;
};

/// Whether every way out of a node is one that somebody can shut, but for relief valves, which stay
/// shut at rest.
bool isolated(const Situation& s, Index node) {
    const auto arcs = s.region.arcs_of(node);
    const bool any = std::any_of(arcs.begin(), arcs.end(), [&](const FlowArc& arc) {
        return s.region.edges[arc.edge].shift == Shift::hand;
    });
    return any && std::all_of(arcs.begin(), arcs.end(), [&](const FlowArc& arc) {
               const Edge& edge = s.region.edges[arc.edge];
               return edge.shift == Shift::hand || (is_relief(edge) && arc.backward == 0);
           });
}

/// The way from the accumulator to where such a search began.
void add_way(const Situation& s, const Search& search, Index port, std::vector<Step>& steps) {
    std::vector<FlowArc>& arcs = s.searches.path();
    search.add_way_from(s.region, s.graph.node_of(port), arcs);
    add_walk(s.graph, s.region, arcs, {.from = port}, steps);
}

Witness around(const Situation& s, Docket& docket, Index port, WitnessShape shape,
               const Search* way) {
    std::vector<Step>& steps = s.searches.steps();
    const Index c = s.circuit().ports[port].component;
    steps.push_back({ElementType::component, c, none, port, "stays charged"});
    if (way != nullptr) add_way(s, *way, port, steps);
    if (shape == WitnessShape::frontier) {
        const auto search = s.searches.take(s.region.node_count);
        search->begin_at(s.graph.node_of(port));
        s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
            const Edge& edge = s.region.edges[arc.edge];
            return (sure(edge) || edge.shift == Shift::hand) && stands_open(s.standing, arc);
        });
        add_frontier(s.graph, s.region, s.standing, *search, true, steps);
    }
    return docket.witness(shape, steps);
}

void judge_one(const Situation& s, Docket& docket, const Surroundings& at, Index port) {
    const Index node = s.graph.node_of(port);
    const Index c = s.circuit().ports[port].component;
    const std::string_view path = s.circuit().components[c].path;
    const bool safe =
        s.feeds.vented[node] != 0 || at.discharged->reached(node) || isolated(s, node);
    const bool relieved = at.relieved->reached(node);
    const bool shown = at.shown->reached(node);
    const bool pass = safe && relieved && shown;
    Verdict* verdict =
        docket.record(s, ElementType::component, c, s.states, pass ? Outcome::pass : Outcome::fail,
                      safe ? Level::warning : Level::error);
    if (verdict == nullptr) return;
    if (!safe) {
        verdict->message = docket.text("with the machine stopped ", path,
                                       " stays charged: nothing discharges it or shuts it off");
        verdict->witness = around(s, docket, port, WitnessShape::frontier, nullptr);
        return;
    }
    if (pass)
        verdict->message = docket.text(path,
                                       " can be discharged or shut off, has a relief valve "
                                       "and something that shows its pressure");
    else
        verdict->message =
            docket.text(path, " lacks ", relieved ? "" : "a relief valve that cannot be shut off",
                        relieved || shown ? "" : ", and ",
                        shown ? "" : "a gauge, measuring point or pressure sensor");
    verdict->witness = around(s, docket, port, WitnessShape::path,
                              at.discharged->reached(node) ? &*at.discharged : nullptr);
}

void judge(const Situation& s, Docket& docket) {
    std::optional<Surroundings> surroundings;
    for (const Index port : s.region.guests) {
        if (s.graph.part(s.circuit().ports[port].component) != Part::accumulator) continue;
        if (!surroundings) surroundings.emplace(s);
        judge_one(s, docket, *surroundings, port);
    }
}

/// Those that no line leads on from.
void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (const Index c : graph.components_with(Part::accumulator)) {
        const Component& component = circuit.components[c];
        if (docket.has(ElementType::component, c) || graph.on_reservoir(component.ports.begin))
            continue;
        Verdict& verdict = docket.conclude(ElementType::component, c, Outcome::fail);
        verdict.message =
            docket.text("nothing discharges ", component.path, ": no line leads on from it");
        const Step step{.type = ElementType::component, .index = c, .text = "stays charged"};
        verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K13 and K15)", .place = "5.4.3"}};

}  // namespace

extern constinit const Rule accumulator_safety{
    .info = {.id = "accumulator-safety",
             .family = "Control and stopping",
             .question = "Can each accumulator be discharged or shut off, is its pressure limited, "
                         "and can it be seen?",
             .why = "An accumulator stays charged when the machine stands: whoever loosens a "
                    "fitting is hit by oil under pressure, or what it feeds moves.",
             .decided =
                 "With the machine stopped its port drains to a reservoir, or does once "
                 "hand valves are opened, or hand valves and relief valves alone lead away from "
                 "it. A relief "
                 "valve, and a gauge, measuring point or pressure sensor, are reached from "
                 "it through nothing that can be closed.",
             .data = "joins, valve positions, locked",
             .subject = "each accumulator",
             .states = "stopped",
             .level = Level::error,
             .remedy = "Fit a safety block: shut-off valve, discharge valve to the reservoir, "
                       "relief valve and measuring point at the accumulator's own port.",
             .sources = sources},
    .asked = bit(State::stopped),
    .judge = judge,
    .conclude = conclude};

}  // namespace loopwright
