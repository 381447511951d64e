// Circuits that differ from the sound drive in one thing. The margin of 20 bar is common practice,
// no source.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

Edit limiter(const std::string& pressure) {
    return {R"(<pump id="P1")", R"(<pump id="P1" pressure-limiter=")" + pressure + '"'};
}

std::string limited_to(const std::string& pressure) {
    return verdicts_of(with({limiter(pressure)}), "pressure-limiter");
}

TEST(PressureLimiter, BelowTheReliefsOrNot) {
    EXPECT_EQ(limited_to("360 bar"), "pressure-limiter P1 pass\n");
    EXPECT_EQ(limited_to("361 bar"), "pressure-limiter P1 fail warning\n");
    EXPECT_EQ(limited_to("400 bar"), "pressure-limiter P1 fail warning\n");
    EXPECT_EQ(witness_of(with({limiter("360 bar")}), "pressure-limiter", "P1"), "set: P1 R2");
}

// The lower of two counts; one that is not known leaves it open unless the other one fails.
TEST(PressureLimiter, LowestRelief) {
    const Edit lower{R"(<relief-valve id="R3" setting="380 bar"/>)",
                     R"(<relief-valve id="R3" setting="350 bar"/>)"};
    const Edit unknown{R"(<relief-valve id="R3" setting="380 bar"/>)",
                       R"(<relief-valve id="R3"/>)"};
    EXPECT_EQ(verdicts_of(with({limiter("340 bar"), lower}), "pressure-limiter"),
              "pressure-limiter P1 fail warning\n");
    EXPECT_EQ(verdicts_of(with({limiter("340 bar"), unknown}), "pressure-limiter"),
              "pressure-limiter P1 inconclusive needs R3.setting\n");
    EXPECT_EQ(verdicts_of(with({limiter("370 bar"), unknown}), "pressure-limiter"),
              "pressure-limiter P1 fail warning\n");
}

TEST(PressureLimiter, NothingToAskWithoutOne) {
    EXPECT_EQ(verdicts_of(with({}), "pressure-limiter"),
              "pressure-limiter circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
