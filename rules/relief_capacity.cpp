// For each relief valve on a main side: can the valves there pass the greatest flow that can be
// blocked on it?
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/side_reliefs.h>

namespace loopwright {

namespace {

/// What machines can push into a side that is shut, m3/s, and which of them do.
struct Blocked {
    double flow = 0.0;
    std::vector<Index> machines = {};

    void add(double more, Index machine) {
        if (more <= 0.0) return;
        flow += more;
        machines.push_back(machine);
    }
};

/// Its whole displacement at the speed of the point: the travel may be anything by then.
double delivers(const AtWork& at, const hydraulics::MachinePoint& pump) {
    const auto whole = at.circuit().figure(at.circuit().components[pump.component], "displacement");
    return whole ? *whole * std::abs(pump.speed) : 0.0;
}

/// The pumps', or what actuators that inertia or the load keeps turning give, whichever is more:
/// the ones take in what the others give.
Blocked blocked_on(const AtWork& at, const LoopInfo& loop, const SideInfo& side) {
    Blocked pumps;
    for (const Index c : loop.pumps) {
        const hydraulics::MachinePoint* const pump = at.machine(c);
        if (pump == nullptr) continue;
        const bool gets_in_at_b =
            pump->port_b != none && at.circuit().ports[pump->port_b].use != PortUse::suction;
        if (stands_on(side, pump->port_a) || (gets_in_at_b && stands_on(side, pump->port_b)))
            pumps.add(delivers(at, *pump), c);
    }
    Blocked actuators;
    for (const Index c : loop.actuators) {
        const hydraulics::MachinePoint* const actuator = at.machine(c);
        if (actuator == nullptr) continue;
        if (stands_on(side, actuator->port_a)) actuators.add(actuator->out_at_a, c);
        if (stands_on(side, actuator->port_b)) actuators.add(actuator->out_at_b, c);
    }
    return actuators.flow > pumps.flow ? actuators : pumps;
}

/// The flow that relief valves pass together at their full flow.
struct Capacity {
    double flow = 0.0;
    std::vector<std::string_view> missing = {};
};

Capacity capacity_of(const Circuit& circuit, Docket& docket, std::span<const Index> reliefs) {
    Capacity capacity;
    for (const Index p : reliefs) {
        const Component& valve = circuit.components[circuit.passages[p].component];
        if (const auto flow = circuit.figure(valve, "full-flow"))
            capacity.flow += *flow;
        else
            capacity.missing.push_back(docket.text(valve.path, ".full-flow"));
    }
    return capacity;
}

void judge_side(const AtWork& at, Docket& docket, const LoopInfo& loop, const SideInfo& side) {
    const Circuit& circuit = at.circuit();
    const std::vector<Index> reliefs = reliefs_of(circuit, side);
    const Blocked blocked = blocked_on(at, loop, side);
    if (reliefs.empty() || blocked.machines.empty()) return;
    const Capacity capacity = capacity_of(circuit, docket, reliefs);
    const Held held{
        .measured = blocked.flow, .required = capacity.flow, .dimension = Dimension::flow};
    for (const Index p : reliefs) {
        const Index valve = circuit.passages[p].component;
        const std::string_view path = circuit.components[valve].path;
        if (!capacity.missing.empty() && !held.holds()) {
            Verdict* const verdict =
                lacks(at, docket, ElementType::component, valve, capacity.missing);
            if (verdict != nullptr)
                verdict->message =
                    docket.text("what ", path, " passes at its full flow is not known");
            continue;
        }
        Verdict* const verdict = hold(at, docket, ElementType::component, valve, held);
        if (verdict == nullptr) continue;
        verdict->message = docket.text(
            "up to ", docket.told(blocked.flow, Dimension::flow), " can be blocked on ", side.id,
            "; ", path, reliefs.size() > 1 ? " and those beside it pass " : " passes ",
            docket.told(capacity.flow, Dimension::flow));
        std::vector<Step> steps;
        for (const Index machine : blocked.machines)
            steps.push_back({ElementType::component, machine, none, none, "delivers"});
        steps.push_back({ElementType::component, valve, circuit.passages[p].from, none,
                         "opens at its setting"});
        verdict->witness = docket.witness(WitnessShape::set, steps);
    }
}

void judge_point(const AtWork& at, Docket& docket) {
    if (!at.moves()) return;
    for (const LoopInfo& loop : at.structure.loops)
        for (const SideInfo* side : main_sides(loop, at.point.state_of(loop.pumps.front())))
            judge_side(at, docket, loop, *side);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K01)", .place = "5.2.2"}};
constexpr std::string_view follows[] = {"crossport-relief"};

}  // namespace

extern constinit const Rule relief_capacity{
    .info = {.id = "relief-capacity",
             .family = "High-pressure protection",
             .question = "Can the relief valves of each side pass the greatest flow that can be "
                         "blocked on it?",
             .why = "A relief valve that is too small for the flow lets the pressure rise above "
                    "what hoses and housings bear, just when the machine is blocked: a hose "
                    "bursts beside people.",
             .decided = "At the solved duty points of motion: what the loop's pumps deliver at "
                        "their largest displacement and the speed of the point, or what leaves "
                        "the actuators there (an overrunning motor), if that is more; against the "
                        "full flow of the relief valves that lead out of the side.",
             .data = "duty, full-flow, displacements",
             .subject = "each relief valve that stands on a main side",
             .states = "at each duty point in motion",
             .level = Level::error,
             .remedy = "Fit relief valves for the whole flow, or one more beside them.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = has_loops};

}  // namespace loopwright
