#include <cmath>
#include <random>
#include <string>
#include <string_view>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>

// What is printed: in the trade's unit, whole numbers whole, the rest to four digits.

namespace loopwright {
namespace {

using D = Dimension;

std::string printed(std::string_view text, Dimension dimension) {
    const ParsedQuantity parsed = parse_quantity(text, dimension);
    EXPECT_TRUE(parsed.ok()) << text;
    return format_quantity(parsed.si, dimension);
}

// SI values worked out by hand.
TEST(QuantityPrint, TheTradesUnits) {
    EXPECT_EQ(format_quantity(0.2, D::ratio), "0.2");
    EXPECT_EQ(format_quantity(24e5, D::pressure), "24 bar");
    EXPECT_EQ(format_quantity(0.8e5, D::absolute_pressure), "0.8 bar abs");
    EXPECT_EQ(format_quantity(71e-6 / (2 * 3.141592653589793), D::displacement), "71 cm3/rev");
    EXPECT_EQ(format_quantity(40e-3 / 60, D::flow), "40 L/min");
    EXPECT_EQ(format_quantity(0.060, D::volume), "60 L");
    EXPECT_EQ(format_quantity(2400 * 2 * 3.141592653589793 / 60, D::speed), "2400 rpm");
    EXPECT_EQ(format_quantity(4.5, D::velocity), "4.5 m/s");
    EXPECT_EQ(format_quantity(300, D::torque), "300 N.m");
    EXPECT_EQ(format_quantity(55e3, D::power), "55 kW");
    EXPECT_EQ(format_quantity(3.141592653589793 / 10, D::angle), "18 deg");
    EXPECT_EQ(format_quantity(263.15, D::temperature), "-10 degC");
    EXPECT_EQ(format_quantity(30, D::temperature_difference), "30 K");
    EXPECT_EQ(format_quantity(46e-6, D::kinematic_viscosity), "46 mm2/s");
    EXPECT_EQ(format_quantity(870, D::density), "870 kg/m3");
    EXPECT_EQ(format_quantity(1200, D::mass), "1200 kg");
    EXPECT_EQ(format_quantity(20e-4, D::area), "20 cm2");
    EXPECT_EQ(format_quantity(12e3, D::force), "12 kN");
    EXPECT_EQ(format_quantity(0.4, D::inertia), "0.4 kg.m2");
    EXPECT_EQ(format_quantity(0.25, D::time), "0.25 s");
    EXPECT_EQ(format_quantity(0.12, D::grade), "12 %");
    EXPECT_EQ(format_quantity(1900, D::specific_heat), "1.9 kJ/(kg.K)");
    EXPECT_EQ(format_quantity(0.04, D::dynamic_viscosity), "40 mPa.s");
    EXPECT_EQ(format_quantity(1.6e9, D::bulk_modulus), "1600 MPa");
    EXPECT_EQ(format_quantity(25e3, D::stiffness), "25 N/mm");
    EXPECT_EQ(format_quantity(900, D::torsional_stiffness), "900 N.m/rad");
    EXPECT_EQ(format_quantity(400, D::thermal_conductance), "400 W/K");
    EXPECT_EQ(format_quantity(12, D::heat_transfer), "12 W/(m2.K)");
    EXPECT_EQ(format_quantity(0.13, D::thermal_conductivity), "0.13 W/(m.K)");
    EXPECT_EQ(format_quantity(0.0007, D::thermal_expansion), "0.0007 1/K");
    EXPECT_EQ(format_quantity(0.02e-3 / 60 / 1e5, D::leakage), "0.02 L/(min.bar)");
    EXPECT_EQ(format_quantity(80e3, D::energy), "80 kJ");
    EXPECT_EQ(format_quantity(0.6, D::current), "600 mA");
    EXPECT_EQ(format_quantity(24, D::voltage), "24 V");
    EXPECT_EQ(format_quantity(50, D::frequency), "50 Hz");
    EXPECT_EQ(format_quantity(0.5, D::acceleration), "0.5 m/s2");
}

TEST(QuantityPrint, LengthsTakeTheUnitOfTheirSize) {
    EXPECT_EQ(format_quantity(10e-6, D::length), "10 um");
    EXPECT_EQ(format_quantity(-10e-6, D::length), "-10 um");
    EXPECT_EQ(format_quantity(99.99e-6, D::length), "99.99 um");
    EXPECT_EQ(format_quantity(99.996e-6, D::length), "0.1 mm");
    EXPECT_EQ(format_quantity(25.4e-3, D::length), "25.4 mm");
    EXPECT_EQ(format_quantity(0.9999, D::length), "999.9 mm");
    EXPECT_EQ(format_quantity(0.99996, D::length), "1 m");
    EXPECT_EQ(format_quantity(2.5, D::length), "2.5 m");
    EXPECT_EQ(format_quantity(0, D::length), "0 mm");
}

TEST(QuantityPrint, Digits) {
    EXPECT_EQ(format_quantity(123456, D::mass), "123456 kg");  // whole: all digits
    EXPECT_EQ(format_quantity(-123456, D::mass), "-123456 kg");
    EXPECT_EQ(format_quantity(1.23456, D::mass), "1.235 kg");
    EXPECT_EQ(format_quantity(1234.56, D::mass), "1235 kg");
    EXPECT_EQ(format_quantity(12345.6, D::mass), "12350 kg");  // no exponent
    EXPECT_EQ(format_quantity(-12345.6, D::mass), "-12350 kg");
    EXPECT_EQ(format_quantity(9999.7, D::mass), "10000 kg");
    EXPECT_EQ(format_quantity(0.00012345, D::mass), "0.0001234 kg");
    EXPECT_EQ(format_quantity(0, D::mass), "0 kg");
    EXPECT_EQ(format_quantity(-0.0, D::mass), "0 kg");
    // Dust of rounding is no figure.
    EXPECT_EQ(format_quantity(0.1 + 0.2 - 0.3, D::mass), "0 kg");
    EXPECT_EQ(format_quantity(2.9999999999, D::mass), "3 kg");
}

TEST(QuantityPrint, CustomaryUnitsComeOutInTheTradesUnit) {
    EXPECT_EQ(printed("6000 psi", D::pressure), "413.7 bar");            // x 0.0689476
    EXPECT_EQ(printed("15 psi", D::pressure), "1.034 bar");              // the same
    EXPECT_EQ(printed("18 gpm", D::flow), "68.14 L/min");                // x 3.78541
    EXPECT_EQ(printed("1 in", D::length), "25.4 mm");                    // exact
    EXPECT_EQ(printed("100 hp", D::power), "74.57 kW");                  // x 0.7457
    EXPECT_EQ(printed("140 degF", D::temperature), "60 degC");           // (F - 32) / 1.8
    EXPECT_EQ(printed("10 in3/rev", D::displacement), "163.9 cm3/rev");  // x 16.3871
}

// Seeded sets over every dimension.
class PrintedOften : public ::testing::TestWithParam<std::size_t> {
  protected:
    Dimension dimension() const { return static_cast<Dimension>(GetParam()); }
    /// The unit that is printed, behind its blank.
    std::string unit() const {
        const std::string text = format_quantity(300.0, dimension());
        const std::size_t blank = text.find(' ');
        return blank == std::string::npos ? ""
               : dimension() == D::length ? " mm"
                                          : text.substr(blank);
    }
    std::mt19937 random_{20240521U};  // mt19937's numbers are fixed by the standard
};

// A number of at most four digits in the unit that is printed comes back as it was written.
TEST_P(PrintedOften, ShortNumbersComeBackAsWritten) {
    for (int i = 0; i < 2000; ++i) {
        const auto digits = static_cast<unsigned>(random_() % 9999 + 1);
        const int point = static_cast<int>(random_() % 4);
        const double number = digits / std::pow(10.0, point);
        // Lengths below 0.1 mm and from 1 m on are printed in other units.
        if (dimension() == D::length && (number < 0.1 || number >= 1000)) continue;
        const std::string text = fmt::format("{:.10g}{}", number, unit());
        EXPECT_EQ(printed(text, dimension()), text);
        if (dimension() != D::absolute_pressure) {
            EXPECT_EQ(printed("-" + text, dimension()), "-" + text);
        }
    }
}

// What is printed reads back within half a unit of the fourth digit, and prints the same again.
TEST_P(PrintedOften, PrintedNumbersReadBack) {
    const double zero = parse_quantity("0" + unit(), dimension()).si;
    for (int i = 0; i < 2000; ++i) {
        const double mantissa = 1.0 + 9.0 * static_cast<double>(random_()) / 4294967296.0;
        const double si = zero + mantissa * std::pow(10.0, static_cast<int>(random_() % 9) - 3);
        const std::string text = format_quantity(si, dimension());
        const ParsedQuantity parsed = parse_quantity(text, dimension());
        ASSERT_TRUE(parsed.ok()) << text;
        EXPECT_LE(std::abs(parsed.si - si), 0.5001e-3 * std::abs(si - zero)) << text;
        EXPECT_EQ(format_quantity(parsed.si, dimension()), text);
    }
}

INSTANTIATE_TEST_SUITE_P(QuantityPrint, PrintedOften,
                         ::testing::Range(std::size_t{0}, dimension_count));

}  // namespace
}  // namespace loopwright
