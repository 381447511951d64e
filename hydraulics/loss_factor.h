#pragma once

#include <cmath>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

/// What share of a torque or force gets through a part that loses power to friction: the efficiency
/// (above 0, at most 1) where effort and motion have one sign, so that power goes in, its inverse
/// where the motion drives the effort back. Effort and motion in units of the bands about 0 inside
/// which it goes over from one to the other, 1 at 0: no power is gained on the way.
template <std::size_t N>
Dual<N> loss_factor(const Dual<N>& effort, const Dual<N>& motion, double efficiency) {
    return exp(soft_sign(effort) * soft_sign(motion) * std::log(efficiency));
}

}  // namespace loopwright::hydraulics
