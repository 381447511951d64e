// Machines that are drained outside and have no line at any case port.
#include <algorithm>

#include <loopwright/rules/drain_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

void judge(const FlowGraph& graph, Index c, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const Component& machine = circuit.components[c];
    Index drained = none;
    Index first = none;
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port) {
        if (circuit.ports[port].use != PortUse::drain) continue;
        if (first == none) first = port;
        if (drained == none && !graph.lines_of(port).empty()) drained = port;
    }
    const bool sound = drained != none;
    Verdict& verdict =
        docket.conclude(ElementType::component, c, sound ? Outcome::pass : Outcome::fail);
    verdict.message = sound ? docket.text("a line drains the housing of ", machine.path)
                            : docket.text("no line is joined to a case port of ", machine.path,
                                          ", whose leakage leaves by its housing");
    const Step step{ElementType::component, c, none, sound ? drained : first,
                    sound ? "drained here" : "no line"};
    verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    for (Index c = 0; c < graph.circuit().components.size(); ++c)
        if (case_port_of(graph, c) != none) judge(graph, c, docket);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule missing_drain_port{
    .info = {.id = "missing-drain-port",
             .family = "Case drain",
             .question =
                 "Is a line joined to the housing of every machine that is drained outside?",
             .why = "What leaks into a closed housing fills it to the pressure of the loop: the "
                    "shaft seal blows out and hot oil sprays, or the housing bursts.",
             .decided = "At least one of the machine's case ports is joined by a line.",
             .data = "drain, joins",
             .subject = "each machine drained outside",
             .states = "none",
             .level = Level::error,
             .remedy = "Lead a drain from the highest case port to the reservoir.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
