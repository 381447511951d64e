// The flushing relief sets the charge pressure in motion, over the housings that it empties into.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::figures_at_work;
using testing::judged_at_work;

TEST(ChargePressure, AboveTheHousings) {
    EXPECT_EQ(judged_at_work({}, "charge-pressure"), "charge-pressure loop:P1 pass at work\n");
    // The relief's 18 bar over the housings, and the filter's drop: 0.5 bar at 60 L/min and
    // 30 mm2/s, less here.
    const double above = figures_at_work({}, "charge-pressure", "loop:P1").measured.si;
    EXPECT_GT(above, 18.0e5);
    EXPECT_LT(above, 18.6e5);
}

TEST(ChargePressure, TooLittleAboveThem) {
    EXPECT_EQ(
        judged_at_work({{R"(R4" setting="18 bar")", R"(R4" setting="5 bar")"}}, "charge-pressure"),
        "charge-pressure loop:P1 fail warning at work\n");
}

// All charge oil leaks away: nothing holds any pressure.
TEST(ChargePressure, NoneAtAll) {
    EXPECT_EQ(judged_at_work({{R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0")",
                               R"(max-speed="4500 rpm" leakage-coefficient="0.4 L/min/bar")"}},
                             "charge-pressure"),
              "charge-pressure loop:P1 fail error at work\n");
}

TEST(ChargePressure, NotAskedInNeutral) {
    EXPECT_EQ(
        judged_at_work({{R"(travel="100 %" torque="200 N.m")", R"(travel="0 %" torque="0 N.m")"}},
                       "charge-pressure"),
        "charge-pressure circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
