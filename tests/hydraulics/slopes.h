#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics::testing {

/// Holds the slopes of a law against central differences: `law` takes N numbers and gives a
/// Dual<N>; `scale` is a size of each variable by which the law changes little. Of a difference
/// over h, the error is h^2 from the law's bend and rounding over h.
template <std::size_t N, class Law>
void expect_slopes(const Law& law, const std::array<double, N>& at,
                   const std::array<double, N>& scale, double share = 1e-6) {
    const Dual<N> figure = law(at);
    double size = std::abs(figure.value);
    for (std::size_t i = 0; i < N; ++i) size = std::max(size, std::abs(figure.slope[i]) * scale[i]);
    for (std::size_t i = 0; i < N; ++i) {
        std::array<double, N> above = at;
        std::array<double, N> below = at;
        above[i] += 1e-5 * scale[i];
        below[i] -= 1e-5 * scale[i];
        const double step = above[i] - below[i];
        const double difference = (law(above).value - law(below).value) / step;
        EXPECT_NEAR(figure.slope[i] * scale[i], difference * scale[i], share * size + 1e-300)
            << "variable " << i;
    }
}

}  // namespace loopwright::hydraulics::testing
