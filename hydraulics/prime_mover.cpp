#include <loopwright/hydraulics/prime_mover.h>

namespace loopwright::hydraulics {

Dual<1> speed(const PrimeMover& mover, Speed at_rated, double torque) {
    const Dual<1> share = Dual<1>::variable(0, torque) / mover.rated_torque.si();
    return at_rated.si() + mover.droop * mover.rated_speed.si() * (1.0 - share);
}

}  // namespace loopwright::hydraulics
