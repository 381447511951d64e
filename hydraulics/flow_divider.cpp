#include <loopwright/hydraulics/flow_divider.h>

#include <algorithm>
#include <numeric>

namespace loopwright::hydraulics {

double rotary_divider_inlet(std::span<const double> shares, std::span<const double> pressures,
                            std::span<double> slopes) {
    std::copy(shares.begin(), shares.end(), slopes.begin());
    return std::inner_product(shares.begin(), shares.end(), pressures.begin(), 0.0);
}

double spool_divider_inlet(std::span<const double> pressures, std::span<double> slopes) {
    const auto highest = std::max_element(pressures.begin(), pressures.end());
    std::fill(slopes.begin(), slopes.end(), 0.0);
    slopes[static_cast<std::size_t>(highest - pressures.begin())] = 1.0;
    return *highest;
}

}  // namespace loopwright::hydraulics
