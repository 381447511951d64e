// For each two-way pump of a loop: what takes its stroke to zero when nothing commands it any more.
#include <algorithm>

#include <loopwright/rules/pressure_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

Index next_pilot(const Circuit& circuit, const Component& pump, Index from) {
    for (Index port = from; port < pump.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::pilot) return port;
    return none;
}

/// Pressed on no way that drains, springs cannot centre it.
void judge_pilots(const Situation& s, Docket& docket, StateSet states, Index c) {
    const Component& pump = s.circuit().components[c];
    const Index first = next_pilot(s.circuit(), pump, pump.ports.begin);
    Index held = first;
    while (held != none && s.feeds.vented[s.graph.node_of(held)] != 0)
        held = next_pilot(s.circuit(), pump, held + 1);
    Verdict* verdict = docket.record(s, ElementType::component, c, states,
                                     held == none ? Outcome::pass : Outcome::fail);
    if (verdict == nullptr) return;
    if (held == none) {
        verdict->message = docket.text("without a signal the control of ", pump.path,
                                       " drains to a reservoir, and its springs centre it");
        verdict->witness = way_to_tank(s, docket, first);
    } else {
        verdict->message =
            docket.text("without a signal the control port ", s.circuit().ports[held].letter,
                        " of ", pump.path, " has no free way to a reservoir: its stroke may stay");
        verdict->witness = kept_from_tank(s, docket, held);
    }
}

/// Where springs or the control's own parts do it, the file has to say so.
void judge_rest(const Situation& s, Docket& docket, StateSet states, Index c) {
    const Component& pump = s.circuit().components[c];
    const std::string_view rest = s.circuit().choice(pump, "rest-displacement");
    const Outcome outcome = rest.empty()     ? Outcome::inconclusive
                            : rest == "zero" ? Outcome::pass
                                             : Outcome::fail;
    Verdict* verdict = docket.record(s, ElementType::component, c, states, outcome);
    if (verdict == nullptr) return;
    const Step step{.type = ElementType::component, .index = c, .text = "its control"};
    verdict->witness = docket.witness(WitnessShape::set, {&step, 1});
    if (outcome == Outcome::inconclusive) {
        const std::string_view datum = docket.text(pump.path, ".rest-displacement");
        verdict->missing = docket.missing({&datum, 1});
        verdict->message =
            docket.text("what displacement ", pump.path, " takes without a signal is not given");
    } else {
        verdict->message =
            docket.text("without a signal ", pump.path, " goes to its ", rest, " displacement");
    }
}

void not_asked(const Situation& s, Docket& docket, StateSet states, Index c, std::string_view why) {
    Verdict* verdict = docket.record(s, ElementType::component, c, states, Outcome::not_applicable);
    if (verdict != nullptr)
        verdict->message = docket.text("the control of ", s.circuit().components[c].path, why);
}

void judge_in(const Situation& s, Docket& docket, StateSet states) {
    if ((states & bit(State::lost_signal)) == 0) return;
    for (const Index e : s.region.machines) {
        const Edge& edge = s.region.edges[e];
        if (edge.part != Part::pump || !edge.both_ways || s.looped[e] == 0) continue;
        const Component& pump = s.circuit().components[edge.component];
        if (!s.circuit().is_yes(pump, "variable")) continue;
        const std::string_view control = s.circuit().choice(pump, "control");
        if (control == "manual")
            not_asked(s, docket, states, edge.component, " is moved by hand: it has no signal");
        else if (control.empty() || control == "none")
            not_asked(s, docket, states, edge.component, " is not stated");
        else if (control == "hydraulic" && next_pilot(s.circuit(), pump, pump.ports.begin) != none)
            judge_pilots(s, docket, states, edge.component);
        else
            judge_rest(s, docket, states, edge.component);
    }
}

/// What is vented is so wherever the feeds are the same.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds) return false;
    judge_in(s, docket, s.alike.states);
    return true;
}

void judge(const Situation& s, Docket& docket) { judge_in(s, docket, s.states); }

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K46)", .place = "5.4.4"}};

}  // namespace

extern constinit const Rule neutral_on_loss{
    .info = {.id = "neutral-on-loss",
             .family = "Control and stopping",
             .question = "Does the loop's pump go to neutral when its signal is lost?",
             .why = "A pump that keeps its stroke when the signal is gone drives on: the machine "
                    "cannot be stopped from the seat and runs somebody over.",
             .decided = "A hydraulic control with ports outside drains each of them to a reservoir "
                        "through nothing that holds pressure, all valves at rest. Of any other "
                        "control the file says that it rests at zero displacement.",
             .data = "control, pilot-ports, rest-displacement, joins, valve positions",
             .subject = "each variable two-way pump of a loop",
             .states = "lost-signal",
             .level = Level::error,
             .remedy = "Let the control valve lead both control lines to the reservoir at rest; "
                       "choose a control that centres itself, and state rest-displacement.",
             .sources = sources},
    .asked = bit(State::lost_signal),
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
