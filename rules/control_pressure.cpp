// For each machine of a loop whose control works with oil: in motion, is the charge pressure high
// enough for it?
#include <optional>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/charged_loops.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view needed = "control-pressure";

/// A servo moves the displacement, with oil of the charge line.
bool is_served(const Circuit& circuit, const Component& machine) {
    const std::string_view control = circuit.choice(machine, "control");
    return circuit.is_yes(machine, "variable") && (control == "hydraulic" || control == "electric");
}

void judge_machine(const AtWork& at, Docket& docket, const ChargedLoop& charged, Index c) {
    const Component& component = at.circuit().components[c];
    if (!is_served(at.circuit(), component)) return;
    const std::optional<double> least = at.circuit().figure(component, needed);
    if (!least) {
        lacks(at, docket, c, needed);
        return;
    }
    const double pressure = charge_line_pressure(at, charged);
    const Held held{.against = Held::Against::least,
                    .measured = pressure,
                    .required = *least,
                    .dimension = Dimension::pressure};
    if (const auto missing = unknown_leakage(at, docket, charged);
        held.holds() && !missing.empty()) {
        if (Verdict* const open = lacks(at, docket, ElementType::component, c, missing))
            open->message = "what the charge pump and the machines of the loop leak is not known";
        return;
    }
    Verdict* const verdict = hold(at, docket, ElementType::component, c, held);
    if (verdict == nullptr) return;
    verdict->message = docket.text(
        "the charge line stands at ", docket.told(pressure, Dimension::pressure),
        "; the control of ", component.path, " needs ", docket.told(*least, Dimension::pressure));
    const Step steps[] = {{ElementType::component, charged.balance->source, none, none, "charges"},
                          {ElementType::component, c, none, none, "is controlled"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    if (!at.moves()) return;
    for (const ChargedLoop& charged : charged_loops(at))
        for (const auto* machines : {&charged.loop->pumps, &charged.loop->actuators})
            for (const Index c : *machines) judge_machine(at, docket, charged, c);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented", "control-supply", "charge-flow"};

}  // namespace

extern constinit const Rule control_pressure{
    .info = {.id = "control-pressure",
             .family = "Control and stopping",
             .question = "Is the lowest charge pressure in motion high enough for each control?",
             .why = "A control that lacks pressure lets go of the displacement under load: the "
                    "machine slows down, surges or loses its way in the middle of a manoeuvre.",
             .decided = "Pressure at the outlet of the charge pump at the solved duty points of "
                        "motion against control-pressure. Control oil is taken for charge oil; "
                        "what a pilot valve loses is not counted.",
             .data = "duty, control, control-pressure, settings, displacements, losses",
             .subject = "each variable machine of a charged loop with a hydraulic or electric "
                        "control",
             .states = "at each duty point in motion",
             .level = Level::error,
             .remedy = "Raise the charge and flushing reliefs, or fit a control that needs less.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = has_loops};

}  // namespace loopwright
