// For each pump that draws from an inlet: at each duty point and at the cold start, does it get the
// pressure there that it needs?
#include <algorithm>
#include <optional>
#include <vector>

#include <loopwright/hydraulics/atmosphere.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/way_losses.h>

namespace loopwright {

namespace {

constexpr std::string_view needed = "inlet-pressure";

Index inlet_of(const Circuit& circuit, const Component& pump) {
    for (Index port = pump.ports.begin; port < pump.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::suction) return port;
    return none;
}

/// Where the machine works; at sea level where the duty does not say.
std::optional<double> given_altitude(const Circuit& circuit) {
    if (!circuit.duty) return std::nullopt;
    const AttributeValue* const altitude = circuit.figure_of(*circuit.duty, "altitude");
    return altitude != nullptr ? std::optional(altitude->si) : std::nullopt;
}

void judge_pump(const AtWork& at, Docket& docket, WayLosses& losses, Index c) {
    const Circuit& circuit = at.circuit();
    const Component& component = circuit.components[c];
    const Index inlet = inlet_of(circuit, component);
    if (inlet == none || (at.is_torn() && !at.is_torn_at(inlet))) return;
    const std::optional<double> least = circuit.figure(component, needed);
    if (!least) {
        lacks(at, docket, c, needed);
        return;
    }
    const std::optional<double> altitude = given_altitude(circuit);
    const auto air = hydraulics::atmospheric_pressure(Length(altitude.value_or(0.0)));
    if (!air) {
        static constexpr std::string_view missing[] = {"duty.altitude"};
        if (Verdict* const verdict = lacks(at, docket, ElementType::component, c, missing))
            verdict->message = docket.text(std::string_view(air.reason()));
        return;
    }
    const Held held{.against = Held::Against::least,
                    .measured = std::max(0.0, air->si() + at.pressure(inlet)),
                    .required = *least,
                    .dimension = Dimension::absolute_pressure};
    if (held.holds()) {
        // What is left out can only take from it.
        const auto missing = losses.missing({&inlet, 1}, WayLosses::Way::from_reservoir, docket);
        if (!missing.empty()) {
            if (Verdict* const verdict = lacks(at, docket, ElementType::component, c, missing))
                verdict->message = docket.text("what the oil loses on its way to the inlet of ",
                                               component.path, " is not known");
            return;
        }
    }
    Verdict* const verdict = hold(at, docket, ElementType::component, c, held);
    if (verdict == nullptr) return;
    const auto told = [&](double pressure) {
        return docket.told(pressure, Dimension::absolute_pressure);
    };
    verdict->message = docket.text("the inlet of ", component.path, " stands at ",
                                   told(held.measured), at.cold_start ? " at the cold start" : "",
                                   altitude ? "" : " (taken at sea level, as no altitude is given)",
                                   "; it needs ", told(*least));
    const Step steps[] = {{ElementType::component, c, none, inlet, "inlet"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    WayLosses losses(at);
    for (const hydraulics::MachinePoint& machine : at.point.machines)
        judge_pump(at, docket, losses, machine.component);
}

bool concerns(const FlowGraph& graph, const Structure& /*structure*/) {
    const auto& ports = graph.circuit().ports;
    return std::any_of(ports.begin(), ports.end(), [&](const Port& port) {
        return port.use == PortUse::suction && graph.part(port.component) == Part::pump;
    });
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K18)", .place = "5.4.1"},
    {.work = "US Standard Atmosphere 1976", .place = "pressure of the air over altitude"}};
constexpr std::string_view follows[] = {"charge-pump-inlet", "suction-shut-off"};

}  // namespace

extern constinit const Rule suction_pressure{
    .info = {.id = "suction-pressure",
             .family = "Suction and reservoir",
             .question = "Does each pump get the pressure at its inlet that it needs, hot and at "
                         "the cold start?",
             .why = "A pump that is starved cavitates: it is eaten away within hours, the charge "
                    "pressure breaks down, and brakes and controls with it.",
             .decided = "Pressure of the air at the duty's altitude and the pressure at the inlet "
                        "from the solved point, against inlet-pressure, which is absolute; at "
                        "the cold start with the prime mover at rated speed. The head of oil over "
                        "the inlet is not counted.",
             .data = "duty, altitude, cold-start, inlet-pressure, bore and length of suction "
                     "lines, drop of strainers and filters, fluid",
             .subject = "each pump that draws from an inlet",
             .states = "at each duty point and the cold start",
             .level = Level::error,
             .remedy = "Widen and shorten the suction line, take strainers out of it, set the "
                       "reservoir higher, or warm the oil before the start.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = concerns,
    .at_cold_start = true,
    .where_torn = true};

}  // namespace loopwright
