// The solved half of relief-setting. Without losses 200 N.m ask 157.1 bar of 80 cm3/rev (2 pi T /
// V), which stand over the relief valve from the high side to the low one. The margin of 20 bar is
// common practice, no source.
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;

constexpr double bar = 1e5;

/// All parts of the sides rated, so that the other half of the rule is decided.
std::string set_to(const std::string& setting, std::vector<Edit> more = {}) {
    more.insert(more.end(), {{R"(R2" setting="380 bar")", "R2\" setting=\"" + setting + "\""},
                             {R"(<pump id="P1")", R"(<pump id="P1" max-pressure="450 bar")"},
                             {R"(<motor id="M1")", R"(<motor id="M1" max-pressure="450 bar")"},
                             {R"(<line id="HA")", R"(<line id="HA" rating="450 bar")"},
                             {R"(<line id="HB")", R"(<line id="HB" rating="450 bar")"}});
    const std::string all = testing::judged_at_work(more, "relief-setting");
    const auto at = all.find("relief-setting R2 ");
    return at == std::string::npos ? all : all.substr(at, all.find('\n', at) - at);
}

TEST(ReliefSettingAtWork, AboveWhatStandsOverIt) {
    EXPECT_EQ(set_to("178 bar"), "relief-setting R2 pass");
    EXPECT_EQ(set_to("176 bar"), "relief-setting R2 fail warning at work");
    const double over = 2.0 * std::numbers::pi * 200.0 / 80e-6;
    const Figures figures = figures_at_work(
        {{R"(R2" setting="380 bar")", R"(R2" setting="170 bar")"},
         // Without what the lines lose.
         {R"(C1.B V1.A" function="working" bore="25 mm" length="1 m")", R"(C1.B V1.A")"},
         {R"(C2.B V1.B" function="working" bore="25 mm" length="1 m")", R"(C2.B V1.B")"}},
        "relief-setting", "R2");
    EXPECT_NEAR(figures.measured.si, 170.0 * bar - over, 10.0);
    EXPECT_NEAR(figures.required->si, 20.0 * bar, 1e-6);
}

// Driven by its load, the motor puts the other side under pressure.
TEST(ReliefSettingAtWork, TheOtherSideIsLow) {
    EXPECT_EQ(set_to("176 bar", {{R"( torque="200 N.m")", R"( torque="-200 N.m")"}}),
              "relief-setting R2 pass");
}

TEST(ReliefSettingAtWork, APointWithoutASolutionLeavesItOpen) {
    EXPECT_EQ(set_to("380 bar", {{R"( torque="200 N.m")", ""}}),
              "relief-setting R2 inconclusive at work needs D1.torque");
}

// It hangs on no point then, as the larger of both pressures cannot be below the stated one.
TEST(ReliefSettingAtWork, AStatedWorkingPressureDecidesWithoutPoints) {
    const Edit stated{R"( control-pressure="15 bar")",
                      R"( control-pressure="15 bar" working-pressure="300 bar")"};
    EXPECT_EQ(set_to("380 bar", {{R"( torque="200 N.m")", ""}, stated}), "relief-setting R2 pass");
}

// Nothing passes for want of data: a point at a standstill says nothing of it.
TEST(ReliefSettingAtWork, PointsOfMotionSayIt) {
    const Edit standing{R"(travel="100 %" torque="200 N.m")", R"(travel="0 %" torque="0 N.m")"};
    EXPECT_EQ(set_to("380 bar", {standing}),
              "relief-setting R2 inconclusive needs P1.working-pressure");
}

}  // namespace
}  // namespace loopwright
