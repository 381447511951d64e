#pragma once

#include <loopwright/hydraulics/efficiency.h>
#include <loopwright/hydraulics/machine.h>

/// Machines with stated efficiencies, run at a point: pressure on one port, none on the others.
namespace loopwright::hydraulics::testing {

inline constexpr double some_viscosity = 0.03;  // Pa.s; the rated point is the working point

struct Stated {
    double displacement;  // m3/rad
    double pressure;      // Pa
    double speed;         // rad/s
    double volumetric = 1.0;
    double hydro_mechanical = 1.0;
};

inline Machine machine_with(Work work, const Stated& stated) {
    const RatedPoint point{Pressure(stated.pressure), Speed(stated.speed),
                           DynamicViscosity(some_viscosity)};
    const TorqueCoefficients torque =
        torque_losses_from(work, stated.hydro_mechanical, 0.5, point).value();
    return {.displacement = Displacement(stated.displacement),
            .losses = {.slip = slip_from(work, stated.volumetric, point).value(),
                       .drag = torque.drag,
                       .friction = torque.friction}};
}

/// Out of A against a pressure there.
inline MachineState pumping(double pressure, double speed, double stroke = 1.0) {
    return {pressure, 0.0, 0.0, speed, stroke, some_viscosity};
}
/// Driven by a pressure at B.
inline MachineState motoring(double pressure, double speed, double stroke = 1.0) {
    return {0.0, pressure, 0.0, speed, stroke, some_viscosity};
}

struct AtWork {
    MachineState state;
    MachineLaw law;
    Efficiencies efficiencies;
    double flow;    // m3/s that a pump delivers, a motor takes in
    double torque;  // N.m that a pump takes, a motor gives
};
inline AtWork run(const Machine& machine, const MachineState& state) {
    const MachineLaw law = machine_law(machine, state);
    const bool pump = state.pressure_a > state.pressure_b;
    return {state, law, efficiencies(machine, state, law).value(),
            pump ? law.flow_a.value : -law.flow_b.value,
            pump ? law.torque.value : -law.torque.value};
}
inline AtWork run_pump(const Stated& stated) {
    return run(machine_with(Work::pump, stated), pumping(stated.pressure, stated.speed));
}
inline AtWork run_motor(const Stated& stated) {
    return run(machine_with(Work::motor, stated), motoring(stated.pressure, stated.speed));
}

/// Efficiencies of a machine whose flow and torque were measured.
struct Measured {
    double flow;
    double torque;
};
inline Efficiencies measured_pump(const Stated& ideal, const Measured& measured) {
    const MachineState state = pumping(ideal.pressure, ideal.speed);
    MachineLaw law;
    law.flow_a = measured.flow;
    law.torque = measured.torque;
    return efficiencies({.displacement = Displacement(ideal.displacement)}, state, law).value();
}
inline Efficiencies measured_motor(const Stated& ideal, const Measured& measured) {
    const MachineState state = motoring(ideal.pressure, ideal.speed);
    MachineLaw law;
    law.flow_b = -measured.flow;
    law.torque = -measured.torque;
    return efficiencies({.displacement = Displacement(ideal.displacement)}, state, law).value();
}

/// Speed at which a motor takes in that flow; the law is linear in the speed.
inline double motor_speed(const Machine& machine, double pressure, double flow) {
    const MachineLaw law = machine_law(machine, motoring(pressure, 1.0));
    return 1.0 + (flow + law.flow_b.value) / -law.flow_b.slope[MachineState::speed];
}

}  // namespace loopwright::hydraulics::testing
