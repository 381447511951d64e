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
};

inline constexpr std::size_t dimension_count = 17;

/// "pressure", "flow", ...
std::string_view name(Dimension dimension);

/// "a pressure", "a flow", ...: for messages.
std::string_view phrase(Dimension dimension);

/// The SI unit as printed in machine output, such as "m3/rad".
std::string_view si_unit(Dimension dimension);

}  // namespace loopwright
