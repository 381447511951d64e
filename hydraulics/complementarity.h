#pragma once

#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// Nothing exactly where neither a nor b is negative and one of them is nothing: a valve is shut
/// and held shut, or it flows and nothing holds it. Fischer and Burmeister's function
/// a + b - sqrt(a^2 + b^2 + 2 e^2) (Fischer 1992, from memory) has slopes everywhere, so that
/// Newton's steps need not choose which of the two it is; `rounding` e above 0 makes it smooth, and
/// a b = e^2 at its root, for a continuation down to 0. Bring a and b to a scale of 1 first. At the
/// one corner that is left, a = b = e = 0, the slopes are those seen from a = b > 0.
template <std::size_t N>
Dual<N> complementarity(const Dual<N>& a, const Dual<N>& b, double rounding = 0.0) {
    const double root =
        std::sqrt(a.value * a.value + b.value * b.value + 2.0 * rounding * rounding);
    const double inverse = 1.0 / root;
    const double diagonal = std::sqrt(0.5);
    const double over_a = 1.0 - (root > 0.0 ? a.value * inverse : diagonal);
    const double over_b = 1.0 - (root > 0.0 ? b.value * inverse : diagonal);
    Dual<N> result(a.value + b.value - root);
    for (std::size_t i = 0; i < N; ++i) result.slope[i] = over_a * a.slope[i] + over_b * b.slope[i];
    return result;
}

/// Nothing exactly where something stands between its least and its most as what pushes it up has
/// it: at its most where the push is above nothing, at its least where it is below, anywhere
/// between where there is none. `above`: over its least; `below`: under its most.
template <std::size_t N>
Dual<N> between(const Dual<N>& above, const Dual<N>& below, const Dual<N>& push) {
    return complementarity(above, -complementarity(below, push));
}

}  // namespace loopwright::hydraulics
