#include <loopwright/hydraulics/machine.h>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

MachineLaw machine_law(const Machine& machine, const MachineState& state) {
    using State = MachineState;
    using Figure = MachineLaw::Figure;
    const Figure a = Figure::variable(State::a, state.pressure_a);
    const Figure b = Figure::variable(State::b, state.pressure_b);
    const Figure housing = Figure::variable(State::housing, state.pressure_case);
    const Figure speed = Figure::variable(State::speed, state.shaft_speed);
    const Figure stroke = Figure::variable(State::stroke, state.relative_displacement);
    const Figure viscosity = Figure::variable(State::viscosity, state.dynamic_viscosity);

    const double largest = machine.displacement.si();
    const Figure difference = a - b;
    const Figure through = stroke * speed * largest;
    const Figure conductance =
        Figure(machine.losses.slip * largest) / viscosity + machine.leakage.si();
    const Figure to_case = conductance * machine.case_share;
    const Figure across = (conductance - to_case) * difference;
    const Figure from_a = to_case * (a - housing);
    const Figure from_b = to_case * (b - housing);

    const double band = friction_pressure_band.si();
    const Figure friction = machine.losses.friction * largest * band * soft_abs(difference / band) +
                            machine.constant_friction.si();
    return {.flow_a = through - across - from_a,
            .flow_b = across - through - from_b,
            .flow_case = from_a + from_b,
            .torque = stroke * difference * largest +
                      machine.losses.drag * largest * viscosity * speed +
                      friction * soft_sign(speed / creep.si())};
}

Torque starting_torque(Displacement set, Pressure difference, double starting_efficiency) {
    return Torque(set.si() * difference.si() * starting_efficiency);
}

Pressure breakaway_pressure(Displacement set, Torque torque, double starting_efficiency) {
    return Pressure(torque.si() / (set.si() * starting_efficiency));
}

}  // namespace loopwright::hydraulics
