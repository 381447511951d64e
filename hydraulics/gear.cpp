#include <loopwright/hydraulics/gear.h>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

double speed_out(const Gear& gear, double speed_in) { return speed_in / gear.ratio; }

Dual<GearState::count> torque_out(const Gear& gear, const GearState& state) {
    using Figure = Dual<GearState::count>;
    const Figure torque = Figure::variable(GearState::torque, state.torque_in);
    const Figure speed = Figure::variable(GearState::speed, state.speed_in);
    const double band = gear_torque_band.si();
    const double mean = (gear.efficiency + 1.0 / gear.efficiency) / 2.0;
    const double half = (1.0 / gear.efficiency - gear.efficiency) / 2.0;
    return gear.ratio * (mean * torque - half * band * soft_abs(torque / band) *
                                             soft_sign(speed / gear_speed_band.si()));
}

}  // namespace loopwright::hydraulics
