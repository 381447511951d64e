#pragma once

#include <cstddef>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// A gearbox between two shafts.
struct Gear {
    double ratio;  ///< speed of the end in over that of the end out, negative where they turn
                   ///< against each other; not 0
    double efficiency = 1.0;  ///< whichever end drives; above 0 and at most 1
};

/// Speed of the end out, in rad/s, at a speed of the end in.
double speed_out(const Gear& gear, double speed_in);

struct GearState {
    enum Variable : std::size_t { torque, speed };
    static constexpr std::size_t count = 2;

    double torque_in;  ///< N.m that the shaft at the end in puts into it
    double speed_in;   ///< rad/s
};
/// Where the power turns round, its loss changes sides inside these bands (loss_factor.h).
inline constexpr Torque gear_torque_band{0.1};
inline constexpr Speed gear_speed_band{0.5};

/// Torque that it gives to the shaft at the end out, in N.m: ratio times torque in, times the
/// efficiency where the end in drives, over it where the end out does.
Dual<GearState::count> torque_out(const Gear& gear, const GearState& state);

}  // namespace loopwright::hydraulics
