#include <loopwright/hydraulics/machine.h>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

// The terms are few and asked often, so each is laid out over the variables at once.
MachineLaw machine_law(const Machine& machine, const MachineState& state) {
    using State = MachineState;
    using Figure = MachineLaw::Figure;
    const double largest = machine.displacement.si();
    const double stroke = state.relative_displacement;
    const double speed = state.shaft_speed;
    const double difference = state.pressure_a - state.pressure_b;

    const double slip = machine.losses.slip * largest / state.dynamic_viscosity;
    const double conductance = slip + machine.leakage.si();
    const double to_case = conductance * machine.case_share;
    const double across = conductance - to_case;
    // Of all leakage's, over the viscosity; the part that the slip is of it.
    const double thinner = conductance > 0.0 ? -slip / conductance / state.dynamic_viscosity : 0.0;
    const double from_a = to_case * (state.pressure_a - state.pressure_case);
    const double from_b = to_case * (state.pressure_b - state.pressure_case);
    const double past = across * difference;
    const double through = stroke * speed * largest;
    // In the order of the state's variables.
    MachineLaw law;
    law.flow_a.value = through - past - from_a;
    law.flow_a.slope = {-across - to_case, across,          to_case,
                        stroke * largest,  speed * largest, -(past + from_a) * thinner};
    law.flow_b.value = past - through - from_b;
    law.flow_b.slope = {across,           -across - to_case,        to_case, -stroke * largest,
                        -speed * largest, (past - from_b) * thinner};
    law.flow_case.value = from_a + from_b;
    law.flow_case.slope = {to_case, to_case, -2.0 * to_case, 0.0, 0.0, (from_a + from_b) * thinner};

    const double band = friction_pressure_band.si();
    const Dual<1> pressed = soft_abs(Dual<1>::variable(0, difference / band));
    const Dual<1> sense = soft_sign(Dual<1>::variable(0, speed / creep.si()));
    const double dry = machine.losses.friction * largest;
    const double friction = dry * band * pressed.value + machine.constant_friction.si();
    const double drag = machine.losses.drag * largest;
    Figure& torque = law.torque;
    torque = Figure(stroke * difference * largest + drag * state.dynamic_viscosity * speed +
                    friction * sense.value);
    torque.slope[State::a] = stroke * largest + dry * pressed.slope[0] * sense.value;
    torque.slope[State::b] = -torque.slope[State::a];
    torque.slope[State::speed] =
        drag * state.dynamic_viscosity + friction * sense.slope[0] / creep.si();
    torque.slope[State::stroke] = difference * largest;
    torque.slope[State::viscosity] = drag * speed;
    return law;
}

double heat_into_housing(const Machine& machine, const MachineState& state) {
    const double conductance =
        machine.case_share *
        (machine.losses.slip * machine.displacement.si() / state.dynamic_viscosity +
         machine.leakage.si());
    const double over_a = state.pressure_a - state.pressure_case;
    const double over_b = state.pressure_b - state.pressure_case;
    const double drag = machine.losses.drag * machine.displacement.si() * state.dynamic_viscosity *
                        state.shaft_speed;
    const double bearings =
        machine.constant_friction.si() * soft_sign(Dual<1>(state.shaft_speed / creep.si())).value;
    return conductance * (over_a * over_a + over_b * over_b) +
           (drag + bearings) * state.shaft_speed;
}

Torque starting_torque(Displacement set, Pressure difference, double starting_efficiency) {
    return Torque(set.si() * difference.si() * starting_efficiency);
}

Pressure breakaway_pressure(Displacement set, Torque torque, double starting_efficiency) {
    return Pressure(torque.si() / (set.si() * starting_efficiency));
}

}  // namespace loopwright::hydraulics
