#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// An engine under its governor, or an electric motor in its working range: a straight line.
struct PrimeMover {
    Speed rated_speed;    ///< above 0
    Torque rated_torque;  ///< above 0
    double droop = 0.0;   ///< share of the rated speed that it loses from no load to rated load
};

/// Speed in rad/s over the torque that it gives in N.m, set to give `at_rated` under the rated
/// torque; with no torque faster by the droop, driven by the load faster still.
Dual<1> speed(const PrimeMover& mover, Speed at_rated, double torque);

}  // namespace loopwright::hydraulics
