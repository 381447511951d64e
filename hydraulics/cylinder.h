#pragma once

#include <cstddef>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// A cylinder; single-acting, its rod side stands open and is given area 0.
struct Cylinder {
    Area cap;                       ///< of the piston, at A; above 0
    Area rod_side;                  ///< round the rod, at B; 0 or more
    Leakage leakage = {};           ///< past the piston; 0 or more
    double force_efficiency = 1.0;  ///< above 0 and at most 1

    /// Of those diameters, the rod's smaller; `rods` is 1, or 2 for one through both ends.
    static Cylinder of(Length bore, Length rod, int rods);
};

/// Pressures in Pa over the atmosphere, velocity in m/s of the rod, positive where it comes out.
struct CylinderState {
    enum Variable : std::size_t { a, b, velocity };
    static constexpr std::size_t count = 3;

    double pressure_a;
    double pressure_b;
    double rod_velocity;
};

struct CylinderLaw {
    using Figure = Dual<CylinderState::count>;
    Figure flow_a;  ///< m3/s out of the cylinder at A
    Figure flow_b;
    Figure force;  ///< N with which the rod pushes out; negative where it pulls
};

/// Where the power turns round, friction changes sides inside these bands (loss_factor.h).
inline constexpr Force cylinder_force_band{10.0};
inline constexpr Velocity cylinder_velocity_band{1e-4};

/// Flow of each side its area times the velocity, less what leaks past the piston; force by the two
/// pressures, with the efficiency where it moves the rod, over it where the load does.
CylinderLaw cylinder_law(const Cylinder& cylinder, const CylinderState& state);

}  // namespace loopwright::hydraulics
