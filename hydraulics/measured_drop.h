#pragma once

#include <optional>
#include <string_view>

#include <loopwright/hydraulics/grid.h>
#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/through_flow.h>

namespace loopwright::hydraulics {

/// A passive part with a measured table in place of a law: pressure drop in Pa over its two axes,
/// flow in m3/s without a sign and kinematic viscosity in m2/s.
struct MeasuredDrop {
    Grid grid;
};
inline constexpr std::string_view drop_axes[] = {"flow", "viscosity"};

/// Pressure lost in Pa with the sign of the flow; the same both ways.
ThroughFlow::Figure drop(const MeasuredDrop& measured, double flow, const Oil& oil);

/// Where flow or viscosity is outside what was measured; nothing inside.
std::optional<Grid::Outside> outside(const MeasuredDrop& measured, double flow, const Oil& oil);

}  // namespace loopwright::hydraulics
