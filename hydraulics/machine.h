#pragma once

#include <cstddef>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>
#include <loopwright/hydraulics/wilson.h>

namespace loopwright::hydraulics {

/// A pump, a motor, or both: what its law needs.
struct Machine {
    Displacement displacement;       ///< the largest; above 0
    WilsonCoefficients losses = {};  ///< each 0 or more
    Leakage leakage = {};            ///< beside Wilson's slip, whatever the viscosity; 0 or more
    double case_share = 1.0;         ///< of all leakage, what goes to the housing; 0 to 1
    Torque constant_friction = {};   ///< of seals and bearings, whatever the pressure; 0 or more
};

/// What the law hangs on. Pressures in Pa over one datum, speed in rad/s, displacement over the
/// largest from -1 to 1, dynamic viscosity in Pa.s, above 0.
struct MachineState {
    enum Variable : std::size_t { a, b, housing, speed, stroke, viscosity };
    static constexpr std::size_t count = 6;

    double pressure_a;
    double pressure_b;
    double pressure_case;
    double shaft_speed;
    double relative_displacement;
    double dynamic_viscosity;
};

/// With partial derivatives over the state's variables, in their order. The three flows add up to
/// nothing.
struct MachineLaw {
    using Figure = Dual<MachineState::count>;
    Figure flow_a;  ///< m3/s out of the machine at A
    Figure flow_b;
    Figure flow_case;
    Figure torque;  ///< N.m that the shaft puts into the machine, in the sense of positive speed
};

/// Friction changes its sign with the speed, and its size with the sign of the pressure difference.
/// Inside these bands about 0 it is rounded off (smooth.h): a machine that stands under load is
/// found creeping, slower than `creep`.
inline constexpr Speed creep{0.5};                      // 4.8 1/min
inline constexpr Pressure friction_pressure_band{1e5};  // 1 bar

/// Positive speed with positive displacement takes oil in at B and puts it out at A. Pump or motor,
/// either way, driving or overrunning: one law. Displacement times speed flows from B to A; from it
/// go the leakages, `case_share` of their conductance from each port to the housing, the rest from
/// port to port; on the shaft lie displacement times pressure difference, drag and friction, the
/// last two against the motion. Losses go with the largest displacement, not the set one (after
/// McCandlish and Dorey, from memory), so that at no stroke it still leaks and drags.
MachineLaw machine_law(const Machine& machine, const MachineState& state);

/// Power that is turned into heat in the housing and leaves with its oil, W: leakage on its way
/// there (flow from each port times that port's pressure over the housing's), drag, and friction of
/// seals and bearings. Friction that grows with pressure is not counted: it warms the oil of the
/// ports, on the safe side (common practice, no source).
double heat_into_housing(const Machine& machine, const MachineState& state);

/// Torque at the shaft of a motor that breaks away from standstill: share of its ideal torque at
/// that pressure difference (starting efficiency, 0 to 1).
Torque starting_torque(Displacement set, Pressure difference, double starting_efficiency);

/// Pressure difference that it takes to break that torque away; set displacement and efficiency
/// above 0.
Pressure breakaway_pressure(Displacement set, Torque torque, double starting_efficiency);

}  // namespace loopwright::hydraulics
