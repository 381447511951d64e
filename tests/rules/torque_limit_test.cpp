// T = V p / 2 pi without losses: 71 cm3/rev against the 157.1 bar that 200 N.m ask of 80 cm3/rev
// take 177.5 N.m; the charge pump's 18 cm3/rev at some 18.6 bar 5.3 N.m. At 2400 rpm that is 45.9
// kW.
#include <numbers>

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace loopwright
