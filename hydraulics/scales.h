#pragma once

/// What a network's unknowns and equations are divided by, to be about 1.
namespace loopwright::hydraulics {

inline constexpr double pressure_scale = 1e6;  // Pa
inline constexpr double flow_scale = 1e-3;     // m3/s
inline constexpr double speed_scale = 100.0;   // rad/s
inline constexpr double torque_scale = 100.0;  // N.m
inline constexpr double velocity_scale = 0.1;  // m/s, of a rod
inline constexpr double force_scale = 1e4;     // N

}  // namespace loopwright::hydraulics
