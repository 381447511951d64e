// Components that neither a line nor a shaft joins to anything.
#include <algorithm>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Instruments and what closes or sits on a single port (plug, breather) show by themselves that
/// they are joined to nothing.
bool asked(const Component& component) {
    const Kind& kind = *component.kind;
    return kind.part != Part::instrument &&
           !(kind.part == Part::plumbing && kind.children == Children::no &&
             kind.ports.size() == 1);
}

bool joined_by_line(const FlowGraph& graph, const Component& component) {
    for (Index port = component.ports.begin; port < component.ports.end; ++port)
        if (!graph.lines_of(port).empty()) return true;
    return false;
}

bool shares_shaft(const Circuit& circuit, Index c) {
    const Component& component = circuit.components[c];
    for (const Index shaft : {component.shaft, component.far_shaft}) {
        if (shaft == none) continue;
        const auto members = circuit.components_of(circuit.shafts[shaft]);
        if (std::any_of(members.begin(), members.end(), [&](Index other) { return other != c; }))
            return true;
    }
    return false;
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    bool any = false;
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        if (!asked(component)) continue;
        any = true;
        if (joined_by_line(graph, component) || shares_shaft(circuit, c)) continue;
        Verdict& verdict =
            docket.conclude(ElementType::component, c, Outcome::fail, Level::warning);
        verdict.message =
            docket.text("neither a line nor a shaft joins ", component.path, " to anything");
        const Step step{.type = ElementType::component, .index = c};
        verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
    }
    if (docket.empty() && any)
        docket.conclude(ElementType::circuit, none, Outcome::pass).message =
            "every component is joined to another";
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule isolated_part{
    .info = {.id = "isolated-part",
             .family = "Drawing integrity",
             .question = "Is every component joined to another, by a line or a shaft?",
             .why = "What is joined to nothing does nothing: a relief valve, say, that protects "
                    "on paper only.",
             .decided = "No line joins a port of it, and it shares no shaft with another "
                        "component. Instruments, plugs and breathers are not asked.",
             .data = "joins, shafts",
             .subject = "each component so isolated; the circuit where there is none",
             .states = "none",
             .level = Level::warning,
             .remedy = "Join it where it belongs, or take it out of the description.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
