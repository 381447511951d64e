// For each hydraulic control with ports outside: does pressure get to it from anything that gives
// some? One search from all givers serves all controls.
#include <algorithm>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/pressure_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

using FewIndices = boost::container::small_vector<Index, 8>;

bool has_pilot(const Situation& s, const Component& machine) {
    const auto ports = s.circuit().ports_of(machine);
    return std::any_of(ports.begin(), ports.end(),
                       [](const Port& port) { return port.use == PortUse::pilot; });
}

/// Pumps, motors and units with a hydraulic control that is supplied from outside.
FewIndices controlled(const Situation& s) {
    FewIndices found;
    for (const Index e : s.region.machines) {
        const Edge& edge = s.region.edges[e];
        if (edge.part != Part::pump && edge.part != Part::actuator) continue;
        const Component& machine = s.circuit().components[edge.component];
        if (has_pilot(s, machine) && s.circuit().choice(machine, "control") == "hydraulic")
            found.push_back(edge.component);
    }
    return found;
}

/// Those of the states in which a pump turns. One of variable speed may stand in neutral.
StateSet turning_states(const Situation& s, StateSet states) {
    bool turned = false;
    for (const Index e : s.region.machines) {
        const Edge& edge = s.region.edges[e];
        if (edge.part != Part::pump) continue;
        if (s.turning.turns(s.graph.drives(), edge.component)) return states;
        turned = turned || s.graph.turned(edge.component);
    }
    return turned ? without(states, bit(State::neutral)) : StateSet{0};
}

/// A command moves the operated valves, so they count in every position; into no reservoir.
bool supplies(const Situation& s, const Standing& standing, const FlowArc& arc) {
    const Edge& edge = s.region.edges[arc.edge];
    if (!lets_oil_on(edge) || s.region.is_reservoir[arc.to] != 0) return false;
    if (edge.shift != Shift::position) return stands_open(standing, arc);
    return (ways_of(edge) & (arc.backward != 0 ? open_backward : open_forward)) != 0;
}

SearchPool::Lease supplied(const Situation& s, const Standing& standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    begin_at_pumps(s, *search);
    begin_at_sides(s, *search, false);
    begin_at_accumulators(s, *search);
    s.graph.work += search->run(
        s.region, [&](Index /*node*/, const FlowArc& arc) { return supplies(s, standing, arc); });
    return search;
}

/// The first pilot port of a machine that is (not) supplied.
Index pilot_port(const Situation& s, Index c, const Search& search, bool reached) {
    const Range ports = s.circuit().components[c].ports;
    for (Index port = ports.begin; port < ports.end; ++port)
        if (s.circuit().ports[port].use == PortUse::pilot &&
            search.reached(s.graph.node_of(port)) == reached)
            return port;
    return none;
}

void pass(const Situation& s, Docket& docket, Index c, StateSet states, const Search& search) {
    Verdict* verdict = docket.record(s, ElementType::component, c, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message =
        docket.text("the control of ", s.circuit().components[c].path, " is supplied");
    verdict->witness = way_to(s, docket, search, pilot_port(s, c, search, true));
}

/// Against the oil from the port, to what does not let any through.
Witness cut_off(const Situation& s, Docket& docket, Index port) {
    const auto search = s.searches.take(s.region.node_count);
    search->begin_at(s.graph.node_of(port));
    s.graph.work += search->run(s.region, [&](Index node, const FlowArc& arc) {
        return s.region.is_reservoir[node] == 0 &&
               supplies(s, s.standing, turned_round(s.region, arc));
    });
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back(
        {ElementType::component, s.circuit().ports[port].component, port, none, "not supplied"});
    add_frontier(s.graph, s.region, s.standing, *search, false, steps);
    return docket.witness(WitnessShape::frontier, steps);
}

/// What is supplied while every valve that pressure shifts is shut stays so.
bool judge_alike(const Situation& s, Docket& docket) {
    const FewIndices machines = controlled(s);
    if (machines.empty()) return true;
    const StateSet states = turning_states(s, s.alike.states);
    if (states == 0) return true;
    const auto search = supplied(s, *s.alike.shut);
    for (const Index c : machines)
        if (pilot_port(s, c, *search, false) != none) return false;
    for (const Index c : machines) pass(s, docket, c, states, *search);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    const FewIndices machines = controlled(s);
    if (machines.empty()) return;
    const StateSet states = turning_states(s, s.states);
    if (states == 0) return;
    const auto search = supplied(s, s.standing);
    for (const Index c : machines) {
        const Index port = pilot_port(s, c, *search, false);
        if (port == none) {
            pass(s, docket, c, states, *search);
            continue;
        }
        Verdict* verdict = docket.record(s, ElementType::component, c, states, Outcome::fail);
        if (verdict == nullptr) continue;
        verdict->message =
            docket.text("nothing that gives pressure reaches the control port ",
                        s.circuit().ports[port].letter, " of ", s.circuit().components[c].path);
        verdict->witness = cut_off(s, docket, port);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule control_supply{
    .info = {.id = "control-supply",
             .family = "Control and stopping",
             .question = "Does the control supply reach every hydraulic control?",
             .why = "A control without supply does not move its machine, or not back: the drive "
                    "does not answer to the operator.",
             .decided = "From the pumps outside the loops that deliver, the main sides and the "
                        "accumulators, by every way that stands open, operated valves in any "
                        "position, past no relief valve and machine, to each pilot port.",
             .data = "control, pilot-ports, joins, shafts, hand valves, sense of checks",
             .subject = "each machine with a hydraulic control that has ports outside",
             .states = "running, while a pump turns",
             .level = Level::error,
             .remedy = "Lead charge oil to the control valve, and its outlet to the control port.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
