// n_M = n_P V_P / V_M without losses: 2400 rpm x 71/80 is 2130 rpm (the definition of
// displacement).
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

constexpr double rpm = std::numbers::pi / 30.0;
constexpr const char* pumps = "motor-overspeed P1 pass at work\nmotor-overspeed P2 pass at work\n";

std::string limited_to(const std::string& limit) {
    return judged_at_work({{R"( max-speed="4500 rpm")", limit}}, "motor-overspeed");
}

TEST(MotorOverspeed, AgainstTheHighestSpeed) {
    EXPECT_EQ(limited_to(R"( max-speed="2131 rpm")"),
              std::string(pumps) + "motor-overspeed M1 pass at work\n");
    EXPECT_EQ(limited_to(R"( max-speed="2129 rpm")"),
              std::string(pumps) + "motor-overspeed M1 fail error at work\n");
    const Figures figures = figures_at_work({}, "motor-overspeed", "M1");
    EXPECT_NEAR(figures.measured.si / rpm, 2130.0, 1e-6);
    EXPECT_NEAR(figures.margin->si / rpm, 4500.0 - 2130.0, 1e-6);
}

TEST(MotorOverspeed, ALoadThatDrivesTurnsItAsFast) {
    EXPECT_EQ(judged_at_work({{R"( max-speed="4500 rpm")", R"( max-speed="2129 rpm")"},
                              {R"( torque="200 N.m")", R"( torque="-200 N.m")"}},
                             "motor-overspeed"),
              std::string(pumps) + "motor-overspeed M1 fail error at work\n");
}

// At 28 of 80 cm3/rev it turns at 2400 rpm x 71/28, 6085.7 rpm.
TEST(MotorOverspeed, AtTheSmallestDisplacementItMayHaveALimitOfItsOwn) {
    const Edit variable{
        R"(displacement="80 cm3/rev")",
        R"(displacement="80 cm3/rev" min-displacement="28 cm3/rev" variable="yes")"};
    const Edit command{R"(to="100 %"/></command>)",
                       R"(to="50 %"/><stage of="M1" from="50 %" to="100 %"/></command>)"};
    const Edit light{R"( torque="200 N.m")", R"( torque="100 N.m")"};
    EXPECT_EQ(judged_at_work({variable, command, light}, "motor-overspeed"),
              std::string(pumps) + "motor-overspeed M1 fail error at work\n");
    const Edit own{R"( max-speed="4500 rpm")",
                   R"( max-speed="4500 rpm" max-speed-at-min-displacement="6100 rpm")"};
    EXPECT_EQ(judged_at_work({variable, command, light, own}, "motor-overspeed"),
              std::string(pumps) + "motor-overspeed M1 pass at work\n");
    // Just above the smallest displacement the figure does not hold any more.
    const Edit most{R"(travel="100 %")", R"(travel="95 %")"};
    EXPECT_EQ(judged_at_work({variable, command, light, own, most}, "motor-overspeed"),
              std::string(pumps) + "motor-overspeed M1 fail error at work\n");
}

TEST(MotorOverspeed, Missing) {
    EXPECT_EQ(limited_to(""),
              std::string(pumps) + "motor-overspeed M1 inconclusive at work needs M1.max-speed\n");
}

}  // namespace
}  // namespace loopwright
