// T = V p / 2 pi without losses: of 100 N.m that drive 80 cm3/rev, 71 cm3/rev hand 88.75 N.m on to
// the engine's shaft; the charge pump's 18 cm3/rev at some 18.6 bar take 5.3 N.m of it. At 2400 rpm
// the 83.4 N.m left are 21.0 kW.
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;
using testing::verdicts_of;
using testing::with;

const Edit driven{R"( torque="200 N.m")", R"( torque="-100 N.m")"};

Edit engine(const std::string& figures) {
    return {R"(speed="2400 rpm" max-torque="240 N.m")",
            R"(speed="2400 rpm" max-torque="240 N.m" )" + figures};
}

std::string braked_by(const std::string& figures) {
    return judged_at_work({driven, engine(figures)}, "engine-braking");
}

constexpr const char* passes = "engine-braking E1 pass at work\n";
constexpr const char* fails = "engine-braking E1 fail error at work\n";

TEST(EngineBraking, AgainstTheTorqueThatItBrakesWith) {
    EXPECT_EQ(braked_by(R"(braking-torque="85 N.m" max-speed="2600 rpm")"), passes);
    EXPECT_EQ(braked_by(R"(braking-torque="82 N.m" max-speed="2600 rpm")"), fails);
    const Figures figures =
        figures_at_work({driven, engine(R"(braking-torque="85 N.m" max-speed="2600 rpm")")},
                        "engine-braking", "E1");
    // Two lines of 1 m take half a newton metre.
    EXPECT_NEAR(figures.measured.si, 100.0 * 71.0 / 80.0 - 5.3 - 0.5, 0.2);
    EXPECT_EQ(figures.required->si, 85.0);
}

// 22 kW at 2400 rpm are 87.5 N.m, 20 kW 79.6 N.m.
TEST(EngineBraking, OrThePowerAtItsHighestSpeed) {
    EXPECT_EQ(braked_by(R"(braking-power="22 kW" max-speed="2400 rpm")"), passes);
    EXPECT_EQ(braked_by(R"(braking-power="20 kW" max-speed="2400 rpm")"), fails);
    EXPECT_EQ(braked_by(R"(braking-power="15 kW")"), fails);
    EXPECT_EQ(braked_by(R"(braking-power="30 kW")"),
              "engine-braking E1 inconclusive at work needs E1.max-speed\n");
}

// Along its governor's line it is driven to 2400 rpm * (1 + 5 % + 5 % * 83.4 / 218.8), 2566 rpm.
TEST(EngineBraking, NoFasterThanItMayTurn) {
    const std::string droop = R"(droop="5 %" braking-torque="120 N.m" max-speed=)";
    EXPECT_EQ(braked_by(droop + R"("2570 rpm")"), passes);
    EXPECT_EQ(braked_by(droop + R"("2560 rpm")"), fails);
    const Figures figures =
        figures_at_work({driven, engine(droop + R"("2560 rpm")")}, "engine-braking", "E1");
    EXPECT_NEAR(figures.measured.si, 2566.0 * std::numbers::pi / 30.0, 0.2);
}

// No such point stands, and still it is a fail.
TEST(EngineBraking, OneThatRunsAwayFails) {
    EXPECT_EQ(braked_by(R"(droop="5 %" braking-torque="60 N.m" max-speed="2600 rpm")"), fails);
}

TEST(EngineBraking, WhatElseTheShaftTurnsBrakesToo) {
    EXPECT_EQ(judged_at_work({{R"( torque="200 N.m")", R"( torque="-5 N.m")"}}, "engine-braking"),
              passes);
}

TEST(EngineBraking, Missing) {
    EXPECT_EQ(braked_by(""), "engine-braking E1 inconclusive at work needs E1.braking-power\n");
    EXPECT_EQ(braked_by(R"(braking-torque="85 N.m")"),
              "engine-braking E1 inconclusive at work needs E1.max-speed\n");
    // What the charge pump loses might brake enough.
    EXPECT_EQ(
        judged_at_work(
            {driven,
             engine(R"(braking-torque="82 N.m" max-speed="2600 rpm")"),
             {R"(max-torque="100 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0")",
              R"(max-torque="100 N.m" slip-coefficient="0")"}},
            "engine-braking"),
        "engine-braking E1 inconclusive at work needs P2.torque-efficiency\n");
    EXPECT_EQ(verdicts_of(with({{R"(<load id="D1")", R"(<load overrunning="yes" id="D1")"}}),
                          "engine-braking"),
              "engine-braking circuit inconclusive needs duty\n");
}

TEST(EngineBraking, NotAskedWhereNoLoadDrives) {
    EXPECT_EQ(judged_at_work({}, "engine-braking"), "engine-braking circuit not-applicable\n");
    EXPECT_EQ(verdicts_of(with({}), "engine-braking"), "engine-braking circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
