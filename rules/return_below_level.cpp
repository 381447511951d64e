// Ports of reservoirs at which lines end: below the oil level? Those of drains have a rule of
// their own.
#include <algorithm>

#include <loopwright/rules/drain_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// A component that lets no oil into or out of a reservoir: instrument, breather, plug.
bool passes_no_oil(const Component& component) {
    return component.kind->part == Part::instrument ||
           (component.kind->part == Part::plumbing && component.passages.size() == 0);
}

/// Whether a line leads from the port to something that oil can flow to or from.
bool has_oil(const FlowGraph& graph, Index port) {
    const Circuit& circuit = graph.circuit();
    const Pipes& pipes = graph.pipes();
    const auto ports = pipes.ports_of(pipes.of(port));
    return std::any_of(ports.begin(), ports.end(), [&](Index other) {
        const Index component = circuit.ports[other].component;
        return component != circuit.ports[port].component &&
               !passes_no_oil(circuit.components[component]);
    });
}

void judge(const Circuit& circuit, Index index, Docket& docket) {
    const Port& port = circuit.ports[index];
    const std::string name = circuit.port_name(index);
    const Outcome outcome = !port.level_given  ? Outcome::inconclusive
                            : port.below_level ? Outcome::pass
                                               : Outcome::fail;
    Verdict& verdict = docket.conclude(ElementType::port, index, outcome, Level::warning);
    const Step step{ElementType::component, port.component, index, none, "where the line ends"};
    verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
    if (!port.level_given) {
        const std::string_view datum = docket.text(name, ".level");
        verdict.missing = docket.missing({&datum, 1});
        verdict.message = docket.text("whether ", name, " ends below the oil level is not given");
    } else {
        verdict.message =
            docket.text("the line at ", name, port.below_level ? " ends below" : " ends above",
                        " the oil level");
    }
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<std::uint8_t> drained(circuit.ports.size(), 0);
    for_each_drain_return(graph, [&](const DrainReturn& found) { drained[found.port] = 1; });
    for (const Index c : graph.components_with(Part::reservoir)) {
        const Range ports = circuit.components[c].ports;
        for (Index port = ports.begin; port < ports.end; ++port)
            if (drained[port] == 0 && has_oil(graph, port)) judge(circuit, port, docket);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K26)", .place = "5.4.5"}};

}  // namespace

extern constinit const Rule return_below_level{
    .info = {.id = "return-below-level",
             .family = "Suction and reservoir",
             .question = "Does every line that ends in a reservoir end below the oil level?",
             .why = "Oil that falls into the reservoir from above the level takes air with it, and "
                    "a suction line above the level draws air: the pump cavitates, and what it "
                    "drives moves by jerks or not at all.",
             .decided = "Each reservoir port that a line leads to, but those of drains, "
                        "instruments, breathers and plugs, is given as below the level.",
             .data = "joins, level of reservoir ports",
             .subject = "each reservoir port with a line that is no drain",
             .states = "none",
             .level = Level::warning,
             .remedy = "Lead the line down to below the lowest oil level.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
