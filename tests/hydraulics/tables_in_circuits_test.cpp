// Measured tables in a circuit: what `solve` makes of them. A table taken from a law that is linear
// along each of its axes gives back that law exactly, so the laws themselves are what the circuits
// are held against.
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include <loopwright/hydraulics/fluid.h>
#include <loopwright/tests/hydraulics/drive.h>

namespace loopwright::hydraulics::testing {
namespace {

constexpr std::string_view point =
    R"(<point id="a" speed="2000 rpm" travel="33 %" torque="250 N.m" oil="50 degC"/>)";

std::string replaced(std::string text, std::string_view what, std::string_view by) {
    const std::size_t at = text.find(what);
    EXPECT_NE(at, std::string::npos) << what;
    return text.replace(at, what.size(), by);
}

/// The drive with P1 as given: attributes, and what stands inside it.
OperatingPoint with_pump(const std::string& attributes, std::string_view inside) {
    std::string xml = drive(std::string(point), "", attributes);
    const std::size_t end = xml.find("/>", xml.find(R"(id="P1")"));
    return only_point(xml.replace(end, 2, ">" + std::string(inside) + "</pump>"));
}

/// Wilson's law of a 71 cm3/rev pump at its corners: slip 4e-9, drag 60 000, friction 0.03, at the
/// viscosity that the oil has in the state `at`.
std::string table_of_coefficients(double eta, double bar_to) {
    constexpr double volume = 71e-6;
    std::string rows;
    for (const double bar : {0.0, bar_to})
        for (const double rpm : {1000.0, 3000.0})
            for (const double stroke : {0.5, 1.0}) {
                const double pascal = bar * 1e5;
                const double flow = volume * rpm / 60.0 * stroke -
                                    4e-9 * volume * pascal / (2.0 * std::numbers::pi * eta);
                const double torque =
                    (volume * stroke * pascal +
                     60000.0 * volume * eta * 2.0 * std::numbers::pi * rpm / 60.0 +
                     0.03 * volume * pascal) /
                    (2.0 * std::numbers::pi);
                rows += fmt::format(
                    R"(<row pressure="{} bar" speed="{} rpm" stroke="{}" flow="{:.15g} m3/s" torque="{:.15g} N.m"/>)",
                    bar, rpm, stroke, flow, torque);
            }
    return "<table>" + rows + "</table>";
}

TEST(TablesInCircuits, APumpsTableGivesBackTheLawThatItWasMeasuredOn) {
    const OperatingPoint law = with_pump(
        R"( case-leakage-share="0" slip-coefficient="4e-9" drag-coefficient="60000" friction-coefficient="0.03")",
        "");
    ASSERT_TRUE(law.solved) << law.problem;
    const Answer<Oil> oil =
        Fluid::of({.grade = "VG 46", .viscosity_index = 100.0, .density = Density(870.0)})
            ->at(Temperature(323.15));
    const double eta = oil->dynamic_viscosity().si();
    const OperatingPoint measured =
        with_pump(R"( case-leakage-share="0")", table_of_coefficients(eta, 400.0));
    ASSERT_TRUE(measured.solved) << measured.problem;
    EXPECT_NEAR(measured.machines[0].flow, law.machines[0].flow, 1e-9 * law.machines[0].flow);
    EXPECT_NEAR(measured.machines[0].torque, law.machines[0].torque, 1e-9 * law.machines[0].torque);
    EXPECT_NEAR(measured.machines[2].speed, law.machines[2].speed, 1e-9 * law.machines[2].speed);
    for (const Assumption& one : measured.assumptions)
        EXPECT_TRUE(one.of != "P1: leakage" && one.of != "P1: loss of torque") << one.of;
}

// 2 pi 250 N.m / 80 cm3/rev = 196 bar, which a table to 150 bar does not reach.
TEST(TablesInCircuits, BeyondTheTableIsNoState) {
    const OperatingPoint refused =
        with_pump(R"( case-leakage-share="0")", table_of_coefficients(0.03, 150.0));
    EXPECT_FALSE(refused.solved);
    EXPECT_NE(refused.problem.find("P1: a pressure of 196"), std::string::npos) << refused.problem;
    EXPECT_NE(refused.problem.find("from 0 bar to 150 bar"), std::string::npos) << refused.problem;
}

// 93 % at 100 bar and 89 % at 300 bar: at 200 bar 91 %, in a motor that takes 80 cm3/rev in.
TEST(TablesInCircuits, AMotorsEfficienciesCountAtItsPressure) {
    std::string xml = drive(std::string(point), R"( drain="internal")");
    const std::size_t end = xml.find("/>", xml.find(R"(id="M1")"));
    const OperatingPoint found =
        only_point(xml.replace(end, 2,
                               R"(><table><row pressure="100 bar" mechanical-efficiency="93 %"/>
                   <row pressure="300 bar" mechanical-efficiency="89 %"/></table></motor>)"));
    ASSERT_TRUE(found.solved) << found.problem;
    const MachinePoint& motor = found.machines[2];
    const double bar = (motor.pressure_a - motor.pressure_b) / 1e5;
    const double efficiency = 0.93 - 0.04 * (bar - 100.0) / 200.0;
    EXPECT_NEAR(bar * 1e5 * 80e-6 / (2.0 * std::numbers::pi) * efficiency, 250.0, 1e-6);
}

// Two bar at 40 L/min and 8 at 80: at P2's 36 L/min (18 cm3/rev x 2000 rpm) 1.8 bar.
TEST(TablesInCircuits, AValvesTableSaysWhatItLoses) {
    std::string xml = drive(std::string(point));
    xml = replaced(std::move(xml), R"(<line id="G2" joins="R1.T T1.R"/>)",
                   R"(<directional-valve id="V1"><port id="P"/><port id="T"/>
      <position id="a" rest="yes"><path from="P" to="T"/></position>
      <table><row flow="0 L/min" drop="0 bar"/><row flow="40 L/min" drop="2 bar"/>
             <row flow="80 L/min" drop="8 bar"/></table></directional-valve>
      <line id="G2" joins="R1.T V1.P"/> <line id="G3" joins="V1.T T1.R"/>)");
    const OperatingPoint found = only_point(xml);
    ASSERT_TRUE(found.solved) << found.problem;
    bool seen = false;
    for (const LinePoint& line : found.lines) {
        if (line.pressure < 1.7e5 || line.pressure > 1.9e5) continue;
        EXPECT_NEAR(line.pressure, 1.8e5, 1.0);
        seen = true;
    }
    EXPECT_TRUE(seen);
}

// Asked for more than its governor gives, an engine gives what was measured: 420 N.m at 1000 rpm,
// 320 at 2000.
TEST(TablesInCircuits, AnEnginesFullLoadIsAsMeasured) {
    std::string xml =
        drive(R"(<point id="a" speed="2000 rpm" travel="33 %" torque="380 N.m" oil="50 degC"/>)");
    xml =
        replaced(std::move(xml), R"(<engine id="E1" power="55 kW" speed="2400 rpm"/>)",
                 R"(<engine id="E1" power="55 kW" speed="2400 rpm" droop="8 %" max-torque="400 N.m"
      braking-torque="50 N.m"><table><row speed="1000 rpm" torque="420 N.m"/>
      <row speed="2000 rpm" torque="320 N.m"/></table></engine>)");
    const OperatingPoint found = only_point(xml);
    ASSERT_TRUE(found.solved) << found.problem;
    const ShaftPoint& shaft = found.shafts[0];
    const double rpm = shaft.speed * 60.0 / (2.0 * std::numbers::pi);
    EXPECT_NEAR(shaft.torque, 420.0 - 100.0 * (rpm - 1000.0) / 1000.0, 1e-6);
    EXPECT_LT(rpm, 2000.0);
    EXPECT_GT(rpm, 1000.0);
}

// Overrun, the pump is a motor: of 84.75 N.m at its shaft for 75 bar (71 cm3/rev) 90 % come out.
TEST(TablesInCircuits, AnEfficiencyCountsTheOtherWayWhereAPumpIsDriven) {
    std::string xml =
        drive(R"(<point id="a" speed="2000 rpm" travel="33 %" torque="-100 N.m" oil="50 degC"/>)");
    const std::size_t end = xml.find("/>", xml.find(R"(id="P1")"));
    const OperatingPoint found =
        only_point(xml.replace(end, 2,
                               R"(><table><row pressure="-600 bar" mechanical-efficiency="90 %"/>
                   <row pressure="600 bar" mechanical-efficiency="90 %"/></table></pump>)"));
    ASSERT_TRUE(found.solved) << found.problem;
    const MachinePoint& pump = found.machines[0];
    const double ideal = (pump.pressure_b - pump.pressure_a) * 71e-6 / (2.0 * std::numbers::pi);
    EXPECT_GT(ideal, 80.0);
    EXPECT_NEAR(std::abs(pump.torque), 0.9 * ideal, 1e-6);
}

// What was measured at full stroke says nothing of half of it, and a flow nothing of another speed.
TEST(TablesInCircuits, WhatATableDoesNotSayIsNotTaken) {
    const auto with = [](std::string_view travel, std::string_view rows) {
        std::string xml =
            drive(R"(<point id="a" speed="2000 rpm" torque="150 N.m" oil="50 degC" travel=")" +
                  std::string(travel) + "\"/>");
        const std::size_t end = xml.find("/>", xml.find(R"(id="P1")"));
        return only_point(xml.replace(end, 2, "><table>" + std::string(rows) + "</table></pump>"));
    };
    constexpr std::string_view at_speeds =
        R"(<row pressure="0 bar" speed="1000 rpm" flow="71 L/min"/>
           <row pressure="0 bar" speed="3000 rpm" flow="213 L/min"/>
           <row pressure="400 bar" speed="1000 rpm" flow="68 L/min"/>
           <row pressure="400 bar" speed="3000 rpm" flow="210 L/min"/>)";
    EXPECT_TRUE(with("33 %", at_speeds).solved);
    EXPECT_EQ(with("16.5 %", at_speeds).problem, "P1: its table says nothing of a stroke of 0.5");
    EXPECT_EQ(with("33 %", R"(<row pressure="0 bar" flow="140 L/min"/>
                              <row pressure="400 bar" flow="138 L/min"/>)")
                  .problem,
              "P1: its table gives a flow, but not at which speed");
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
