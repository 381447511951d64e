#include <loopwright/hydraulics/flow_divider.h>

#include <algorithm>
#include <cstddef>

#include <loopwright/hydraulics/complementarity.h>

namespace loopwright::hydraulics {

namespace {

constexpr double pressure_scale = 1e6;  // Pa
constexpr double flow_scale = 1e-3;     // m3/s

}  // namespace

double rotary_divider(double common, std::span<const double> shares, std::span<const double> legs,
                      std::span<double> slopes) {
    for (std::size_t i = 0; i < legs.size(); ++i) {
        common -= shares[i] * legs[i];
        slopes[i] = -shares[i];
    }
    return common;
}

SpoolDivider spool_divider(double flow, double common, std::span<const double> legs,
                           std::span<double> slopes) {
    // The common pressure is kept between two bounds: at the upper one the flow may go out, at the
    // lower one it may come back.
    const auto [lowest, highest] = std::minmax_element(legs.begin(), legs.end());
    using Figure = Dual<4>;
    const Figure at = Figure::variable(0, common / pressure_scale);
    const Figure below = Figure::variable(1, *highest / pressure_scale) - at;
    const Figure over = at - Figure::variable(2, *lowest / pressure_scale);
    const Figure out = Figure::variable(3, flow / flow_scale);
    const Figure law = complementarity(over, -complementarity(below, out));
    std::fill(slopes.begin(), slopes.end(), 0.0);
    slopes[static_cast<std::size_t>(highest - legs.begin())] += law.slope[1] / pressure_scale;
    slopes[static_cast<std::size_t>(lowest - legs.begin())] += law.slope[2] / pressure_scale;
    return {law.value, law.slope[3] / flow_scale, law.slope[0] / pressure_scale};
}

}  // namespace loopwright::hydraulics
