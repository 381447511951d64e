// The flushing relief at 18 bar sets the low side; the return line and the cooler behind it add
// some tenths of a bar.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::figures_at_work;
using testing::judged_at_work;

std::string motor_needs(const std::string& least) {
    return judged_at_work({{R"( low-side-pressure="10 bar")", least}}, "low-side-pressure");
}

TEST(LowSidePressure, AgainstWhatTheMotorNeeds) {
    EXPECT_EQ(motor_needs(R"( low-side-pressure="18 bar")"),
              "low-side-pressure P1 pass at work\nlow-side-pressure M1 pass at work\n");
    EXPECT_EQ(motor_needs(R"( low-side-pressure="20 bar")"),
              "low-side-pressure P1 pass at work\nlow-side-pressure M1 fail error at work\n");
    const double low = figures_at_work({}, "low-side-pressure", "M1").measured.si;
    EXPECT_GT(low, 18e5);
    EXPECT_LT(low, 20e5);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "low-side-pressure", "M1"), "set: M1>B");
}

// Without flushing it is the charge relief, at 24 bar.
TEST(LowSidePressure, TheChargeReliefSetsIt) {
    EXPECT_EQ(judged_at_work({{R"( low-side-pressure="10 bar")", R"( low-side-pressure="20 bar")"},
                              {R"(R4" setting="18 bar")", R"(R4" setting="40 bar")"}},
                             "low-side-pressure"),
              "low-side-pressure P1 pass at work\nlow-side-pressure M1 pass at work\n");
}

TEST(LowSidePressure, Missing) {
    EXPECT_EQ(motor_needs(""),
              "low-side-pressure P1 pass at work\n"
              "low-side-pressure M1 inconclusive at work needs M1.low-side-pressure\n");
}

// A machine that stands needs none.
TEST(LowSidePressure, NotAskedAtAStandstill) {
    EXPECT_EQ(
        judged_at_work({{R"(travel="100 %" torque="200 N.m")", R"(travel="0 %" torque="0 N.m")"},
                        {R"( low-side-pressure="10 bar")", ""}},
                       "low-side-pressure"),
        "low-side-pressure P1 pass at work\n");
}

}  // namespace
}  // namespace loopwright
