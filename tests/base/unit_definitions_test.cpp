#include <cmath>
#include <map>
#include <numbers>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>

// Every spelling of the unit table against its definition, worked out here in long double from the
// base definitions, and against the figures that tables print.

namespace loopwright {
namespace {

using D = Dimension;
using Real = long double;

// Base definitions. Inch, foot, pound: the yard and pound agreement of 1959 (NIST SP 811, 2008,
// appendix B.6 and B.8): 1 yd = 0.9144 m, 1 lb = 0.45359237 kg. g_n: 3rd CGPM (1901). Standard
// atmosphere: 10th CGPM (1954), resolution 4. Litre = dm3: 12th CGPM (1964). Minute, hour, tonne,
// degree of angle: SI brochure (9th edition), table 8.
constexpr Real yard = 0.9144L;
constexpr Real foot = yard / 3;
constexpr Real inch = yard / 36;
constexpr Real mile = 1760 * yard;
constexpr Real pound = 0.45359237L;
constexpr Real gravity = 9.80665L;
constexpr Real pound_force = pound * gravity;
constexpr Real minute = 60;
constexpr Real hour = 60 * minute;
constexpr Real decimetre = 0.1L;
constexpr Real litre = decimetre * decimetre * decimetre;
constexpr Real centimetre = 0.01L;
constexpr Real cubic_centimetre = centimetre * centimetre * centimetre;
constexpr Real cubic_inch = inch * inch * inch;
constexpr Real gallon = 231 * cubic_inch;  // the wine gallon: US liquid (NIST SP 811, B.6)
constexpr Real turn = 2 * std::numbers::pi_v<Real>;
constexpr Real psi = pound_force / (inch * inch);
constexpr Real atmosphere = 101325;
constexpr Real millimetre = 0.001L;
constexpr Real ice_point = 273.15L;  // 0 degC in K: 13th CGPM (1967), SI brochure 2.3.1

struct Definition {
    std::string_view spelling = {};
    Dimension dimension = D::ratio;
    Real one = 1;   // SI value of the number 1
    Real zero = 0;  // SI value of the number 0
};

const std::vector<Definition>& definitions() {
    static const std::vector<Definition> all = {
        {"", D::ratio, 1},
        {"%", D::ratio, Real{1} / 100},
        // Over the atmosphere.
        {"Pa", D::pressure, 1},
        {"kPa", D::pressure, 1000},
        {"MPa", D::pressure, 1000000},
        {"bar", D::pressure, 100000},  // SI brochure, 8th edition, table 8
        {"mbar", D::pressure, 100},
        {"psi", D::pressure, psi},
        // The same written absolute: less one standard atmosphere.
        {"bar abs", D::pressure, 100000 - atmosphere, -atmosphere},
        {"kPa abs", D::pressure, 1000 - atmosphere, -atmosphere},
        {"MPa abs", D::pressure, 1000000 - atmosphere, -atmosphere},
        {"psi abs", D::pressure, psi - atmosphere, -atmosphere},
        {"bar abs", D::absolute_pressure, 100000},
        {"mbar abs", D::absolute_pressure, 100},
        {"kPa abs", D::absolute_pressure, 1000},
        {"MPa abs", D::absolute_pressure, 1000000},
        {"psi abs", D::absolute_pressure, psi},
        // Geometric displacement, ISO 4391: volume a revolution; kept a radian.
        {"cm3/rev", D::displacement, cubic_centimetre / turn},
        {"cc/rev", D::displacement, cubic_centimetre / turn},
        {"mL/rev", D::displacement, litre / 1000 / turn},
        {"L/rev", D::displacement, litre / turn},
        {"in3/rev", D::displacement, cubic_inch / turn},
        {"m3/rad", D::displacement, 1},
        {"L/min", D::flow, litre / minute},
        {"l/min", D::flow, litre / minute},
        {"L/s", D::flow, litre},
        {"m3/s", D::flow, 1},
        {"m3/h", D::flow, 1 / hour},
        {"gpm", D::flow, gallon / minute},
        {"gal/min", D::flow, gallon / minute},
        {"in3/min", D::flow, cubic_inch / minute},
        {"L", D::volume, litre},
        {"l", D::volume, litre},
        {"mL", D::volume, litre / 1000},
        {"cm3", D::volume, cubic_centimetre},
        {"m3", D::volume, 1},
        {"in3", D::volume, cubic_inch},
        {"gal", D::volume, gallon},
        {"m", D::length, 1},
        {"cm", D::length, centimetre},
        {"mm", D::length, millimetre},
        {"um", D::length, millimetre / 1000},
        {"\u00B5m", D::length, millimetre / 1000},
        {"\u03BCm", D::length, millimetre / 1000},
        {"in", D::length, inch},
        {"ft", D::length, foot},
        // A speed of rotation counts turns (ISO 80000-3, rotational frequency); kept in rad/s.
        {"rpm", D::speed, turn / minute},
        {"1/min", D::speed, turn / minute},
        {"rev/min", D::speed, turn / minute},
        {"rad/s", D::speed, 1},
        {"m/s", D::velocity, 1},
        {"km/h", D::velocity, 1000 / hour},
        {"ft/s", D::velocity, foot},
        {"mph", D::velocity, mile / hour},
        {"N.m", D::torque, 1},
        {"Nm", D::torque, 1},
        {"kN.m", D::torque, 1000},
        {"lbf.ft", D::torque, pound_force * foot},
        {"lbf.in", D::torque, pound_force * inch},
        {"W", D::power, 1},
        {"kW", D::power, 1000},
        {"hp", D::power, 550 * foot * pound_force},  // a second: NIST SP 811, B.8
        {"PS", D::power, 75 * gravity},              // 75 kgf.m/s: NIST SP 811, B.8, metric
        {"rad", D::angle, 1},
        {"deg", D::angle, turn / 360},
        {"degC", D::temperature, 1 + ice_point, ice_point},
        {"\u00B0C", D::temperature, 1 + ice_point, ice_point},
        // T/K = (t/degF + 459.67)/1.8: NIST SP 811, B.8.
        {"degF", D::temperature, 460.67L / 1.8L, 459.67L / 1.8L},
        {"\u00B0F", D::temperature, 460.67L / 1.8L, 459.67L / 1.8L},
        {"K", D::temperature_difference, 1},
        // Stokes = cm2/s: NIST SP 811, B.8.
        {"cSt", D::kinematic_viscosity, centimetre * centimetre / 100},
        {"mm2/s", D::kinematic_viscosity, millimetre * millimetre},
        {"m2/s", D::kinematic_viscosity, 1},
        {"kg/m3", D::density, 1},
        {"g/cm3", D::density, Real{1} / 1000 / cubic_centimetre},
        {"kg/L", D::density, 1 / litre},
        {"kg", D::mass, 1},
        {"g", D::mass, Real{1} / 1000},
        {"t", D::mass, 1000},
        {"lb", D::mass, pound},
    };
    return all;
}

double si(std::string_view text, Dimension dimension) {
    const ParsedQuantity parsed = parse_quantity(text, dimension);
    EXPECT_TRUE(parsed.ok()) << text << ": " << parsed.message;
    return parsed.si;
}

void expect_close(double found, Real expected, std::string_view what) {
    const Real scale = std::max(std::abs(expected), Real{1e-30});
    EXPECT_LT(std::abs((static_cast<Real>(found) - expected) / scale), 1e-15L)
        << what << ": " << found << " in place of " << expected;
}

TEST(ProofUnits, EverySpellingHasTheFactorOfItsDefinition) {
    for (const Definition& one : definitions()) {
        const std::string unit(one.spelling);
        expect_close(si("1 " + unit, one.dimension), one.one, "1 " + unit);
        EXPECT_NEAR(si("0 " + unit, one.dimension), static_cast<double>(one.zero), 1e-9) << unit;
        const Real hundred = one.zero + 100 * (one.one - one.zero);
        expect_close(si("100 " + unit, one.dimension), hundred, "100 " + unit);
    }
}

TEST(ProofUnits, TheTableHasTheseSpellingsAndNoOther) {
    std::set<std::pair<Dimension, std::string_view>> wanted;
    for (const Definition& one : definitions()) {
        EXPECT_TRUE(wanted.emplace(one.dimension, one.spelling).second) << one.spelling;
    }
    std::set<std::pair<Dimension, std::string_view>> found;
    for (const Unit& unit : units()) {
        EXPECT_TRUE(found.emplace(unit.dimension, unit.spelling).second) << unit.spelling;
    }
    EXPECT_EQ(found, wanted);
}

// NIST SP 811 (2008), table B.8, as printed there to seven digits. All figures are from memory, no
// independent check; that the factors follow from their definitions is shown above.
TEST(ProofUnits, FiguresThatSp811Prints) {
    const std::map<std::string_view, std::pair<Dimension, double>> printed = {
        {"1 psi", {D::pressure, 6.894757e3}},
        {"1 gal/min", {D::flow, 6.309020e-5}},
        {"1 gpm", {D::flow, 6.309020e-5}},
        {"1 in3/min", {D::flow, 2.731177e-7}},
        {"1 gal", {D::volume, 3.785412e-3}},
        {"1 in3", {D::volume, 1.638706e-5}},
        {"1 hp", {D::power, 7.456999e2}},
        {"1 PS", {D::power, 7.354988e2}},
        {"1 lbf.ft", {D::torque, 1.355818}},
        {"1 lbf.in", {D::torque, 1.129848e-1}},
        {"1 lb", {D::mass, 4.535924e-1}},
        {"1 mph", {D::velocity, 4.4704e-1}},
        {"1 km/h", {D::velocity, 2.777778e-1}},
        {"1 ft/s", {D::velocity, 3.048e-1}},
        {"1 rpm", {D::speed, 1.047198e-1}},
        {"1 deg", {D::angle, 1.745329e-2}},
        {"1 cSt", {D::kinematic_viscosity, 1e-6}},
        {"1 L/min", {D::flow, 1.666667e-5}},
        {"1 t", {D::mass, 1e3}},
    };
    for (const auto& [text, value] : printed) {
        EXPECT_NEAR(si(text, value.first) / value.second, 1.0, 5e-7) << text;
    }
}

// US Army FM 5-499, Hydraulics (1997), table A-1: 1 hp = 1.014 metric hp. (The yard of 1959 gives
// 1.01387.)
TEST(ProofUnits, HorsepowerOverMetricHorsepower) {
    EXPECT_NEAR(si("1 hp", D::power) / si("1 PS", D::power), 1.014, 5e-4);
}

// -40 is the same on both scales, 212 degF is 100 degC, 32 degF is 0 degC: by the definition.
TEST(ProofUnits, FixedPointsOfTemperature) {
    EXPECT_NEAR(si("-40 degF", D::temperature), si("-40 degC", D::temperature), 1e-12);
    EXPECT_NEAR(si("212 degF", D::temperature), si("100 degC", D::temperature), 1e-12);
    EXPECT_NEAR(si("32 degF", D::temperature), 273.15, 1e-12);
    EXPECT_NEAR(si("-459.67 degF", D::temperature), 0.0, 1e-12);
    EXPECT_NEAR(si("-273.15 degC", D::temperature), 0.0, 1e-12);
}

// A textbook's worked examples of gauge and absolute pressure, with the atmosphere rounded to 14.7
// psi and 101 kPa: -5 psi is 9.7 psi absolute, -34 kPa is 67 kPa absolute ("Fluid Power with
// Applications", examples 2-7 and 2-16).
TEST(ProofUnits, AbsoluteAndGauge) {
    EXPECT_NEAR(si("9.7 psi abs", D::pressure) / si("1 psi", D::pressure), -5.0, 0.05);
    EXPECT_NEAR(si("67 kPa abs", D::pressure), -34e3, 0.5e3);
    EXPECT_NEAR(si("101.325 kPa abs", D::pressure), 0.0, 1e-9);
    EXPECT_NEAR(si("1.01325 bar abs", D::pressure), 0.0, 1e-9);
    EXPECT_NEAR(si("101.325 kPa abs", D::absolute_pressure), 101325.0, 1e-9);
}

// "Fluid Power with Applications", example 7-2: a motor of 5 in3 a revolution, 1000 psi and 10 gpm,
// without losses: 462 rpm, 795 lbf.in, 5.83 hp (the book cuts 795.77 to 795).
TEST(ProofUnits, WorkedExampleOfAMotor) {
    const double displacement = si("5 in3/rev", D::displacement);
    const double flow = si("10 gpm", D::flow);
    const double pressure = si("1000 psi", D::pressure);
    EXPECT_NEAR(flow / displacement / si("1 rpm", D::speed), 462.0, 0.05);
    EXPECT_NEAR(displacement * pressure / si("1 lbf.in", D::torque), 795.4, 0.5);
    EXPECT_NEAR(flow * pressure / si("1 hp", D::power), 5.83, 0.005);
}

// A gallon is 231 in3, so 231 in3/rev at 1 rev/min is 1 gpm; 100 cm3/rev at 1000 rpm is 100 L/min.
TEST(ProofUnits, DisplacementTimesSpeed) {
    EXPECT_NEAR(
        si("231 in3/rev", D::displacement) * si("1 rev/min", D::speed) / si("1 gpm", D::flow), 1.0,
        1e-15);
    EXPECT_NEAR(
        si("100 cm3/rev", D::displacement) * si("1000 rpm", D::speed) / si("100 L/min", D::flow),
        1.0, 1e-15);
}

// Torque x speed = power: hp = lbf.ft x rpm / 5252 (33 000/2 pi), a rule of the trade that follows
// from the definition of the horsepower as 33 000 ft.lbf/min.
TEST(ProofUnits, HorsepowerOfTorqueAndSpeed) {
    EXPECT_NEAR(si("5252 lbf.ft", D::torque) * si("1 rpm", D::speed) / si("1 hp", D::power), 1.0,
                5e-5);
}

}  // namespace
}  // namespace loopwright
