#pragma once

#include <span>

namespace loopwright::hydraulics {

/// A flow divider's common port parts into legs, of which the flows keep fixed shares. These laws
/// tie the pressures, in Pa; each is nothing where it holds, and writes its slopes.

/// Rotary: its legs are coupled machines, so that the powers balance. Common pressure less the
/// legs', each with its share. `shares` add up to 1; `slopes`: over the legs' pressures.
double rotary_divider(double common, std::span<const double> shares, std::span<const double> legs,
                      std::span<double> slopes);

struct SpoolDivider {
    double law = 0.0;  ///< no dimension; the pressures over 10 bar, the flow over 60 L/min
    double over_flow = 0.0;
    double over_common = 0.0;
};
/// Spool: going out (flow in m3/s above 0) it throttles all legs but that with the highest
/// pressure, which then is the common port's; coming back, all but that with the lowest; standing,
/// the common pressure is one between. `slopes`: over the legs' pressures.
SpoolDivider spool_divider(double flow, double common, std::span<const double> legs,
                           std::span<double> slopes);

}  // namespace loopwright::hydraulics
