#include <loopwright/hydraulics/gear.h>

#include <loopwright/hydraulics/loss_factor.h>

namespace loopwright::hydraulics {

double speed_out(const Gear& gear, double speed_in) { return speed_in / gear.ratio; }

Dual<GearState::count> torque_out(const Gear& gear, const GearState& state) {
    using Figure = Dual<GearState::count>;
    const Figure torque = Figure::variable(GearState::torque, state.torque_in);
    const Figure speed = Figure::variable(GearState::speed, state.speed_in);
    return gear.ratio * torque *
           loss_factor(torque / gear_torque_band.si(), speed / gear_speed_band.si(),
                       gear.efficiency);
}

}  // namespace loopwright::hydraulics
