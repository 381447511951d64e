// Components with a passage whose two ends are joined outside the component.
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Leakage and an element's bypass lead where other passages lead too.
bool counts(const Passage& passage) {
    return passage.passage != PassageClass::joined && passage.passage != PassageClass::leakage &&
           !passage.bypass;
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const std::vector<Index>& node = structure.node_of_port;
    bool any = false;
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        for (const Passage& passage : circuit.passages_of(component)) {
            if (!counts(passage)) continue;
            any = true;
            if (node[passage.from] != node[passage.to]) continue;
            Verdict& verdict = docket.conclude(ElementType::component, c, Outcome::fail);
            verdict.message = docket.text("the ports ", circuit.ports[passage.from].letter, " and ",
                                          circuit.ports[passage.to].letter, " of ", component.path,
                                          " are joined for good");
            const Step step{ElementType::component, c, passage.from, passage.to, {}};
            verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
            break;
        }
    }
    if (docket.empty() && any)
        docket.conclude(ElementType::circuit, none, Outcome::pass).message =
            "no component's ports are joined past it for good";
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule shorted_ports{
    .info = {.id = "shorted-ports",
             .family = "Drawing integrity",
             .question = "Does every component stand between two different lines?",
             .why = "What has the same line at both its ports does nothing: a relief valve does "
                    "not protect, a motor does not turn and does not brake.",
             .decided = "For each passage of a component, leakage and bypasses left out: its two "
                        "ports are not joined by lines, hoses and junctions.",
             .data = "joins",
             .subject = "each component so joined; the circuit where there is none",
             .states = "all, as no state changes it",
             .level = Level::error,
             .remedy = "Lead one of the two ports where it belongs.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
