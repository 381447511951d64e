#pragma once

#include <loopwright/hydraulics/dual.h>

/// Functions with a corner, rounded inside a band of width 1 by a cubic that meets value and slope
/// at its ends, so that outside the band nothing is changed. All of any real number.
namespace loopwright::hydraulics {

/// -1 below -1, 1 above 1, rising between.
template <std::size_t N>
Dual<N> soft_sign(const Dual<N>& u) {
    if (u.value <= -1.0) return -1.0;
    if (u.value >= 1.0) return 1.0;
    return chain(u.value * (3.0 - u.value * u.value) / 2.0, 1.5 * (1.0 - u.value * u.value), u);
}

/// 0 below 0, u above 1, rising between.
template <std::size_t N>
Dual<N> soft_ramp(const Dual<N>& u) {
    if (u.value <= 0.0) return 0.0;
    if (u.value >= 1.0) return u;
    return chain(u.value * u.value * (2.0 - u.value), u.value * (4.0 - 3.0 * u.value), u);
}

/// |u| outside -1 to 1.
template <std::size_t N>
Dual<N> soft_abs(const Dual<N>& u) {
    return soft_ramp(abs(u));
}

/// 0 below 0, 1 above 1, rising between.
template <std::size_t N>
Dual<N> soft_step(const Dual<N>& u) {
    if (u.value <= 0.0) return 0.0;
    if (u.value >= 1.0) return 1.0;
    return chain(u.value * u.value * (3.0 - 2.0 * u.value), 6.0 * u.value * (1.0 - u.value), u);
}

}  // namespace loopwright::hydraulics
