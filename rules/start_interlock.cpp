// For each prime mover of a two-way variable pump: does an interlock let it start in neutral only?
#include <algorithm>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// A two-way variable pump that the prime mover turns; none if it turns none.
Index loop_pump(const FlowGraph& graph, Index mover) {
    const Circuit& circuit = graph.circuit();
    const Index drive = graph.drives().of(mover);
    if (drive == none) return none;
    for (const Index c : graph.drives().members(drive)) {
        if (graph.part(c) != Part::pump) continue;
        const Component& pump = circuit.components[c];
        if (circuit.is_yes(pump, "variable") && circuit.figure(pump, "flow-directions") == 2.0)
            return c;
    }
    return none;
}

bool starts_in_neutral_only(const Circuit& circuit, Index mover) {
    return std::any_of(circuit.interlocks.begin(), circuit.interlocks.end(),
                       [&](const Interlock& interlock) {
                           return interlock.when == Trigger::off_neutral &&
                                  interlock.prevents == Prevented::start && interlock.held == mover;
                       });
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (const Index c : graph.components_with(Part::prime_mover)) {
        const Component& mover = circuit.components[c];
        const Index pump = loop_pump(graph, c);
        if (pump == none) continue;
        const bool sound = starts_in_neutral_only(circuit, c);
        Verdict& verdict = docket.conclude(ElementType::component, c,
                                           circuit.commands.empty() ? Outcome::not_applicable
                                           : sound                  ? Outcome::pass
                                                                    : Outcome::fail,
                                           Level::warning);
        const Step steps[] = {{.type = ElementType::component, .index = c, .text = "starts"},
                              {.type = ElementType::component, .index = pump, .text = "turned"}};
        verdict.witness = docket.witness(WitnessShape::set, steps);
        if (circuit.commands.empty())
            verdict.message = "the file states no command, so nothing tells neutral";
        else
            verdict.message = docket.text(mover.path, sound ? " starts in neutral only"
                                                            : " can be started while a command "
                                                              "stands off neutral");
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule start_interlock{
    .info = {.id = "start-interlock",
             .family = "Control and stopping",
             .question = "Does the prime mover start in neutral only?",
             .why = "A machine that moves off when its engine is started crushes whoever stands "
                    "before it.",
             .decided = "An interlock prevents the start of the prime mover while a command is "
                        "off neutral.",
             .data = "commands, interlocks, shafts",
             .subject = "each prime mover that turns a variable two-way pump",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a neutral switch at lever or pedal and state the interlock: "
                       "when=\"Z1 off-neutral\" prevents=\"start E1\".",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
