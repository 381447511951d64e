// For each rotary divider, and each cylinder of unequal areas outside the loops: is there a relief
// valve where it can raise the pressure above that of its supply?
#include <algorithm>
#include <vector>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Whether pressure from the far end of an arc is felt at its near one, whatever the state: then a
/// relief valve there limits it here.
bool relieved_over(const Circuit& circuit, const Edge& edge, bool backward) {
    switch (edge.passage_class) {
        case PassageClass::element:
        case PassageClass::one_way:
            return edge.both_ways || !backward;
        case PassageClass::switched:
            return edge.shift == Shift::position || locked_open(circuit, edge);
        case PassageClass::joined:
        case PassageClass::pressure_opened:
        case PassageClass::reduced:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::displacement:
        case PassageClass::leakage:
            break;
    }
    return false;
}

bool unequal(const Circuit& circuit, const Component& machine) {
    const auto rods = circuit.figure(machine, "rods");
    if (!rods || *rods != 1.0 || machine.passages.size() == 0) return false;
    return circuit.figure(machine, "area-ratio") != 1.0;
}

/// The ports at which a part can raise the pressure.
std::vector<Index> raised_ports(const FlowGraph& graph, const Region& region, std::size_t c) {
    const Circuit& circuit = graph.circuit();
    const Component& component = circuit.components[region.components[c]];
    std::vector<Index> ports;
    for (Index e = region.first_edge[c]; e < region.first_edge[c + 1]; ++e) {
        const Edge& edge = region.edges[e];
        const Passage& passage = circuit.passages[edge.passage];
        if ((edge.passage_class == PassageClass::divider &&
             circuit.choice(component, "design") == "rotary") ||
            (edge.passage_class == PassageClass::displacement && unequal(circuit, component)))
            ports.push_back(passage.to);
    }
    return ports;
}

/// What relief valves limit in a region, searched from their inlets.
void find_relieved(const FlowGraph& graph, const Region& region, Search& relieved) {
    relieved.clear(region.node_count);
    for (const Edge& edge : region.edges)
        if (is_relief(edge)) relieved.begin_at(edge.from);
    graph.work += relieved.run(region, [&](Index /*node*/, const FlowArc& arc) {
        return region.is_reservoir[arc.to] == 0 &&
               relieved_over(graph.circuit(), region.edges[arc.edge], arc.backward == 0);
    });
}

void judge_part(const FlowGraph& graph, const Region& region, Index c,
                const std::vector<Index>& ports, const Search& relieved, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const auto open = std::find_if(ports.begin(), ports.end(), [&](Index port) {
        return !relieved.reached(graph.node_of(port));
    });
    const bool sound = open == ports.end();
    Verdict& verdict =
        docket.conclude(ElementType::component, c, sound ? Outcome::pass : Outcome::fail);
    const std::string_view path = circuit.components[c].path;
    verdict.message =
        sound ? docket.text("a relief valve limits the pressure that ", path, " can raise")
              : docket.text(path, " can raise the pressure at ", circuit.port_name(*open),
                            " above that of its supply, and no relief valve limits it there");
    std::vector<Step> steps;
    steps.push_back(
        {ElementType::component, c, none, sound ? ports.front() : *open, "can raise the pressure"});
    if (sound) {
        std::vector<FlowArc> arcs;
        const Index node = graph.node_of(ports.front());
        relieved.add_way_from(region, node, arcs);
        add_walk(graph, region, arcs, {.from = ports.front()}, steps);
    }
    verdict.witness = docket.witness(WitnessShape::path, steps);
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    std::vector<std::uint8_t> in_a_loop(graph.circuit().components.size(), 0);
    for (const LoopInfo& loop : structure.loops)
        for (const Index actuator : loop.actuators) in_a_loop[actuator] = 1;
    Search relieved;
    for (const Region& region : graph.regions()) {
        bool searched = false;
        for (std::size_t c = 0; c < region.components.size(); ++c) {
            if (in_a_loop[region.components[c]] != 0) continue;
            const std::vector<Index> ports = raised_ports(graph, region, c);
            if (ports.empty()) continue;
            if (!searched) find_relieved(graph, region, relieved);
            searched = true;
            judge_part(graph, region, region.components[c], ports, relieved, docket);
        }
    }
}

constexpr Citation sources[] = {
    {.work = "trade article on flow dividers (the project's row O-20)",
     .place = "a loaded outlet sees up to n times the inlet pressure of n equal sections"},
    {.work = "ISO 4413:2010 (paraphrase; the project's row K03)", .place = "5.2.2"}};

}  // namespace

extern constinit const Rule pressure_intensification{
    .info = {.id = "pressure-intensification",
             .family = "High-pressure protection",
             .question = "Where a rotary divider or unequal areas can raise a pressure above that "
                         "of the supply, does a relief valve limit it?",
             .why = "One outlet of a rotary divider, its others unloaded, or the rod end of a "
                    "cylinder that is held there, sees a multiple of the supply's pressure: far "
                    "more than the relief valve at the pump lets stand. Lines and housings burst.",
             .decided = "From each outlet of a rotary divider, and from the rod end of a cylinder "
                        "outside the loops, the inlet of a relief valve is reached over what "
                        "nobody can close. Motors in series: see intermediate-side.",
             .data = "design of dividers; rods and area-ratio of cylinders; joins",
             .subject = "each rotary divider; each cylinder of unequal areas outside the loops",
             .states = "none",
             .level = Level::error,
             .remedy = "Put a relief valve at each outlet of the divider, at the rod end of the "
                       "cylinder.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
