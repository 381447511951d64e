// Circuits that differ from the sound drive in how its flushing valve is joined.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const char* const moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";
const Edit a_not_joined{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
                        "joins=\"P1.A M1.A R2.P R3.T C1.B\""};
const Edit b_not_joined{"joins=\"P1.B M1.B R3.P R2.T C2.B V1.B\"",
                        "joins=\"P1.B M1.B R3.P R2.T C2.B\""};
const Edit both_on_a{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
                     "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A V1.B\""};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "flushing-side");
}

TEST(FlushingSide, TakesOilFromTheLowSide) {
    EXPECT_EQ(judged({}), std::string("flushing-side V1 pass") + moving);
    // Driving forward side A is high.
    EXPECT_EQ(witness_of(with({}), "flushing-side", "V1"), "path: P1.B>HB V1.B>F");
}

TEST(FlushingSide, WithOneInletInTheAirItTakesNoneWhenThatSideIsLow) {
    EXPECT_EQ(judged({b_not_joined}).find("flushing-side V1 fail error"), 0U);
    EXPECT_EQ(judged({a_not_joined}).find("flushing-side V1 fail error"), 0U);
}

TEST(FlushingSide, BothInletsOnOneSide) {
    EXPECT_EQ(judged({b_not_joined, both_on_a}).find("flushing-side V1 fail error"), 0U);
}

// A second loop whose low line is the first one's: the valve flushes the loop between whose sides
// it stands, and is not asked about the other.
TEST(FlushingSide, OnTheCommonLowLineOfTwoLoops) {
    const auto judged_with = [](const std::string& at_own, const std::string& at_common,
                                const std::string& at_other) {
        return judged(
            {{"\"P1.A M1.A R2.P R3.T C1.B V1.A\"", "\"P1.A M1.A R2.P R3.T C1.B" + at_own + '"'},
             {"\"P1.B M1.B R3.P R2.T C2.B V1.B\"",
              "\"P1.B M1.B R3.P R2.T C2.B P3.B M2.B" + at_common + '"'},
             {"E1 P1 P2", "E1 P1 P2 P3"},
             added(R"(<pump id="P3" flow-directions="2"/><motor id="M2"/>
                      <line id="HC" joins="P3.A M2.A)" +
                   at_other + "\"/>")});
    };
    EXPECT_EQ(judged_with(" V1.A", " V1.B", ""), std::string("flushing-side V1 pass") + moving);
    EXPECT_EQ(judged_with("", " V1.B", " V1.A"), std::string("flushing-side V1 pass") + moving);
    EXPECT_EQ(judged_with(" V1.A", "", " V1.B"),
              std::string("flushing-side V1 fail error") + moving);
    EXPECT_EQ(judged_with("", " V1.A V1.B", ""),
              std::string("flushing-side V1 fail error") + moving);
    EXPECT_EQ(judged_with("", "", ""), "flushing-side circuit not-applicable\n");
}

TEST(FlushingSide, NotAskedOfAValveOnNoLoop) {
    EXPECT_EQ(judged({a_not_joined, b_not_joined}), "flushing-side circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
