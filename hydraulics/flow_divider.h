#pragma once

#include <span>

namespace loopwright::hydraulics {

/// Pressure at the inlet of a flow divider, in Pa, whose legs carry `shares` of its flow (each 0 or
/// more, together 1) to outlets at `pressures`, and its slopes over these; the three spans are as
/// long as there are legs, one at least. Losses of its own are left out.
/// Coupled machines: the power in is the power out, so that an unloaded leg helps a loaded one.
double rotary_divider_inlet(std::span<const double> shares, std::span<const double> pressures,
                            std::span<double> slopes);
/// A spool throttles all legs down to the one with the highest pressure; of equals the first.
double spool_divider_inlet(std::span<const double> pressures, std::span<double> slopes);

}  // namespace loopwright::hydraulics
