#include <loopwright/hydraulics/gear.h>

#include <cmath>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

double speed_out(const Gear& gear, double speed_in) { return speed_in / gear.ratio; }

Dual<GearState::count> torque_out(const Gear& gear, const GearState& state) {
    using Figure = Dual<GearState::count>;
    const Figure torque = Figure::variable(GearState::torque, state.torque_in);
    const Figure speed = Figure::variable(GearState::speed, state.speed_in);
    // 1 where the end in drives, -1 where the end out does: the sign of the power.
    const Figure way =
        soft_sign(torque / gear_torque_band.si()) * soft_sign(speed / gear_speed_band.si());
    return gear.ratio * torque * exp(way * std::log(gear.efficiency));
}

}  // namespace loopwright::hydraulics
