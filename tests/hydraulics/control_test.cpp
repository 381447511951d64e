// What moves strokes and engine speeds by itself: the laws' limits and slopes, and whole drives
// without losses against closed forms, each beside its check.
#include <cmath>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/complementarity.h>
#include <loopwright/hydraulics/prime_mover.h>
#include <loopwright/hydraulics/stroke_control.h>
#include <loopwright/tests/hydraulics/drive.h>
#include <loopwright/tests/hydraulics/slopes.h>

namespace loopwright::hydraulics::testing {
namespace {

constexpr double ours = 1e-9;

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    EXPECT_NE(text.find(what), std::string::npos) << what;
    return text.replace(text.find(what), what.size(), with);
}

// ---- the laws ----

TEST(Between, HoldsAtItsEndsAndPushesNowhereElse) {
    const auto law = [](double at, double push) {
        return between(Dual<1>(at - 0.2), Dual<1>(0.9 - at), Dual<1>(push)).value;
    };
    EXPECT_NEAR(law(0.9, 3.0), 0.0, ours);
    EXPECT_NEAR(law(0.2, -3.0), 0.0, ours);
    EXPECT_NEAR(law(0.5, 0.0), 0.0, ours);
    // Not at the wrong end, not beyond one, not between under a push.
    for (const auto& [at, push] :
         {std::pair{0.9, -1.0}, {0.2, 1.0}, {0.5, 1.0}, {0.5, -1.0}, {1.0, 1.0}, {0.1, -1.0}})
        EXPECT_GT(std::abs(law(at, push)), 0.01) << at << ' ' << push;
}

TEST(StrokeControl, ItsSlopesAreExact) {
    const Machine machine{.displacement = Displacement(71e-6 / turn),
                          .losses = {.slip = 1.5e-8, .drag = 1.7e5, .friction = 0.04}};
    const StrokeControl pump{.pressure_limit = Pressure(200 * bar),
                             .margin = Pressure(20 * bar),
                             .torque_limit = Torque(150),
                             .spares_mover = true};
    const StrokeControl motor{.rise = PressureRise{Pressure(150 * bar), Pressure(250 * bar), 0.3}};
    for (const StrokeControl* control : {&pump, &motor})
        for (const double set : {-0.9, 0.4, 0.9})
            for (const double high : {140 * bar, 215 * bar})
                expect_slopes<StrokeState::count>(
                    [&](const auto& x) {
                        const StrokeState state{x[0], x[1], x[2], x[3], x[4], x[5]};
                        const MachineLaw law = machine_law(
                            machine, {state.pressure_a, state.pressure_b, 0.0, state.shaft_speed,
                                      state.relative_displacement, 0.03});
                        return stroke_law(*control, set, state, law.torque);
                    },
                    {0.7 * set, high, 20 * bar, 230.0, 170 * bar, 0.8},
                    {0.1, bar, bar, 10.0, bar, 0.1});
}

TEST(StrokeControl, TheTightestLimitHoldsTheStroke) {
    const StrokeControl control{.pressure_limit = Pressure(200 * bar),
                                .margin = Pressure(20 * bar)};
    const auto law = [&](double stroke, double high, double sensed) {
        return stroke_law(control, 1.0, {stroke, high, 0.0, 200.0, sensed, 1.0}, {}).value;
    };
    const auto hold = [&](double stroke, double high, double sensed) {
        return stroke_hold(control, 1.0, {stroke, high, 0.0, 200.0, sensed, 1.0}, 0.0);
    };
    EXPECT_NEAR(law(1.0, 100 * bar, 90 * bar), 0.0, ours);
    EXPECT_EQ(hold(1.0, 100 * bar, 90 * bar), StrokeHold::none);
    EXPECT_NEAR(law(0.6, 120 * bar, 100 * bar), 0.0, ours);
    EXPECT_EQ(hold(0.6, 120 * bar, 100 * bar), StrokeHold::load_sensing);
    EXPECT_NEAR(law(0.3, 200 * bar, 190 * bar), 0.0, ours);
    EXPECT_EQ(hold(0.3, 200 * bar, 190 * bar), StrokeHold::pressure_limit);
    EXPECT_NEAR(law(0.0, 210 * bar, 0.0), 0.0, ours);
    EXPECT_GT(std::abs(law(0.6, 130 * bar, 100 * bar)), 0.01);
    EXPECT_GT(std::abs(law(0.6, 110 * bar, 100 * bar)), 0.01);
}

PrimeMover engine() {
    return {.rated_speed = Speed(2200 * rpm),
            .rated_torque = Torque(200),
            .droop = 0.08,
            .max_torque = Torque(250),
            .braking_torque = Torque(60)};
}

TEST(PrimeMover, DroopsUnderLoad) {
    const PrimeMover one = engine();
    EXPECT_NEAR(governed_torque(one, Speed(2200 * rpm), 2200 * rpm).value, 200.0, ours);
    EXPECT_NEAR(governed_torque(one, Speed(2200 * rpm), 1.08 * 2200 * rpm).value, 0.0, ours);
    EXPECT_NEAR(governed_torque(one, Speed(1500 * rpm), 1588 * rpm).value, 100.0, ours);
    // Rated power at any speed, until the highest torque.
    EXPECT_NEAR(full_load_torque(one, 2200 * rpm).value, 200.0, ours);
    EXPECT_NEAR(full_load_torque(one, 2000 * rpm).value, 220.0, ours);
    EXPECT_NEAR(stalling_speed(one).si(), 1760 * rpm, ours);
    EXPECT_NEAR(full_load_torque(one, 1000 * rpm).value, 250.0, ours);
}

TEST(PrimeMover, GivesWhatItsLinesAllow) {
    const PrimeMover one = engine();
    const auto law = [&](double turns, double torque) {
        return mover_law(one, Speed(2200 * rpm), {turns * rpm, torque}).value;
    };
    EXPECT_NEAR(law(2288, 100.0), 0.0, ours);  // governed
    EXPECT_NEAR(law(2000, 220.0), 0.0, ours);  // at rated power
    EXPECT_NEAR(law(2420, -50.0), 0.0, ours);  // driven: 44 rpm, a quarter, above no load
    EXPECT_NEAR(law(2600, -60.0), 0.0, ours);  // and no more than that
    for (const auto& [turns, torque] :
         {std::pair{2288, 150.0}, {2000, 200.0}, {2000, 240.0}, {2420, 0.0}, {2600, -100.0}})
        EXPECT_GT(std::abs(law(turns, torque)), 0.01) << turns << ' ' << torque;
}

TEST(PrimeMover, ItsSlopesAreExact) {
    PrimeMover stiff = engine();
    stiff.droop = 0.0;
    for (const PrimeMover& one : {engine(), stiff})
        for (const double turns : {1900.0, 2250.0, 2500.0})
            for (const double torque : {-70.0, 90.0, 230.0})
                for (const auto law : {&mover_law, &load_room})
                    expect_slopes<MoverState::count>(
                        [&](const auto& x) {
                            return law(one, Speed(2200 * rpm), {x[0], x[1]});
                        },
                        {turns * rpm, torque}, {0.1, 0.1});
}

// ---- whole drives ----

std::string pulling(const std::string& more) {
    return drive(R"(<point id="a" speed="2400 rpm" travel="33 %" oil="50 degC" )" + more + "/>");
}
/// Of the drive's pump P1 an attribute more.
std::string controlled(const std::string& xml, const std::string& control) {
    return replaced(xml, R"(<pump id="P1")", R"(<pump id="P1" )" + control);
}

// The torque of a pump without losses is V s p/(2 pi), and p = 2 pi T/V of the motor.
TEST(Control, ATorqueLimiterTakesTheStrokeBack) {
    const OperatingPoint point =
        only_point(controlled(pulling(R"(torque="300 N.m")"), R"(torque-limiter="150 N.m")"));
    ASSERT_TRUE(point.solved) << point.problem;
    const MachinePoint& pump = point.machines[0];
    const double stroke = 150.0 / (300.0 * 71.0 / 80.0);
    EXPECT_NEAR(pump.torque, 150.0, 1e-6);
    EXPECT_NEAR(pump.stroke, stroke, ours);
    EXPECT_EQ(pump.set_stroke, 1.0);
    EXPECT_EQ(pump.hold, StrokeHold::torque_limit);
    EXPECT_NEAR(point.machines[2].speed, 2400.0 * rpm * stroke * 71.0 / 80.0, 1e-6);
    const OperatingPoint light =
        only_point(controlled(pulling(R"(torque="150 N.m")"), R"(torque-limiter="150 N.m")"));
    EXPECT_NEAR(light.machines[0].stroke, 1.0, ours);
    EXPECT_EQ(light.machines[0].hold, StrokeHold::none);
}

/// Of the charge pump at 24 bar.
constexpr double charge_torque = 18e-6 * 24 * bar / turn;

// What the charge pump takes of the engine's 40 kW is not there for the loop's.
TEST(Control, AntiStallLeavesTheEngineItsRatedPower) {
    const std::string small = replaced(pulling(R"(torque="300 N.m")"), "55 kW", "40 kW");
    const double rated = 40e3 / (2400.0 * rpm);
    const double stroke = (rated - charge_torque) / (300.0 * 71.0 / 80.0);
    for (const std::string droop : {"", R"( droop="6 %" max-torque="200 N.m")"}) {
        const std::string xml = replaced(controlled(small, R"(anti-stall="yes")"),
                                         R"(power="40 kW")", R"(power="40 kW")" + droop);
        const OperatingPoint point = only_point(xml);
        ASSERT_TRUE(point.solved) << point.problem;
        EXPECT_NEAR(point.shafts[0].power, 40e3, 1e-4) << droop;
        EXPECT_NEAR(point.shafts[0].speed, 2400.0 * rpm, 1e-6) << droop;
        EXPECT_NEAR(point.machines[0].stroke, stroke, ours) << droop;
        EXPECT_EQ(point.machines[0].hold, StrokeHold::anti_stall) << droop;
    }
    // The same without a control is above its power.
    EXPECT_GT(only_point(small).shafts[0].power, 60e3);
}

// Two pumps of one engine give way in the same share, so that both stand where they can be told.
TEST(Control, TwoPumpsSpareTheirEngineAlike) {
    std::string xml = replaced(pulling(R"(torque="300 N.m")"), "55 kW", "40 kW");
    xml = controlled(xml, R"(anti-stall="yes")");
    xml = replaced(xml, "E1 P1 P2", "E1 P1 P2 P3");
    xml = replaced(xml, R"(<pump id="P2")", R"(<relief-valve id="R5" setting="100 bar"/>
  <pump id="P3" displacement="40 cm3/rev" variable="yes" control="manual" anti-stall="yes"/>
  <line id="S3" joins="T1.S3 P3.S"/> <line id="G5" joins="P3.P R5.P"/>
  <line id="G6" joins="R5.T T1.R3"/> <pump id="P2")");
    xml = replaced(xml, R"(<port id="S")",
                   R"(<port id="S3" level="below"/><port id="R3" level="below"/><port id="S")");
    const OperatingPoint point = only_point(xml);
    ASSERT_TRUE(point.solved) << point.problem;
    const double loop = 300.0 * 71.0 / 80.0;
    const double other = 40e-6 * 100 * bar / turn;
    const double share = (40e3 / (2400.0 * rpm) - charge_torque) / (loop + other);
    EXPECT_NEAR(point.shafts[0].power, 40e3, 1e-4);
    for (const MachinePoint& one : point.machines) {
        if (one.hold == StrokeHold::none) continue;
        EXPECT_NEAR(one.stroke, share, ours);
    }
}

// p of the motor's line and p = 2 pi T/(V s) of its torque meet.
TEST(Control, AMotorTakesMoreDisplacementUnderPressure) {
    const auto at = [](const std::string& travel, const std::string& torque) {
        return only_point(drive(R"(<point id="a" speed="2400 rpm" oil="50 degC" travel=")" +
                                    travel + R"(" torque=")" + torque + R"("/>)",
                                R"( begin-pressure="150 bar" end-pressure="250 bar")"));
    };
    const double least = 28.0 / 80.0;
    for (const double torque : {60.0, 120.0, 180.0, 250.0}) {
        const OperatingPoint point = at("100 %", std::to_string(torque) + " N.m");
        ASSERT_TRUE(point.solved) << point.problem;
        const MachinePoint& motor = point.machines[2];
        // Of 24 bar on the low side; in units of the span from begin to end.
        const double needed = torque * turn / 80e-6 / (100 * bar);
        const double begin = (150.0 - 24.0) / 100.0 - least / (1.0 - least);
        const double bend = 1.0 / (1.0 - least);
        const double stroke =
            (-begin + std::sqrt(begin * begin + 4.0 * bend * needed)) / (2.0 * bend);
        EXPECT_NEAR(motor.stroke, std::max(stroke, least), 1e-8) << torque;
        EXPECT_EQ(motor.hold == StrokeHold::pressure_rise, stroke > least) << torque;
        EXPECT_NEAR(motor.torque, torque, 1e-6);
    }
    // What is commanded is the least: at a third of the travel the motor is at its largest.
    const OperatingPoint whole = at("33 %", "60 N.m");
    EXPECT_NEAR(whole.machines[2].stroke, 1.0, ours);
    EXPECT_EQ(whole.machines[2].hold, StrokeHold::none);
    // Far above its end it is at its largest.
    EXPECT_NEAR(at("100 %", "380 N.m").machines[2].stroke, 1.0, ours);
}

// With both pressures the same it keeps that pressure, as far as its displacement goes.
TEST(Control, AMotorKeepsOnePressure) {
    const OperatingPoint point = only_point(
        drive(R"(<point id="a" speed="2400 rpm" travel="100 %" torque="150 N.m" oil="50 degC"/>)",
              R"( begin-pressure="224 bar" end-pressure="224 bar")"));
    ASSERT_TRUE(point.solved) << point.problem;
    EXPECT_NEAR(point.machines[2].pressure_a / bar, 224.0, 1e-6);
    EXPECT_NEAR(point.machines[2].stroke, 150.0 * turn / (80e-6 * 200 * bar), 1e-8);
}

/// An engine of 55 kW with droop; its rated torque is 218.8 N.m.
std::string drooping(const std::string& of_point, const std::string& of_engine = "") {
    return replaced(pulling(of_point), R"(power="55 kW")",
                    R"(power="55 kW" droop="5 %" )" + of_engine);
}
constexpr double rated_torque = 55e3 / (2400.0 * rpm);

// The torque of this drive does not hang on its speed.
TEST(Control, AnEngineFollowsItsGovernor) {
    for (const double torque : {0.0, 100.0, 220.0}) {
        const OperatingPoint point =
            only_point(drooping(R"(torque=")" + std::to_string(torque) + R"( N.m")"));
        ASSERT_TRUE(point.solved) << point.problem;
        const double asked = torque * 71.0 / 80.0 + charge_torque;
        EXPECT_NEAR(point.shafts[0].torque, asked, 1e-6);
        EXPECT_NEAR(point.shafts[0].speed,
                    2400.0 * rpm * (1.0 + 0.05 * (1.0 - asked / rated_torque)), 1e-6);
        EXPECT_TRUE(point.shafts[0].driven);
    }
}

// Beyond rated torque along rated power; beyond its highest torque it stalls.
TEST(Control, AnEngineFallsBackToItsHighestTorqueAndStalls) {
    const std::string most = R"(max-torque="280 N.m")";
    const OperatingPoint slow = only_point(drooping(R"(torque="290 N.m")", most));
    ASSERT_TRUE(slow.solved) << slow.problem;
    EXPECT_TRUE(slow.problem.empty()) << slow.problem;
    const double asked = 290.0 * 71.0 / 80.0 + charge_torque;
    EXPECT_NEAR(slow.shafts[0].torque, asked, 1e-6);
    EXPECT_NEAR(slow.shafts[0].speed, 55e3 / asked, 1e-6);
    EXPECT_FALSE(only_point(drooping(R"(torque="330 N.m")", most)).problem.empty());
    // Nothing is said of more than its rated torque.
    EXPECT_FALSE(only_point(drooping(R"(torque="290 N.m")")).problem.empty());
}

TEST(Control, AnEngineBrakesWhatDrivesIt) {
    const std::string brakes = R"(braking-torque="80 N.m")";
    const OperatingPoint point = only_point(drooping(R"(torque="-80 N.m")", brakes));
    ASSERT_TRUE(point.solved) << point.problem;
    const double given = -80.0 * 71.0 / 80.0 + charge_torque;
    EXPECT_NEAR(point.shafts[0].torque, given, 1e-6);
    EXPECT_NEAR(point.shafts[0].speed, 2400.0 * rpm * (1.05 - 0.05 * given / rated_torque), 1e-6);
    // More than it can take: it runs away, without a highest speed that says where it may.
    const OperatingPoint away = only_point(drooping(R"(torque="-150 N.m")", brakes));
    EXPECT_NE(away.problem.find("80 N.m"), std::string::npos) << away.problem;
    // 20 kW at 2400 rpm are 79.6 N.m.
    const OperatingPoint power = only_point(
        drooping(R"(torque="-80 N.m")", R"(braking-power="20 kW" max-speed="2400 rpm")"));
    EXPECT_NEAR(power.shafts[0].speed, point.shafts[0].speed, 1e-9);
    const OperatingPoint unknown = only_point(drooping(R"(torque="-80 N.m")"));
    EXPECT_FALSE(unknown.solved);
    EXPECT_EQ(unknown.missing, std::vector<std::string>{"E1.braking-torque"});
}

/// A load-sensing pump, an orifice of 3 mm between it and the motor; it feels what is behind.
std::string load_sensing(const std::string& torque, const std::string& of_pump = "",
                         const std::string& felt = R"(<line id="X1" joins="P1.X J1.b"/>)") {
    return R"(<circuit format="1" title="load-sensing">
  <fluid grade="VG 46" viscosity-index="100" density="870 kg/m3"/>
  <electric-motor id="E1" power="15 kW" speed="1500 rpm"/>
  <pump id="P1" displacement="28 cm3/rev" variable="yes" control="load-sensing" pilot-ports="1"
        load-sensing-margin="20 bar" )" +
           of_pump + R"(/> <shaft id="W1" joins="E1 P1"/>
  <orifice id="O1" bore="3 mm"/> <motor id="M1" displacement="40 cm3/rev"/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/> <relief-valve id="R1" setting="280 bar"/>
  <reservoir id="T1"><port id="S"/><port id="R"/><port id="B"/></reservoir>
  <line id="S1" joins="T1.S P1.S"/> <line id="H1" joins="P1.P O1.A R1.P"/>
  <line id="H2" joins="O1.B M1.A J1.a"/>
  <junction id="J1"><port id="a"/><port id="b"/></junction> <line id="K1" joins="M1.B T1.B"/>
  <line id="G1" joins="R1.T T1.R"/> )" +
           felt + R"(
  <duty> <point id="a" speed="1500 rpm" torque=")" +
           torque + R"(" oil="40 degC"/> </duty> </circuit>)";
}

// 20 bar over the orifice whatever the load, and so the same flow: Cd A sqrt(2 dp/rho), but for
// the laminar part.
TEST(Control, ALoadSensingPumpKeepsItsMargin) {
    for (const double torque : {20.0, 60.0, 100.0}) {
        const OperatingPoint point = only_point(load_sensing(std::to_string(torque) + " N.m"));
        ASSERT_TRUE(point.solved) << point.problem;
        const MachinePoint& pump = point.machines[0];
        const MachinePoint& motor = point.machines[1];
        EXPECT_NEAR(motor.pressure_a, torque * turn / 40e-6, 1.0);
        EXPECT_NEAR(pump.pressure_a - motor.pressure_a, 20 * bar, 1.0);
        EXPECT_EQ(pump.hold, StrokeHold::load_sensing);
        const double density = 870.0 * (1.0 - 25.0 * 7.2e-4);  // about, at 40 degC
        const double area = std::numbers::pi / 4.0 * 9e-6;
        EXPECT_NEAR(pump.flow, 0.61 * area * std::sqrt(2.0 * 20 * bar / density), 2e-3 * pump.flow);
        EXPECT_NEAR(pump.stroke, pump.flow / (28e-6 * 25.0), 1e-8);
    }
}

TEST(Control, ALoadSensingPumpStopsAtItsCompensator) {
    const OperatingPoint point =
        only_point(load_sensing("120 N.m", R"(compensator-setting="200 bar")"));
    ASSERT_TRUE(point.solved) << point.problem;
    EXPECT_EQ(point.machines[0].hold, StrokeHold::pressure_limit);
    EXPECT_NEAR(std::max(point.machines[0].pressure_a, point.machines[0].pressure_b), 200 * bar,
                1.0);
}

TEST(Control, WhatALoadSensingPumpDoesNotFeelIsAskedFor) {
    const OperatingPoint blind = only_point(load_sensing("60 N.m", "", ""));
    EXPECT_FALSE(blind.solved);
    EXPECT_NE(blind.problem.find("P1.X"), std::string::npos) << blind.problem;
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
