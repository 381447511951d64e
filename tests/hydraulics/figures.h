#pragma once

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/base/quantity.h>

/// Units of the sources, in SI, from their definitions: inch 25.4 mm, pound-force 4.448 221 615 260
/// 5 N, US gallon 231 in3.
namespace loopwright::hydraulics::testing {

inline constexpr double bar = 1e5;
inline constexpr double inch = 0.0254;
inline constexpr double foot = 0.3048;
inline constexpr double pound_force = 4.4482216152605;
inline constexpr double pound = 0.45359237;
inline constexpr double psi = pound_force / (inch * inch);
inline constexpr double lbf_in = pound_force * inch;
inline constexpr double lbf_ft = pound_force * foot;
inline constexpr double horsepower = 550.0 * lbf_ft;
inline constexpr double cubic_inch = inch * inch * inch;
inline constexpr double gallon = 231.0 * cubic_inch;
inline constexpr double gpm = gallon / 60.0;
inline constexpr double litre_per_minute = 1e-3 / 60.0;
inline constexpr double rpm = 2.0 * std::numbers::pi / 60.0;
inline constexpr double turn = 2.0 * std::numbers::pi;  // displacement: m3/rad = (m3/rev) / turn
inline constexpr double cm3 = 1e-6;
inline constexpr double cst = 1e-6;
inline constexpr double btu = 1055.05585262;
inline constexpr double fahrenheit = 5.0 / 9.0;  // a difference
inline constexpr double water = 999.0;           // kg/m3, of specific gravities

constexpr double kelvin(double celsius) { return celsius + 273.15; }

/// Relative.
inline ::testing::AssertionResult within(double share, double got, double expected) {
    if (std::abs(got - expected) <= share * std::abs(expected))
        return ::testing::AssertionSuccess();
    return ::testing::AssertionFailure() << got << " is not within " << share << " of " << expected
                                         << ", but off by " << got / expected - 1.0;
}

}  // namespace loopwright::hydraulics::testing
