// T = V p / 2 pi without losses: 71 cm3/rev against the 157.1 bar that 200 N.m ask of 80 cm3/rev
// take 177.5 N.m; the charge pump's 18 cm3/rev at some 18.6 bar 5.3 N.m. At 2400 rpm that is 45.9
// kW.
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

std::string driven_by(const std::string& engine) {
    return judged_at_work({{R"( power="55 kW" speed="2400 rpm" max-torque="240 N.m")", engine}},
                          "torque-limit");
}

TEST(TorqueLimit, AgainstPowerAndTorque) {
    EXPECT_EQ(judged_at_work({}, "torque-limit"), "torque-limit E1 pass at work\n");
    const double asked = 200.0 * 71.0 / 80.0;
    const double speed = 2400.0 * std::numbers::pi / 30.0;
    const double power = figures_at_work({}, "torque-limit", "E1").measured.si;
    EXPECT_GT(power, asked * speed);
    EXPECT_LT(power, (asked + 6.0) * speed);
    EXPECT_EQ(driven_by(R"( power="45 kW" speed="2400 rpm" max-torque="240 N.m")"),
              "torque-limit E1 fail error at work\n");
    EXPECT_EQ(driven_by(R"( power="55 kW" speed="2400 rpm" max-torque="180 N.m")"),
              "torque-limit E1 fail error at work\n");
}

// 50 kW at 2800 rpm are 170.5 N.m; whether it gives 183 N.m at 2400 rpm its highest torque says.
TEST(TorqueLimit, BelowRatedSpeedTheHighestTorqueIsAskedFor) {
    EXPECT_EQ(driven_by(R"( power="50 kW" speed="2800 rpm")"),
              "torque-limit E1 inconclusive at work needs E1.max-torque\n");
    EXPECT_EQ(driven_by(R"( power="50 kW" speed="2800 rpm" max-torque="190 N.m")"),
              "torque-limit E1 pass at work\n");
    EXPECT_EQ(driven_by(R"( power="55 kW" speed="2400 rpm")"), "torque-limit E1 pass at work\n");
}

TEST(TorqueLimit, Missing) {
    EXPECT_EQ(driven_by(R"( speed="2400 rpm" max-torque="240 N.m")"),
              "torque-limit E1 inconclusive at work needs E1.power\n");
    EXPECT_EQ(
        judged_at_work(
            {{R"(max-torque="100 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0")",
              R"(max-torque="100 N.m" slip-coefficient="0")"}},
            "torque-limit"),
        "torque-limit E1 inconclusive at work needs P2.torque-efficiency\n");
}

// Along rated power an engine of 240 N.m gives its highest torque at 2188 rpm; asked for more than
// that it gives way altogether, and no such point stands.
TEST(TorqueLimit, AStalledEngineFails) {
    const testing::Edit droop{R"(max-torque="240 N.m")", R"(max-torque="240 N.m" droop="5 %")"};
    EXPECT_EQ(judged_at_work({droop}, "torque-limit"), "torque-limit E1 pass at work\n");
    const std::vector<testing::Edit> heavy{
        droop,
        {R"( torque="200 N.m")", R"( torque="290 N.m")"},
        {R"(V1.A" function="working" bore="25 mm" length="1 m")", R"(V1.A" function="working")"},
        {R"(V1.B" function="working" bore="25 mm" length="1 m")", R"(V1.B" function="working")"}};
    EXPECT_EQ(judged_at_work(heavy, "torque-limit"), "torque-limit E1 fail error at work\n");
    EXPECT_NEAR(figures_at_work(heavy, "torque-limit", "E1").required->si, 55e3 / 240.0, 1e-9);
}

// Row V-12 of the published values, worked by hand there: 5000 kg, rolling resistance 0.03, 30 %
// grade, 0.40 m wheels and 20 km/h have a corner power of 86.103 kW. 2130 rpm of the motor over
// 132.629 rpm of the wheels is the gearbox.
TEST(TorqueLimit, TellsTheCornerPower) {
    const Circuit circuit = testing::at_work(
        {{R"(<load id="D1"/>)",
          R"(<gearbox id="G9" ratio="16.05984"/><load id="D1" vehicle="yes" mass="5000 kg" wheel-radius="400 mm" rolling-resistance="0.03"/>)"},
         {R"(<shaft id="W2" joins="M1 D1"/>)",
          R"(<shaft id="W2" joins="M1 G9.in"/><shaft id="W3" joins="G9.out D1"/>)"},
         {R"(<point id="work" speed="2400 rpm" travel="100 %" torque="200 N.m" oil="50 degC" share="100 %"/>)",
          R"(<point id="level" speed="2400 rpm" travel="100 %" grade="0 %" oil="50 degC"/>
             <point id="climb" speed="2400 rpm" travel="20 %" grade="30 %" oil="50 degC"/>)"}});
    const Rule* const only[] = {find_rule("torque-limit")};
    const CheckResult result = check(circuit, only);
    ASSERT_EQ(result.verdicts.size(), 1U);
    EXPECT_EQ(result.verdicts[0].outcome, Outcome::pass);
    EXPECT_NE(result.verdicts[0].message.find("corner power of what it drives is 86.1 kW, 1.566"),
              std::string_view::npos)
        << result.verdicts[0].message;
}

// 200 N.m at 2130 rpm are 44.61 kW, whatever stands between engine and pump.
TEST(TorqueLimit, TellsTheCornerPowerBehindAGearbox) {
    const Circuit circuit = testing::at_work(
        {{R"(<shaft id="W1" joins="E1 P1 P2"/>)",
          R"(<gearbox id="G9" ratio="1"/><shaft id="W1" joins="E1 G9.in"/><shaft id="W3" joins="G9.out P1 P2"/>)"}});
    const Rule* const only[] = {find_rule("torque-limit")};
    const CheckResult result = check(circuit, only);
    ASSERT_EQ(result.verdicts.size(), 1U);
    EXPECT_NE(result.verdicts[0].message.find("corner power of what it drives is 44.61 kW"),
              std::string_view::npos)
        << result.verdicts[0].message;
}

}  // namespace
}  // namespace loopwright
