#include <loopwright/rules/rule.h>
#include <loopwright/rules/waivers.h>

namespace loopwright {

namespace {

/// Whether a stage can move the part: its displacement, or a prime mover's speed, can be changed.
bool can_follow(const Circuit& circuit, const Component& part) {
    return circuit.is_yes(part,
                          part.kind->part == Part::prime_mover ? "variable-speed" : "variable") ||
           circuit.attribute(part, "min-displacement") != nullptr;
}

// Waivers are judged when all other verdicts stand (waivers.h).
void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<bool> judged(circuit.components.size(), false);
    for (const Stage& stage : circuit.stages) {
        if (judged[stage.part]) continue;
        judged[stage.part] = true;
        const Component& part = circuit.components[stage.part];
        const bool follows = can_follow(circuit, part);
        Verdict& verdict = docket.conclude(ElementType::component, stage.part,
                                           follows ? Outcome::pass : Outcome::fail, Level::note);
        verdict.message =
            follows ? docket.text("a command moves ", part.path)
                    : docket.text("a command has a stage of ", part.path,
                                  part.kind->part == Part::prime_mover
                                      ? ", but its speed is not declared variable"
                                      : ", but its displacement is not declared variable");
    }
}

constexpr Citation sources[] = {{.work = "the description itself", .place = {}}};

}  // namespace

extern constinit const Rule unused_definition{
    .info = {.id = "unused-definition",
             .family = "Drawing integrity",
             .question = "Is everything that the description defines of any use?",
             .why = "A waiver that meets no finding, or a command that moves nothing, shows that "
                    "description and machine have drifted apart.",
             .decided = "A stage needs a part whose displacement or speed is variable. A waiver "
                        "needs a finding of its rule on its subject, and a day on which it holds; "
                        "it is judged only where its rule was.",
             .data = "command stages, waivers, the day of the check",
             .subject = "each waiver whose rule was judged, and each part with a command stage",
             .states = "none",
             .level = Level::note,
             .remedy = "Take the definition out, or put right what it refers to.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
