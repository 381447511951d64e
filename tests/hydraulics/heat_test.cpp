// Heat of a loop and of a whole duty, against closed forms done by hand.
#include <cmath>
#include <optional>
#include <string>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/duty_heat.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/reader.h>

namespace loopwright::hydraulics {
namespace {

constexpr double density = 870.0;         // kg/m3
constexpr double specific_heat = 2000.0;  // J/(kg.K)
constexpr double bar = 1e5;
constexpr double litre_a_minute = 1e-3 / 60.0;

/// Lossless machines round a loop whose line HA throttles; the charge pump of 20 cm3/rev lifts over
/// R1 at 24 bar; walls of 2 m2 with 15 W/(m2.K).
std::string drive(const std::string& duty, const std::string& flushing) {
    return R"xml(<circuit format="1" title="drive">
  <fluid grade="VG 46" viscosity-index="100" density="870 kg/m3" specific-heat="2000 J/(kg.K)"/>
  <electric-motor id="E1" power="55 kW" speed="1500 rpm"/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="manual"/>
  <pump id="P2" displacement="20 cm3/rev"/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="80 cm3/rev"/>
  <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1" volume="60 L" cooling-area="2 m2" heat-transfer="15 W/(m2.K)">
    <port id="S" level="below"/><port id="R" level="below"/><port id="F" level="below"/>
  </reservoir>
  <relief-valve id="R1" setting="24 bar"/>
  <relief-valve id="R2" setting="350 bar"/>
  <relief-valve id="R3" setting="350 bar"/>
  <check-valve id="C1"/>
  <check-valve id="C2"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/>
  <line id="G2" joins="R1.T T1.R"/>
  <junction id="J1"><port id="A"/><port id="B"/><port id="C"/></junction>
  <line id="HM" joins="J1.C M1.A"/>
  <line id="HA" joins="P1.A J1.A" bore="12 mm" length="10 m"/>
  <line id="HA2" joins="J1.B R2.P R3.T C1.B"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B)xml" +
           flushing + R"xml(
  <command id="Z1" given-by="pedal"><stage of="P1" from="0 %" to="100 %"/></command>
  <duty ambient="20 degC">)xml" +
           duty + "</duty>\n</circuit>\n";
}

ReadResult read(const std::string& xml) {
    ReadResult result = read_circuit_text(xml, "drive.xml", {}, {});
    for (const Diagnostic& one : result.diagnostics) ADD_FAILURE() << one.message;
    return result;
}

const std::string work =
    R"(<point id="work" speed="1500 rpm" travel="100 %" torque="100 N.m" oil="50 degC"/>)";

TEST(LoopHeat, RisesByWhatItsLinesThrottleOverWhatItExchanges) {
    const ReadResult circuit = read(drive(work, R"( Q1.A"/>
  <orifice id="Q1" bore="1.6 mm"/><line id="F1" joins="Q1.B T1.F"/>)"));
    const OperatingPoint point = operating_points(*circuit.circuit).front();
    ASSERT_EQ(point.loops.size(), 1U);
    const LoopHeat& loop = point.loops.front();
    double throttled = 0.0;
    double flushed = 0.0;
    for (const LinePoint& line : point.lines) {
        const std::string_view id = circuit.circuit->lines[line.line].path;
        if (id == "HA") throttled = *line.flow * line.drop;
        if (id == "F1") flushed = *line.flow;
    }
    ASSERT_GT(throttled, 1000.0);
    ASSERT_GT(flushed, 2.0 * litre_a_minute);
    // What the make-up check throttles comes in with the oil: its flow times less than a bar.
    EXPECT_NEAR(loop.heat, throttled, flushed * 1.0 * bar);
    EXPECT_NEAR(loop.exchange, flushed, 1e-9 * flushed);
    ASSERT_TRUE(loop.temperature);
    // Oil expands by some 0.07 % a kelvin from 15 to 50 degC (common practice, no source).
    const double rise = loop.heat / (density * (1.0 - 0.0007 * 35.0) * specific_heat * flushed);
    EXPECT_NEAR(*loop.temperature - 323.15, rise, 2e-3 * rise);
}

TEST(LoopHeat, WithoutExchangeHasNoTemperature) {
    const ReadResult circuit = read(drive(work, R"("/>)"));
    const OperatingPoint point = operating_points(*circuit.circuit).front();
    ASSERT_EQ(point.loops.size(), 1U);
    EXPECT_FALSE(point.loops.front().temperature);
    EXPECT_GT(point.loops.front().heat, 1000.0);
}

// A parabola with its roots at 320 and 380 K, as of a machine whose leakage runs away with the
// heat.
TEST(TemperatureOfBalance, IsTheLowestOfTwo) {
    const auto left_at = [](double oil) { return std::optional((oil - 320.0) * (oil - 380.0)); };
    for (const std::optional<double> near : {std::optional<double>(), std::optional(300.0),
                                             std::optional(370.0), std::optional(400.0)})
        EXPECT_NEAR(temperature_of_balance(left_at, 293.15, near).value_or(0.0), 320.0, 1e-6);
    const auto runs_away = [](double oil) { return std::optional(1.0 + oil); };
    EXPECT_FALSE(temperature_of_balance(runs_away, 293.15));
}

// Too thick to be computed below 310 K, too thin above 325 K.
TEST(TemperatureOfBalance, IsLookedForInWhatCanBeComputed) {
    const auto left_at = [](double oil) -> std::optional<double> {
        if (oil < 310.0 || oil > 325.0) return std::nullopt;
        return 320.0 - oil;
    };
    EXPECT_NEAR(temperature_of_balance(left_at, 293.15).value_or(0.0), 320.0, 1e-6);
}

/// The charge pump's flow over R1, 20 cm3/rev at 24 bar, is all that warms the oil in neutral.
double over_the_relief(double revolutions_a_minute) {
    return 20e-6 * revolutions_a_minute / 60.0 * 24.0 * bar;
}

TEST(DutyHeat, BalancesTheMeanOverTheShares) {
    const ReadResult circuit =
        read(drive(R"(<point id="fast" speed="1500 rpm" travel="0 %" torque="0 N.m" share="30 %"/>
                      <point id="slow" speed="600 rpm" travel="0 %" torque="0 N.m" share="70 %"/>)",
                   R"("/>)"));
    const auto duty = duty_heat(*circuit.circuit);
    ASSERT_TRUE(duty);
    EXPECT_EQ(duty->problem, "");
    EXPECT_EQ(duty->rest, 0.0);
    const double mean = 0.3 * over_the_relief(1500.0) + 0.7 * over_the_relief(600.0);
    // A relief holds its setting to its override; the closed form has none.
    EXPECT_NEAR(duty->heat.into_oil, mean, 0.05 * mean);
    EXPECT_NEAR(duty->oil, 293.15 + duty->heat.into_oil / (2.0 * 15.0), 1e-3);
    EXPECT_NEAR(duty->heat.left(), 0.0, 1e-4);
    EXPECT_NEAR(duty->power_in - duty->power_out - duty->lost, 0.0, 1e-9 * duty->power_in);
}

TEST(DutyHeat, WhatTheSharesLeaveIsNeutralAtRatedSpeed) {
    const ReadResult half = read(
        drive(R"(<point id="still" speed="600 rpm" travel="0 %" torque="0 N.m" share="40 %"/>)",
              R"("/>)"));
    const auto duty = duty_heat(*half.circuit);
    ASSERT_TRUE(duty);
    EXPECT_NEAR(duty->rest, 0.6, 1e-12);
    const double mean = 0.4 * over_the_relief(600.0) + 0.6 * over_the_relief(1500.0);
    EXPECT_NEAR(duty->heat.into_oil, mean, 0.05 * mean);
}

TEST(DutyHeat, IsNotAskedWithoutShares) {
    EXPECT_FALSE(duty_heat(*read(drive(work, R"("/>)")).circuit));
}

/// Heat that falls with the viscosity, carried off in proportion to what is over 20 degC: both
/// are the same where 5000 W exp(-0.03 (t - 40)) = 200 W/K (t - 20), t in degC. Ours.
std::optional<double> left_of_a_cooled_machine(double kelvin) {
    const double celsius = kelvin - 273.15;
    return 5000.0 * std::exp(-0.03 * (celsius - 40.0)) - 200.0 * (celsius - 20.0);
}

TEST(TemperatureOfBalance, IsTheSameFromWhereverItIsLookedFor) {
    const auto whole = temperature_of_balance(left_of_a_cooled_machine, 293.15);
    ASSERT_TRUE(whole);
    EXPECT_NEAR(*left_of_a_cooled_machine(*whole), 0.0, 1e-6);
    for (const double near : {293.15, 310.0, *whole - 1e-7, *whole, *whole + 0.3, 340.0, 423.15}) {
        int asked = 0;
        const auto found = temperature_of_balance(
            [&](double at) {
                ++asked;
                return left_of_a_cooled_machine(at);
            },
            293.15, near);
        ASSERT_TRUE(found) << near;
        EXPECT_NEAR(*found, *whole, 1e-8) << near;
        if (std::abs(near - *whole) < 1.0) {
            EXPECT_LE(asked, 8) << near;
        }
    }
}

TEST(TemperatureOfBalance, IsLookedForAllOverWhereItIsNotNear) {
    // Nothing can be told from 330 K on, and the balance is below.
    const auto cool = [](double at) {
        return at < 330.0 ? left_of_a_cooled_machine(at) : std::nullopt;
    };
    const auto found = temperature_of_balance(cool, 293.15, 350.0);
    ASSERT_TRUE(found);
    EXPECT_NEAR(*found, *temperature_of_balance(left_of_a_cooled_machine, 293.15), 1e-8);
    // No temperature balances what is made beyond all cooling, or never made.
    EXPECT_FALSE(temperature_of_balance([](double) { return std::optional(1.0); }, 293.15, 300.0));
    EXPECT_FALSE(temperature_of_balance([](double) { return std::optional(-1.0); }, 293.15, 300.0));
}

}  // namespace
}  // namespace loopwright::hydraulics
