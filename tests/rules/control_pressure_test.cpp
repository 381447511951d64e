// The flushing relief sets the charge pressure in motion to some 18 bar.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::judged_at_work;

std::string needing(const std::string& pressure) {
    return judged_at_work({{R"( control-pressure="15 bar")", pressure}}, "control-pressure");
}

TEST(ControlPressure, AgainstTheChargeLine) {
    EXPECT_EQ(needing(R"( control-pressure="18 bar")"), "control-pressure P1 pass at work\n");
    EXPECT_EQ(needing(R"( control-pressure="20 bar")"), "control-pressure P1 fail error at work\n");
}

TEST(ControlPressure, Missing) {
    EXPECT_EQ(needing(""), "control-pressure P1 inconclusive at work needs P1.control-pressure\n");
}

TEST(ControlPressure, NotAskedOfAControlByHand) {
    EXPECT_EQ(
        judged_at_work({{R"(control="hydraulic")", R"(control="manual")"}}, "control-pressure"),
        "control-pressure circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
