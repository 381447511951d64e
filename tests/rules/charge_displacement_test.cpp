// Ten per cent of the main pump: Machinery Lubrication, March-April 2016, p. 22 (10 to 15 %).
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::all_running;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string charged_by(const std::string& displacement) {
    return verdicts_of(with({{R"( displacement="18 cm3/rev")", displacement}}),
                       "charge-displacement");
}

// 18 and 7.1 of 71 cm3/rev are 25 and 10 %.
TEST(ChargeDisplacement, AgainstTheLoopPump) {
    EXPECT_EQ(charged_by(R"( displacement="18 cm3/rev")"),
              std::string("charge-displacement loop:P1 pass") + all_running);
    EXPECT_EQ(charged_by(R"( displacement="7.1 cm3/rev")"),
              std::string("charge-displacement loop:P1 pass") + all_running);
    EXPECT_EQ(charged_by(R"( displacement="7 cm3/rev")"),
              std::string("charge-displacement loop:P1 fail note") + all_running);
    EXPECT_EQ(witness_of(with({}), "charge-displacement", "loop:P1"), "set: P2 P1");
}

TEST(ChargeDisplacement, Missing) {
    std::string states = all_running;
    states.pop_back();
    EXPECT_EQ(charged_by(""),
              "charge-displacement loop:P1 inconclusive" + states + " needs P2.displacement\n");
}

TEST(ChargeDisplacement, NothingToAskWhereNoPumpCharges) {
    EXPECT_EQ(verdicts_of(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}), "charge-displacement"),
              "charge-displacement circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
