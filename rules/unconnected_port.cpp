// Ports that no line joins, neither inside nor outside an assembly.
#include <algorithm>
#include <optional>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool is_machine(Part part) {
    return part == Part::pump || part == Part::actuator || part == Part::pump_motor;
}

/// Junctions, and what closes or sits on a port (plug, breather): an end more or less hurts nobody.
bool only_joins_or_closes(const Component& component) {
    const Kind& kind = *component.kind;
    return kind.part == Part::plumbing &&
           (kind.children == Children::ports ||
            (kind.children == Children::no && kind.ports.size() == 1));
}

/// Halves with valves close where they are parted, and parted ones have a free end by nature.
bool is_free_coupling(const Circuit& circuit, const Component& component) {
    return circuit.attribute(component, "joined") != nullptr &&
           (!circuit.is_yes(component, "joined") || circuit.choice(component, "valves") != "none");
}

bool asked(const Circuit& circuit, const Component& component) {
    return !component.kind->closes_itself && !is_free_coupling(circuit, component);
}

bool has_drained_case(const FlowGraph& graph, const Component& machine) {
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port)
        if (graph.circuit().ports[port].use == PortUse::drain && !graph.lines_of(port).empty())
            return true;
    return false;
}

Level level_of(const FlowGraph& graph, Index port) {
    const Circuit& circuit = graph.circuit();
    const Component& component = circuit.components[circuit.ports[port].component];
    const Part part = component.kind->part;
    if (part == Part::instrument || part == Part::reservoir || only_joins_or_closes(component))
        return Level::warning;
    switch (circuit.ports[port].use) {
        case PortUse::pilot:
            return Level::warning;
        case PortUse::drain:
            return is_machine(part) && has_drained_case(graph, component) ? Level::warning
                                                                          : Level::error;
        case PortUse::working:
        case PortUse::suction:
        case PortUse::outlet:
            break;
    }
    return Level::error;
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    bool any = false;
    for (Index port = 0; port < circuit.ports.size(); ++port) {
        const Index c = circuit.ports[port].component;
        if (!graph.lines_of(port).empty()) {
            any = true;
            continue;
        }
        if (!asked(circuit, circuit.components[c])) continue;
        Verdict& verdict =
            docket.conclude(ElementType::port, port, Outcome::fail, level_of(graph, port));
        verdict.message = docket.text("no line joins the port ", circuit.port_name(port));
        const Step step{.type = ElementType::component, .index = c, .to = port};
        verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
    }
    if (docket.empty() && any)
        docket.conclude(ElementType::circuit, none, Outcome::pass).message = "every port is joined";
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"missing-drain-port", "isolated-part"};

}  // namespace

extern constinit const Rule unconnected_port{
    .info = {.id = "unconnected-port",
             .family = "Drawing integrity",
             .question = "Does a line join every port?",
             .why = "A port that nothing joins is forgotten on the drawing; built so, oil leaves "
                    "by it under pressure, or the part does not work.",
             .decided = "Each port is looked for in the lines and hoses, inside and outside "
                        "assemblies. Further case ports, pilot ports, ports of instruments, "
                        "reservoirs, junctions, plugs and breathers give a warning. Measuring "
                        "points close themselves, and so do couplings with valves; a parted "
                        "coupling has a free end.",
             .data = "joins",
             .subject = "each port that no line joins; the circuit where there is none",
             .states = "none",
             .level = Level::error,
             .remedy = "Join it where it belongs, or close it with a plug.",
             .sources = sources,
             .follows = follows},
    .conclude = conclude};

}  // namespace loopwright
