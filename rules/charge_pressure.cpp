// For each loop that a pump charges: in motion, how far is the charge line above the housings?
#include <algorithm>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/charged_loops.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view above_housing = "above-housing";

/// Highest housing pressure among the loop's machines; that of the outside air where none is
/// drained outside.
struct Housing {
    double pressure = 0.0;
    Index machine = none;
};

Housing highest_housing(const AtWork& at, const LoopInfo& loop) {
    const Circuit& circuit = at.circuit();
    Housing highest;
    for (const auto* machines : {&loop.pumps, &loop.actuators})
        for (const Index c : *machines) {
            const Range ports = circuit.components[c].ports;
            for (Index port = ports.begin; port < ports.end; ++port) {
                if (circuit.ports[port].use != PortUse::drain) continue;
                const double pressure = std::max(at.pressure(port), hydraulics::vacuum);
                if (highest.machine == none || pressure > highest.pressure) highest = {pressure, c};
            }
        }
    return highest;
}

void judge_loop(const AtWork& at, Docket& docket, const ChargedLoop& charged) {
    const Housing housing = highest_housing(at, *charged.loop);
    const double pressure = charge_line_pressure(at, charged);
    const Index subject = charged.loop->pumps.front();
    const Held held{.against = Held::Against::least,
                    .measured = pressure - housing.pressure,
                    .required = docket.threshold(above_housing),
                    .dimension = Dimension::pressure};
    if (const auto missing = unknown_leakage(at, docket, charged);
        held.holds() && !missing.empty()) {
        if (Verdict* const open = lacks(at, docket, ElementType::loop, subject, missing))
            open->message = "what the charge pump and the machines of the loop leak is not known";
        return;
    }
    Verdict* const verdict = hold(at, docket, ElementType::loop, subject, held,
                                  pressure <= housing.pressure ? Level::error : Level::warning);
    if (verdict == nullptr) return;
    const auto told = [&](double figure) { return docket.told(figure, Dimension::pressure); };
    verdict->message =
        housing.machine == none
            ? docket.text("the charge line stands at ", told(pressure))
            : docket.text("the charge line stands at ", told(pressure), ", the housing of ",
                          at.circuit().components[housing.machine].path, " at ",
                          told(housing.pressure));
    verdict->witness = docket.witness(WitnessShape::set, steps_of(charged));
}

void judge_point(const AtWork& at, Docket& docket) {
    if (!at.moves()) return;
    for (const ChargedLoop& charged : known_charged_loops(at)) judge_loop(at, docket, charged);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented",      "charge-supply",   "charge-flow",
                                        "missing-drain-port", "case-drain-path", "case-pressure"};
constexpr Threshold thresholds[] = {
    {.name = above_housing,
     .dimension = Dimension::pressure,
     .value = 6e5,
     .doc = "least pressure of the charge line over that of the housings, in motion",
     .source = sources[0]}};

}  // namespace

extern constinit const Rule charge_pressure{
    .info = {.id = "charge-pressure",
             .family = "Charge supply",
             .question = "Does the charge line stand well above the housings in motion?",
             .why = "The charge pressure keeps pistons on their slippers and the low side full. "
                    "Where it falls to that of the housings, they lift off and the machine breaks "
                    "up under load.",
             .decided = "From the solved duty points of motion: pressure at the outlet of the "
                        "charge pump, less the highest housing pressure of the loop's machines. "
                        "Below the housings is an error, within the margin a warning. Controls, "
                        "brakes and the ratings of what it feeds have rules of their own "
                        "(control-pressure, brake-release, pressure-rating).",
             .data = "duty, displacements, efficiencies or coefficients, settings, fluid, drains",
             .subject = "each loop that a pump charges",
             .states = "at each duty point in motion",
             .level = Level::error,
             .remedy = "Raise the charge and flushing reliefs, or relieve the housings; where "
                       "charge-flow fails as well, begin there.",
             .sources = sources,
             .thresholds = thresholds,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = has_loops,
    .where_torn = true};

}  // namespace loopwright
