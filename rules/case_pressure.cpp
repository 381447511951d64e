// For each machine that is drained outside: at each duty point and at the cold start, does its
// housing bear the pressure in it?
#include <algorithm>
#include <optional>
#include <vector>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/way_losses.h>

namespace loopwright {

namespace {

std::vector<Index> drains_of(const Circuit& circuit, const Component& machine) {
    std::vector<Index> drains;
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::drain) drains.push_back(port);
    return drains;
}

/// The cold oil runs out of a housing slowly, but not for long.
std::string_view limit_at(const AtWork& at, const Component& machine) {
    constexpr std::string_view peak = "peak-case-pressure";
    return at.cold_start && at.circuit().figure(machine, peak) ? peak : "case-pressure";
}

void judge_machine(const AtWork& at, Docket& docket, WayLosses& losses, Index c) {
    const Circuit& circuit = at.circuit();
    const Component& component = circuit.components[c];
    const std::vector<Index> drains = drains_of(circuit, component);
    if (drains.empty()) return;
    const std::string_view limit = limit_at(at, component);
    const std::optional<double> most = circuit.figure(component, limit);
    if (!most) {
        lacks(at, docket, c, limit);
        return;
    }
    const Index port = *std::max_element(drains.begin(), drains.end(), [&](Index a, Index b) {
        return at.pressure(a) < at.pressure(b);
    });
    const Held held{
        .measured = at.pressure(port), .required = *most, .dimension = Dimension::pressure};
    if (held.holds()) {
        // What is left out can only add to it.
        auto missing = unknown_losses(at, docket, {&c, 1}, Loss::leakage);
        for (const std::string_view datum :
             losses.missing(drains, WayLosses::Way::to_reservoir, docket))
            missing.push_back(datum);
        if (!missing.empty()) {
            if (Verdict* const verdict = lacks(at, docket, ElementType::component, c, missing))
                verdict->message = docket.text("what the drain of ", component.path,
                                               " loses on its way to the reservoir is not known");
            return;
        }
    }
    Verdict* const verdict = hold(at, docket, ElementType::component, c, held);
    if (verdict == nullptr) return;
    verdict->message = docket.text("the housing of ", component.path, " stands at ",
                                   docket.told(held.measured, Dimension::pressure),
                                   at.cold_start ? " at the cold start; it bears " : "; it bears ",
                                   docket.told(*most, Dimension::pressure));
    const Step steps[] = {{ElementType::component, c, none, port, "housing"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    WayLosses losses(at);
    for (const hydraulics::MachinePoint& machine : at.point.machines)
        judge_machine(at, docket, losses, machine.component);
}

bool concerns(const FlowGraph& graph, const Structure& /*structure*/) {
    const auto& ports = graph.circuit().ports;
    return std::any_of(ports.begin(), ports.end(), [&](const Port& port) {
        const Part part = graph.part(port.component);
        return port.use == PortUse::drain && (part == Part::pump || part == Part::actuator);
    });
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K19)", .place = "5.4.1"}};
constexpr std::string_view follows[] = {"missing-drain-port", "case-drain-path", "filter-in-drain"};

}  // namespace

extern constinit const Rule case_pressure{
    .info = {.id = "case-pressure",
             .family = "Case drain",
             .question = "Does each housing bear the pressure in it, hot and at the cold start?",
             .why = "Too much pressure in a housing pushes out the shaft seal: the oil is lost "
                    "within minutes, on the road, the ice or a hot exhaust.",
             .decided = "Pressure at the case ports from the solved duty points against "
                        "case-pressure; at the cold start (rated speed, nothing commanded, no "
                        "load, oil at the duty's cold-start) against peak-case-pressure, or "
                        "case-pressure where that is not given.",
             .data = "duty, cold-start, case-pressure, peak-case-pressure, bore and length of "
                     "drain lines, drop of coolers and filters, efficiencies or coefficients",
             .subject = "each pump, motor and unit that is drained outside",
             .states = "at each duty point and the cold start",
             .level = Level::error,
             .remedy = "Widen or shorten the drain line, give cooler and filter a bypass that "
                       "opens earlier, or lead the flushing oil another way.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = concerns,
    .at_cold_start = true};

}  // namespace loopwright
