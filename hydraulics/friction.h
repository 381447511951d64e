#pragma once

#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// Up to the first Reynolds number flow in a pipe is laminar, from the second on turbulent. Between
/// them, where it is neither for sure, the two laws are blended with a cubic weight.
inline constexpr double laminar_until = 2300.0;
inline constexpr double turbulent_from = 4000.0;

/// Darcy's friction factor f of a round pipe over the Reynolds number (above 0), with its slope.
/// Laminar 64/Re (Hagen and Poiseuille), turbulent by Colebrook and White,
///     1/sqrt(f) = -2 lg(e/3.7 + 2.51/(Re sqrt(f))),
/// solved to rounding. Relative roughness e: 0 to 0.05, roughness over bore.
Dual<1> friction_factor(double reynolds, double relative_roughness);

/// f Re, the Poiseuille number: that of laminar flow is 64, down to Reynolds number 0.
Dual<1> poiseuille_number(double reynolds, double relative_roughness);

}  // namespace loopwright::hydraulics
