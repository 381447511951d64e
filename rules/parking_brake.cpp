// For each brake that holds what stands: its pressure is gone with the signal, and with the prime
// mover. A brake has no passages; it is judged where the line at its port leads.
#include <algorithm>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/holding_brakes.h>
#include <loopwright/rules/pressure_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool by_spring(const Circuit& circuit, const Component& brake) {
    return circuit.choice(brake, "applied") == "spring";
}

/// Ports of the brakes here whose spring has to hold.
boost::container::small_vector<Index, 4> brake_ports(const Situation& s) {
    boost::container::small_vector<Index, 4> found;
    for (const Index port : s.region.guests) {
        const Component& component = s.circuit().components[s.circuit().ports[port].component];
        if (component.kind->part == Part::brake && !s.graph.lines_of(port).empty() &&
            by_spring(s.circuit(), component) && meant_to_hold(s.circuit(), component))
            found.push_back(port);
    }
    return found;
}

bool vented(const Situation& s, Index port) { return s.feeds.vented[s.graph.node_of(port)] != 0; }

void pass_vented(const Situation& s, Docket& docket, Index port, StateSet states) {
    const Index c = s.circuit().ports[port].component;
    Verdict* verdict = docket.record(s, ElementType::component, c, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text("the pressure of ", s.circuit().components[c].path,
                                   " drains to a reservoir, and its spring applies it");
    verdict->witness = way_to_tank(s, docket, port);
}

/// What the oil reaches that is under pressure in that state.
SearchPool::Lease under_pressure(const Situation& s, State state) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    begin_at_accumulators(s, *search);
    if (state == State::lost_signal) {
        begin_at_pumps(s, *search);
        begin_at_sides(s, *search, true);
    }
    spread(s, s.standing, *search);
    return search;
}

/// Whether pressure gets to the brake in that state; then it may stay released.
void judge_held(const Situation& s, Docket& docket, Index port, State state,
                const Search& pressed) {
    const bool reached = pressed.reached(s.graph.node_of(port));
    const Index c = s.circuit().ports[port].component;
    Verdict* verdict = docket.record(s, ElementType::component, c, bit(state),
                                     reached ? Outcome::fail : Outcome::pass);
    if (verdict == nullptr) return;
    const std::string_view when =
        state == State::lost_signal ? "with the signal lost" : "with the prime mover stopped";
    if (reached) {
        verdict->message = docket.text(when, ", pressure still gets to ",
                                       s.circuit().components[c].path, " and keeps it released");
        verdict->witness = way_to(s, docket, pressed, port);
    } else {
        verdict->message = docket.text(when, ", nothing gives ", s.circuit().components[c].path,
                                       " the pressure that would release it");
        verdict->witness = kept_from_tank(s, docket, port);
    }
}

/// What is vented is so wherever the feeds are the same.
bool judge_alike(const Situation& s, Docket& docket) {
    if (s.region.guests.empty()) return true;
    const auto ports = brake_ports(s);
    if (ports.empty()) return true;
    if (!s.alike.same_feeds ||
        !std::all_of(ports.begin(), ports.end(), [&](Index port) { return vented(s, port); }))
        return false;
    for (const Index port : ports) pass_vented(s, docket, port, s.alike.states);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    boost::container::small_vector<Index, 4> held;
    for (const Index port : brake_ports(s)) {
        if (vented(s, port))
            pass_vented(s, docket, port, s.states);
        else
            held.push_back(port);
    }
    if (held.empty()) return;
    for (const State state : {State::lost_signal, State::stopped}) {
        if ((s.states & bit(state)) == 0) continue;
        const auto pressed = under_pressure(s, state);
        for (const Index port : held) judge_held(s, docket, port, state, *pressed);
    }
}

/// Whether the brake's line leads to an accumulator and nowhere else.
bool on_an_accumulator(const FlowGraph& graph, const Component& brake) {
    for (Index port = brake.ports.begin; port < brake.ports.end; ++port)
        if (!graph.lines_of(port).empty() && graph.has_accumulator(graph.joint_of(port)))
            return true;
    return false;
}

/// What hangs on no state: brakes that pressure applies, and ports that nothing can release by.
void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (const Index c : graph.components_with(Part::brake)) {
        const Component& brake = circuit.components[c];
        if (!meant_to_hold(circuit, brake) || docket.has(ElementType::component, c)) continue;
        const bool spring = by_spring(circuit, brake);
        const bool stored = spring && on_an_accumulator(graph, brake);
        Verdict& verdict = docket.conclude(ElementType::component, c,
                                           spring && !stored ? Outcome::pass : Outcome::fail);
        verdict.message =
            stored ? docket.text("an accumulator keeps ", brake.path, " released")
            : spring
                ? docket.text("nothing can give ", brake.path,
                              " the pressure that would release it")
                : docket.text(brake.path,
                              " is to hold what stands, yet it holds only while pressure lasts");
        const Step step{.type = ElementType::component, .index = c};
        verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K11)", .place = "5.4.7"}};

}  // namespace

extern constinit const Rule parking_brake{
    .info = {.id = "parking-brake",
             .family = "Control and stopping",
             .question = "Does a spring apply the parking brake once supply or signal are gone?",
             .why = "A brake that needs pressure to hold, or that keeps the pressure that "
                    "releases it, lets the machine roll away or the load come down.",
             .decided = "A spring applies it. With the signal lost its port drains to a reservoir "
                        "through nothing that holds pressure, or nothing that delivers reaches it; "
                        "with the prime mover stopped likewise, where only accumulators deliver.",
             .data = "applied, use, joins, valve positions",
             .subject = "each brake for parking, or that a spring applies where no use is given",
             .states = "lost-signal and stopped",
             .level = Level::error,
             .remedy = "Let the brake valve lead the brake's port to the reservoir at rest, and "
                       "choose a brake that a spring applies.",
             .sources = sources},
    .asked = bit(State::lost_signal) | bit(State::stopped),
    .judge = judge,
    .judge_alike = judge_alike,
    .conclude = conclude};

}  // namespace loopwright
