// For each pump, motor and cylinder: at each duty point, does it run no faster than it may?
#include <cmath>
#include <optional>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// The name of the figure that limits a machine's speed at a displacement, m3/rad. What lies
/// between the largest and the smallest displacement is held to the lower limit of the two.
std::string_view limit_at(const Circuit& circuit, const Component& machine, double displacement) {
    constexpr std::string_view at_least = "max-speed-at-min-displacement";
    const std::optional<double> smallest = circuit.figure(machine, "min-displacement");
    const bool smaller = smallest && displacement <= *smallest * (1.0 + 1e-6);
    return smaller && circuit.figure(machine, at_least) ? at_least : "max-speed";
}

void judge_machine(const AtWork& at, Docket& docket, const hydraulics::MachinePoint& machine) {
    const Circuit& circuit = at.circuit();
    const Component& component = circuit.components[machine.component];
    const std::string_view limit =
        machine.straight ? "max-velocity" : limit_at(circuit, component, machine.displacement);
    const std::optional<double> most = circuit.figure(component, limit);
    if (!most) {
        lacks(at, docket, machine.component, limit);
        return;
    }
    const Dimension dimension = machine.straight ? Dimension::velocity : Dimension::speed;
    Verdict* const verdict =
        hold(at, docket, ElementType::component, machine.component,
             {.measured = std::abs(machine.speed), .required = *most, .dimension = dimension});
    if (verdict == nullptr) return;
    verdict->message = docket.text(component.path, machine.straight ? " moves at " : " turns at ",
                                   docket.told(std::abs(machine.speed), dimension), "; it bears ",
                                   docket.told(*most, dimension));
    const Step steps[] = {{ElementType::component, machine.component, none, none,
                           machine.straight ? "moves" : "turns"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    for (const hydraulics::MachinePoint& machine : at.point.machines)
        judge_machine(at, docket, machine);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K06 and K22)", .place = "5.4.1"}};

}  // namespace

extern constinit const Rule motor_overspeed{
    .info = {.id = "motor-overspeed",
             .family = "Control and stopping",
             .question = "Does each machine stay below its highest speed at every duty point?",
             .why = "Too fast a machine throws its pistons off their slippers and bursts; with a "
                    "load that drives it, nothing holds that load any more.",
             .decided = "Speed at the solved duty point against max-speed, or at the smallest "
                        "displacement against max-speed-at-min-displacement where that is given; "
                        "of a cylinder's rod the velocity against max-velocity.",
             .data = "duty, max-speed, max-speed-at-min-displacement, max-velocity, displacements",
             .subject = "each pump, motor, unit and cylinder",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Limit the travel, raise the motor's least displacement, or change the "
                       "gear ratio.",
             .sources = sources},
    .judge_point = judge_point,
    .concerns = has_machines};

}  // namespace loopwright
