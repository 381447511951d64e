#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace loopwright {

/// What a quantity measures. The SI unit named beside each is the one every value is kept in;
/// `unit_text.h` has the spellings a circuit may use.
enum class Dimension : std::uint8_t {
    ratio,                   ///< 1 (a bare number or a percentage)
    pressure,                ///< Pa over the atmosphere
    absolute_pressure,       ///< Pa absolute
    displacement,            ///< m3/rad
    flow,                    ///< m3/s
    volume,                  ///< m3
    length,                  ///< m
    speed,                   ///< rad/s, of a shaft
    velocity,                ///< m/s
    torque,                  ///< N.m
    power,                   ///< W
    angle,                   ///< rad
    temperature,             ///< K
    temperature_difference,  ///< K
    kinematic_viscosity,     ///< m2/s
    density,                 ///< kg/m3
    mass,                    ///< kg
    area,                    ///< m2
    force,                   ///< N
    inertia,                 ///< kg.m2, of what turns
    time,                    ///< s
    grade,                   ///< 1: rise over run, the tangent of the slope
    specific_heat,           ///< J/(kg.K)
    dynamic_viscosity,       ///< Pa.s
    bulk_modulus,            ///< Pa; no atmosphere is in it
    stiffness,               ///< N/m, of a spring that is pushed
    torsional_stiffness,     ///< N.m/rad
    thermal_conductance,     ///< W/K, of a cooler or a wall as a whole
    heat_transfer,           ///< W/(m2.K), of a surface
    thermal_conductivity,    ///< W/(m.K), of a material
    thermal_expansion,       ///< 1/K
    leakage,                 ///< m3/(s.Pa): flow over pressure
    energy,                  ///< J
    current,                 ///< A
    voltage,                 ///< V
    frequency,               ///< Hz
    acceleration,            ///< m/s2
};

inline constexpr std::size_t dimension_count = 37;

/// "pressure", "flow", ...
std::string_view name(Dimension dimension);

/// "a pressure", "a flow", ...: for messages.
std::string_view phrase(Dimension dimension);

/// The SI unit as printed in machine output, such as "m3/rad".
std::string_view si_unit(Dimension dimension);

}  // namespace loopwright
