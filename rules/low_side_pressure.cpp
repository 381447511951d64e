// For each machine in a loop: at each duty point, is its low side above the least pressure that it
// needs?
#include <algorithm>
#include <cmath>
#include <optional>
#include <span>
#include <vector>

#include <loopwright/hydraulics/loads.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/charged_loops.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view needed = "low-side-pressure";

bool can_give(const Component& component) {
    const auto& attributes = component.kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(),
                       [](const AttributeSpec& spec) { return spec.name == needed; });
}

/// The working port with the lower pressure.
Index low_port(const AtWork& at, const Component& machine) {
    Index low = none;
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port) {
        if (at.circuit().ports[port].use != PortUse::working) continue;
        if (low == none || at.pressure(port) < at.pressure(low)) low = port;
    }
    return low;
}

void judge_machine(const AtWork& at, Docket& docket, Index c,
                   std::span<const std::string_view> unknown) {
    const Component& component = at.circuit().components[c];
    const hydraulics::MachinePoint* const machine = at.machine(c);
    if (machine == nullptr || !can_give(component)) return;
    if (std::abs(machine->speed) <= hydraulics::standstill.si()) return;
    const Index port = low_port(at, component);
    if (port == none || (at.is_torn() && !at.is_torn_at(port))) return;
    const std::optional<double> least = at.circuit().figure(component, needed);
    if (!least) {
        lacks(at, docket, c, needed);
        return;
    }
    const double low = std::max(at.pressure(port), hydraulics::vacuum);
    const Held held{.against = Held::Against::least,
                    .measured = low,
                    .required = *least,
                    .dimension = Dimension::pressure};
    if (held.holds() && !unknown.empty()) {
        if (Verdict* const open = lacks(at, docket, ElementType::component, c, unknown))
            open->message = "what the charge pump and the machines of the loop leak is not known";
        return;
    }
    Verdict* const verdict = hold(at, docket, ElementType::component, c, held);
    if (verdict == nullptr) return;
    verdict->message =
        docket.text("the low side of ", component.path,
                    at.is_torn() ? " is drawn empty, to vacuum at " : " stands at ",
                    docket.told(low, Dimension::pressure), "; at its highest speed it needs ",
                    docket.told(*least, Dimension::pressure));
    const Step steps[] = {{ElementType::component, c, none, port, "low side"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    const std::vector<ChargedLoop> charged = charged_loops(at);
    for (const LoopInfo& loop : at.structure.loops) {
        const auto fed = std::find_if(charged.begin(), charged.end(),
                                      [&](const ChargedLoop& one) { return one.loop == &loop; });
        std::vector<std::string_view> unknown;
        if (fed != charged.end()) unknown = unknown_leakage(at, docket, *fed);
        for (const auto* machines : {&loop.pumps, &loop.actuators})
            for (const Index c : *machines) judge_machine(at, docket, c, unknown);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented", "charge-supply", "make-up-check",
                                        "make-up-path",  "charge-flow",   "lost-loop"};

}  // namespace

extern constinit const Rule low_side_pressure{
    .info = {.id = "low-side-pressure",
             .family = "Make-up",
             .question = "Is the low side above the least pressure that each machine needs?",
             .why = "Below it the pistons leave their slippers or cams on the return stroke: the "
                    "motor knocks, wears out and at last breaks up, and the load is free.",
             .decided = "The lower of the pressures at the working ports of a machine that turns, "
                        "from the solved duty point, against low-side-pressure. That is stated "
                        "for the highest speed; it is held against at lower speeds too, the safe "
                        "side. Where more is drawn from it than comes, it stands at vacuum.",
             .data = "duty, low-side-pressure, displacements, losses, settings, fluid",
             .subject = "each pump, motor and unit of a loop",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Raise the charge pressure, widen the way from the charge line to the low "
                       "side, or fit a machine that needs less.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = has_loops,
    .where_torn = true};

}  // namespace loopwright
