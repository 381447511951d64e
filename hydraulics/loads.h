#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

/// Torques that a load takes from its shaft in N.m, in the sense of positive speed, over that speed
/// in rad/s: where they are negative, the load drives.
namespace loopwright::hydraulics {

/// What opposes motion changes its sign inside these bands about standstill (smooth.h).
inline constexpr Speed standstill{0.01};  // 0.1 1/min
inline constexpr Velocity rod_standstill{1e-4};

/// A vehicle seen at its wheels' shaft; positive speed drives it up a positive grade.
struct Vehicle {
    Mass mass;                  ///< its share of the vehicle's; above 0
    Length wheel_radius;        ///< above 0
    Grade grade;                ///< rise over run
    double rolling_resistance;  ///< over the weight on the ground; 0 or more
};

/// Force along the road that its weight asks for: m g sin, the slope's tangent being the grade.
Force grade_resistance(const Vehicle& vehicle);
/// Against the motion: coefficient times m g cos.
Force rolling_resistance(const Vehicle& vehicle);
/// Both at the wheels.
Dual<1> load_torque(const Vehicle& vehicle, double speed);

/// A mass on a drum; positive speed raises it.
struct Hoist {
    Mass mass;
    Length drum_radius;
};
/// Its weight at the drum, the same at any speed.
Torque load_torque(const Hoist& hoist);

/// A torque that opposes the motion, whichever way.
Dual<1> opposing_torque(Torque torque, double speed);
/// The same of a force in N on a rod, over its velocity in m/s.
Dual<1> opposing_force(Force force, double velocity);

}  // namespace loopwright::hydraulics
