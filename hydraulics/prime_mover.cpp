#include <loopwright/hydraulics/prime_mover.h>

#include <algorithm>
#include <cmath>

#include <loopwright/hydraulics/complementarity.h>

namespace loopwright::hydraulics {

namespace {

using Figure = Dual<MoverState::count>;

double rated_power(const PrimeMover& mover) {
    return mover.rated_torque.si() * mover.rated_speed.si();
}

/// As measured, else rated power over the speed, at any below `from` what it is there.
template <std::size_t N>
Dual<N> at_full_load(const PrimeMover& mover, const Dual<N>& speed, Speed from) {
    if (mover.full_load) {
        const Grid::Ends ends = mover.full_load->ends(0);
        const Dual<N> inside = speed.value < ends.least  ? Dual<N>(ends.least)
                               : speed.value > ends.most ? Dual<N>(ends.most)
                                                         : speed;
        const Grid::Figure found = mover.full_load->at({&inside.value, 1});
        return found.slope[0] * (inside - inside.value) + found.value;
    }
    return Dual<N>(rated_power(mover)) / max(Dual<N>(from.si()), speed);
}

/// The governor's line.
template <std::size_t N>
Dual<N> governed(const PrimeMover& mover, Speed setting, const Dual<N>& speed) {
    const double loses = mover.droop * mover.rated_speed.si();
    return ((Dual<N>(setting.si()) - speed) / loses + 1.0) * mover.rated_torque.si();
}

}  // namespace

Dual<1> governed_torque(const PrimeMover& mover, Speed setting, double speed) {
    return governed(mover, setting, Dual<1>::variable(0, speed));
}

Speed stalling_speed(const PrimeMover& mover) {
    if (mover.full_load) return Speed(mover.full_load->ends(0).least);
    const double highest = mover.max_torque ? mover.max_torque->si() : 0.0;
    return Speed(rated_power(mover) / std::max(highest, mover.rated_torque.si()));
}

Dual<1> full_load_torque(const PrimeMover& mover, double speed) {
    return at_full_load(mover, Dual<1>::variable(0, speed), stalling_speed(mover));
}

Figure mover_law(const PrimeMover& mover, Speed setting, const MoverState& state) {
    const Figure speed = Figure::variable(MoverState::speed, state.shaft_speed);
    const Figure torque = Figure::variable(MoverState::torque, state.given_torque);
    if (mover.droop <= 0.0) return (speed - setting.si()) / mover.rated_speed.si();
    const double size = mover.rated_torque.si();
    const Figure push = (governed(mover, setting, speed) - torque) / size;
    const Figure below = (at_full_load(mover, speed, stalling_speed(mover)) - torque) / size;
    if (!mover.braking_torque) return complementarity(below, push);
    return between((torque + mover.braking_torque->si()) / size, below, push);
}

Figure load_room(const PrimeMover& mover, Speed setting, const MoverState& state) {
    const Figure speed = Figure::variable(MoverState::speed, state.shaft_speed);
    if (mover.droop > 0.0) return (speed - setting.si()) / (mover.droop * mover.rated_speed.si());
    // One that turns backwards gives a torque below nothing.
    const double sense = state.shaft_speed < 0.0 ? -1.0 : 1.0;
    const Figure torque = Figure::variable(MoverState::torque, state.given_torque);
    return (at_full_load(mover, abs(speed), mover.rated_speed) - sense * torque) /
           mover.rated_torque.si();
}

}  // namespace loopwright::hydraulics
