// For each port of a reservoir that a housing drains to: does it end below the oil level, and apart
// from the suction lines?
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/drain_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// The suction port of a pump on a pipe; `none` if there is none.
Index suction_port_on(const FlowGraph& graph, Index pipe) {
    const auto ports = graph.pipes().ports_of(pipe);
    const auto found = std::find_if(ports.begin(), ports.end(), [&](Index p) {
        const Port& port = graph.circuit().ports[p];
        return port.use == PortUse::suction && graph.part(port.component) == Part::pump;
    });
    return found == ports.end() ? none : *found;
}

/// A case port that stands on a node.
Index case_port_at(const FlowGraph& graph, const Region& region, Index node) {
    const auto ports = graph.ports_of(region.joints[node]);
    const auto found = std::find_if(ports.begin(), ports.end(), [&](Index port) {
        return case_port_of(graph, graph.circuit().ports[port].component) != none &&
               graph.circuit().ports[port].use == PortUse::drain;
    });
    return found == ports.end() ? none : *found;
}

/// From the housing to the reservoir port.
Witness way_of(const FlowGraph& graph, Docket& docket, const DrainReturn& found) {
    const Region& region = *found.region;
    constexpr std::size_t mostly = 16;  // elements of a way, or fewer
    std::vector<FlowArc> arcs;
    arcs.reserve(mostly);
    Index from = found.case_port;
    if (from == none) {
        found.search->add_path_to(region, tail(region, found.last), arcs);
        arcs.push_back(found.last);
        from = case_port_at(graph, region, tail(region, arcs.front()));
    }
    const Circuit& circuit = graph.circuit();
    std::vector<Step> steps;
    steps.reserve(mostly);
    steps.push_back({ElementType::component, circuit.ports[from].component, none, from, "housing"});
    add_walk(graph, region, arcs, {.from = from, .to = found.port}, steps);
    steps.push_back({ElementType::component, circuit.ports[found.port].component, found.port, none,
                     "reservoir"});
    return docket.witness(WitnessShape::path, steps);
}

void judge(const FlowGraph& graph, Docket& docket, const DrainReturn& found) {
    const Circuit& circuit = graph.circuit();
    const Port& port = circuit.ports[found.port];
    const Index suction = suction_port_on(graph, graph.pipes().of(found.port));
    const std::string name = circuit.port_name(found.port);
    const bool above = port.level_given && !port.below_level;
    const Outcome outcome = above || suction != none ? Outcome::fail
                            : port.level_given       ? Outcome::pass
                                                     : Outcome::inconclusive;
    Verdict& verdict = docket.conclude(ElementType::port, found.port, outcome, Level::warning);
    verdict.witness = way_of(graph, docket, found);
    if (above) {
        verdict.message = docket.text("the drain that ends at ", name, " ends above the oil level");
    } else if (suction != none) {
        verdict.message = docket.text("the hot oil of the drain that ends at ", name,
                                      " is drawn in again at "
                                      "once: ",
                                      circuit.port_name(suction), " is on the same pipe");
    } else if (outcome == Outcome::pass) {
        verdict.message = docket.text("the drain that ends at ", name,
                                      " ends below the oil level, apart from suction lines");
    } else {
        const std::string_view datum = docket.text(name, ".level");
        verdict.missing = docket.missing({&datum, 1});
        verdict.message = docket.text("whether ", name, " ends below the oil level is not given");
    }
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    for_each_drain_return(graph, [&](const DrainReturn& found) { judge(graph, docket, found); });
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K26)", .place = "5.4.5"}};

}  // namespace

extern constinit const Rule case_drain_return{
    .info = {.id = "case-drain-return",
             .family = "Case drain",
             .question = "Does every housing drain end in the reservoir below the oil level and "
                         "apart from the suction lines?",
             .why = "A drain that ends above the level lets its housing run empty at rest and "
                    "foams the oil; one that ends in a suction line gives its hot, foaming oil "
                    "straight to the pump, which wears until the drive loses its pressure.",
             .decided = "From all housings drained outside by every way that can stand open, but "
                        "leakage and machines: each reservoir port whose pipe is reached ends "
                        "below the level, and no pump draws from the same pipe.",
             .data = "drain, joins, level of reservoir ports",
             .subject = "each reservoir port that a drain leads to",
             .states = "none",
             .level = Level::warning,
             .remedy = "Lead the drain to a reservoir port of its own that ends below the lowest "
                       "oil level, away from the suction port.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
