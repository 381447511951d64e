#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// A brake that a spring applies and pressure releases, or one that pressure applies. A clutch is
/// one, between two shafts.
struct Brake {
    bool spring_applied = true;
    Torque torque;       ///< that it holds when fully applied; 0 or more
    Pressure begins;     ///< to give way; of a pressure-applied one: to grip (0 where not known)
    Pressure completes;  ///< released, or applied; above `begins`
};

/// Torque in N.m that it holds at a pressure in Pa over its housing; in a straight line between the
/// two pressures, with slope 0 outside them.
Dual<1> holding_torque(const Brake& brake, double pressure);

}  // namespace loopwright::hydraulics
