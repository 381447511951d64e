#include <cmath>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/tests/base/unit_definitions.h>

// Every spelling of the unit table against its definition, and against the figures that tables
// print.

namespace loopwright {
namespace {

using namespace definitions_of_units;

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

// A grade is the rise over the run (AASHTO, "Green Book": per cent); an angle's is its tangent.
TEST(ProofUnits, GradeOfAnAngle) {
    expect_close(si("45 deg", D::grade), 1, "45 deg");
    expect_close(si("30 deg", D::grade), 1 / std::sqrt(Real{3}), "30 deg");
    expect_close(si("-30 deg", D::grade), -1 / std::sqrt(Real{3}), "-30 deg");
    EXPECT_EQ(si("0 deg", D::grade), 0.0);
    EXPECT_NEAR(std::sin(std::atan(si("30 %", D::grade))), 0.287348, 5e-7);  // V-06 of the values
    EXPECT_FALSE(parse_quantity("90 deg", D::grade).ok());
    EXPECT_FALSE(parse_quantity("-90 deg", D::grade).ok());
    EXPECT_FALSE(parse_quantity("135 deg", D::grade).ok());
    EXPECT_TRUE(parse_quantity("89 deg", D::grade).ok());
}

TEST(ProofUnits, TheTableHasTheseSpellingsAndNoOther) {
    std::set<std::pair<Dimension, std::string_view>> wanted = {{D::grade, "deg"}};  // no factor
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
        {"1 slug", {D::mass, 1.459390e1}},
        {"1 inHg", {D::pressure, 3.386389e3}},
        {"1 mmHg", {D::pressure, 1.333224e2}},
        {"1 inH2O", {D::pressure, 2.490889e2}},
        {"1 kgf/cm2", {D::pressure, 9.80665e4}},
        {"1 psi", {D::bulk_modulus, 6.894757e3}},
        {"1 gal/h", {D::flow, 1.051503e-6}},
        {"1 ft3/min", {D::flow, 4.719474e-4}},
        {"1 qt", {D::volume, 9.463529e-4}},
        {"1 ft3", {D::volume, 2.831685e-2}},
        {"1 in2", {D::area, 6.4516e-4}},
        {"1 ft2", {D::area, 9.290304e-2}},
        {"1 lbf", {D::force, 4.448222}},
        {"1 lb.ft2", {D::inertia, 4.214011e-2}},
        {"1 lb.in2", {D::inertia, 2.926397e-4}},
        {"1 lb/ft3", {D::density, 1.601846e1}},
        {"1 lb/gal", {D::density, 1.198264e2}},
        {"1 slug/ft3", {D::density, 5.153788e2}},
        {"1 cP", {D::dynamic_viscosity, 1e-3}},
        {"1 lb/(ft.s)", {D::dynamic_viscosity, 1.488164}},
        {"1 lbf/in", {D::stiffness, 1.751268e2}},
        {"1 lbf/ft", {D::stiffness, 1.459390e1}},
        {"1 Btu", {D::energy, 1.055056e3}},
        {"1 kW.h", {D::energy, 3.6e6}},
        {"1 ft.lbf", {D::energy, 1.355818}},
        {"1 Btu/h", {D::power, 2.930711e-1}},
        {"1 Btu/(lb.degF)", {D::specific_heat, 4.1868e3}},
        {"1 Btu/(h.ft2.degF)", {D::heat_transfer, 5.678263}},
        {"1 Btu/(h.ft.degF)", {D::thermal_conductivity, 1.730735}},
        {"1 ft/s2", {D::acceleration, 3.048e-1}},
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

// US Army FM 5-499, table A-1: 1 hp = 42.44 Btu/min, and the 2544 Btu/h of the textbooks. (The Btu
// of the International Table gives 42.407 and 2544.43.)
TEST(ProofUnits, HorsepowerAsHeat) {
    EXPECT_NEAR(si("1 hp", D::power) / si("1 Btu/min", D::power), 42.44, 0.04);
    EXPECT_NEAR(si("1 hp", D::power) / si("1 Btu/h", D::power), 2544.0, 0.5);
}

// US Army TM 5-3895-348-14&P, paragraph 7-107, prints a cooler bypass of 15 psi as 1.05 kg/cm2.
TEST(ProofUnits, PoundsAndKilogramsOnAnArea) {
    EXPECT_NEAR(si("15 psi", D::pressure) / si("1 kgf/cm2", D::pressure), 1.05, 0.005);
}

// 20 lb/ton for each per cent of grade, civil engineering handbooks: earthwork.
TEST(ProofUnits, ResistanceOverWeight) {
    EXPECT_NEAR(si("20 lb/ton", D::ratio), si("1 %", D::grade), 1e-15);
    EXPECT_NEAR(si("40 kg/t", D::ratio), si("4 %", D::ratio), 1e-15);
}

// "Fluid Power with Applications", example 8-1: 0.75 in2 poppet, 2500 lb/in spring, 0.20 in
// preload: cracks at 667 psi. Example 11-2: 1000 psi and 10 gpm over a relief, 0.42
// Btu/(lb.degF), 7.42 lb/gal: 7.9 degF (42.4 Btu/min and 1714 rounded there).
TEST(ProofUnits, WorkedExamplesOfARelief) {
    const double force = si("2500 lbf/in", D::stiffness) * si("0.2 in", D::length);
    EXPECT_NEAR(force / si("0.75 in2", D::area) / si("1 psi", D::pressure), 667.0, 0.5);
    const double rise = si("1000 psi", D::pressure) / (si("7.42 lb/gal", D::density) *
                                                       si("0.42 Btu/(lb.degF)", D::specific_heat));
    EXPECT_NEAR(rise / si("1 degR", D::temperature_difference), 7.94, 0.05);
}

// "Principles of Highway Engineering and Traffic Analysis", exercise: 0.002045 slug/ft3,
// drag coefficient 0.35, 22 ft2, 88 ft/s: 60.97 lb.
TEST(ProofUnits, WorkedExampleOfDrag) {
    const double speed = si("88 ft/s", D::velocity);
    const double drag =
        0.5 * si("0.002045 slug/ft3", D::density) * 0.35 * si("22 ft2", D::area) * speed * speed;
    EXPECT_NEAR(drag / si("1 lbf", D::force), 60.97, 0.005);
}

// "Fluid Mechanics: Fundamentals and Applications", chapter 8: 62.36 lb/ft3, 7.536e-4 lb/(ft.s), 2
// in, 0.2 ft3/s: Reynolds number 126 400 (exactly 126 432).
TEST(ProofUnits, WorkedExampleOfAReynoldsNumber) {
    const double reynolds = 4 * si("0.2 ft3/s", D::flow) * si("62.36 lb/ft3", D::density) /
                            (static_cast<double>(turn / 2) * si("2 in", D::length) *
                             si("7.536e-4 lb/(ft.s)", D::dynamic_viscosity));
    EXPECT_NEAR(reynolds, 126432.0, 1.0);
}

}  // namespace
}  // namespace loopwright
