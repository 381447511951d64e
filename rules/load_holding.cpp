// For each load that can drive its motor: what holds it while the machine stands, whatever becomes
// of the loop.
#include <algorithm>
#include <optional>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/pipes.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

using FewIndices = boost::container::small_vector<Index, 4>;

/// A brake that a spring applies, on the load's drive; else none.
Index holding_brake(const FlowGraph& graph, Index drive) {
    const Circuit& circuit = graph.circuit();
    for (const Index c : graph.drives().members(drive)) {
        const Component& brake = circuit.components[c];
        if (brake.kind->part == Part::brake && circuit.choice(brake, "applied") == "spring" &&
            circuit.choice(brake, "use") != "service")
            return c;
    }
    return none;
}

FewIndices actuators_on(const FlowGraph& graph, Index drive) {
    FewIndices found;
    for (const Index c : graph.drives().members(drive))
        if (graph.part(c) == Part::actuator) found.push_back(c);
    return found;
}

/// Whether at this port of a valve oil gets out freely towards the actuator, and back only once a
/// pressure or a pilot opens the way: counterbalance valve, check opened by a pilot. A relief valve
/// with a check has its inlet there. A passage whose two ends are in one pipe holds nothing.
bool holds_at(const FlowGraph& graph, Index port) {
    const Circuit& circuit = graph.circuit();
    const Pipes& pipes = graph.pipes();
    if (circuit.ports[port].use == PortUse::suction) return false;
    bool free_in = false;
    bool opened_back = false;
    bool open_back = false;
    for (const Passage& passage :
         circuit.passages_of(circuit.components[circuit.ports[port].component])) {
        if (pipes.of(passage.from) == pipes.of(passage.to)) continue;
        if (passage.to == port && passage.passage == PassageClass::one_way) free_in = true;
        const bool out = passage.from == port || (passage.to == port && passage.both_ways);
        if (!out) continue;
        if (passage.passage == PassageClass::pressure_opened || passage.shift == Shift::pilot_opens)
            opened_back = true;
        else
            open_back = true;
    }
    return free_in && opened_back && !open_back;
}

/// A valve that holds the oil in an actuator, right at one of its working ports; else none.
Index holding_valve(const FlowGraph& graph, Index actuator) {
    const Circuit& circuit = graph.circuit();
    const Pipes& pipes = graph.pipes();
    const Component& component = circuit.components[actuator];
    for (Index port = component.ports.begin; port < component.ports.end; ++port) {
        if (circuit.ports[port].use != PortUse::working) continue;
        for (const Index other : pipes.ports_of(pipes.of(port)))
            if (holds_at(graph, other)) return circuit.ports[other].component;
    }
    return none;
}

void judge_load(const FlowGraph& graph, Index load, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const std::string_view path = circuit.components[load].path;
    const Index drive = graph.drives().of(load);
    std::vector<Step> steps{{.type = ElementType::component, .index = load, .text = "can drive"}};
    const auto record = [&](Outcome outcome, std::string_view message) {
        Verdict& verdict = docket.conclude(ElementType::component, load, outcome);
        verdict.message = message;
        verdict.witness = docket.witness(WitnessShape::set, steps);
    };
    if (drive == none) {
        record(Outcome::fail, docket.text("nothing holds ", path, ": it is on no shaft"));
        return;
    }
    if (const Index brake = holding_brake(graph, drive); brake != none) {
        steps.push_back({.type = ElementType::component, .index = brake, .text = "holds it"});
        record(Outcome::pass, docket.text("the spring of ", circuit.components[brake].path,
                                          " holds ", path, " at rest"));
        return;
    }
    const FewIndices actuators = actuators_on(graph, drive);
    bool held = !actuators.empty();
    for (const Index actuator : actuators) {
        const Index valve = holding_valve(graph, actuator);
        held = held && valve != none;
        steps.push_back({.type = ElementType::component,
                         .index = valve != none ? valve : actuator,
                         .text = valve != none ? "holds its oil" : "not held"});
    }
    record(held ? Outcome::pass : Outcome::fail,
           held ? docket.text("a valve at each actuator holds ", path, " at rest")
                : docket.text("nothing but the loop holds ", path,
                              " at rest: no brake that a spring applies, and no load-holding "
                              "valve at each actuator"));
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (const Index c : graph.components_with(Part::load))
        if (circuit.is_yes(circuit.components[c], "overrunning")) judge_load(graph, c, docket);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K11)", .place = "5.4.7"}};

}  // namespace

extern constinit const Rule load_holding{
    .info = {.id = "load-holding",
             .family = "Control and stopping",
             .question = "Does something hold a load that can drive its motor when loop, hose or "
                         "drive fails?",
             .why = "A motor leaks, and a hose can burst: a load that nothing but the loop holds "
                    "comes down, or the machine rolls off, onto whoever is below.",
             .decided = "On the load's drive stands a brake that a spring applies and that is not "
                        "for service alone; or at a working port of each actuator there, in the "
                        "same pipe, a counterbalance valve or a check that a pilot opens.",
             .data = "overrunning, applied, use, shafts, joins",
             .subject = "each load that can drive its motor",
             .states = "none: it hangs on no position",
             .level = Level::error,
             .remedy = "Put a brake that a spring applies on the load's side of the motor.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
