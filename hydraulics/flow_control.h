#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// A flow control with a pressure compensator, or the priority way of a priority valve.
struct FlowControl {
    Flow flow;            ///< that it keeps; above 0
    Pressure least_drop;  ///< at which it keeps it; above 0
};

/// From this share of the least drop on, the orifice's root goes over into the constant flow.
inline constexpr double regulating_from = 0.8;
/// Below this share of the least drop the root is straightened, so that it has a slope at nothing.
inline constexpr double root_from = 0.01;

/// Flow in m3/s over the drop in Pa: as an orifice up to the least drop, then the flow that it
/// keeps; nothing backwards. Rising, with one slope everywhere but at no drop.
Dual<1> flow(const FlowControl& control, double drop);

}  // namespace loopwright::hydraulics
