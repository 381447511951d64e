// Circuits that differ from the sound drive in where its drain ends: both housings drain by L1 over
// the cooler and L2 to T1.D.
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

const Edit below{R"(<port id="D"/>)", R"(<port id="D" level="below"/>)"};
const Edit above{R"(<port id="D"/>)", R"(<port id="D" level="above"/>)"};
const Edit one_more{R"(<port id="D"/>)",
                    R"(<port id="D" level="below"/><port id="E" level="above"/>)"};
const Edit own_drain{"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T P1.L K1.A\""};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "case-drain-return");
}

TEST(CaseDrainReturn, EndsBelowTheLevel) {
    EXPECT_EQ(judged({below}), "case-drain-return T1.D pass\n");
    EXPECT_EQ(witness_of(with({below}), "case-drain-return", "T1.D"),
              "path: P1>L L1 K1.A>B L2 T1.D");
}

TEST(CaseDrainReturn, EndsAboveTheLevel) {
    EXPECT_EQ(judged({above}), "case-drain-return T1.D fail warning\n");
    // A housing joined to the reservoir straight, by a port of its own.
    const std::vector<Edit> straight{one_more, own_drain,
                                     added(R"(<line id="L3" joins="M1.L T1.E"/>)")};
    EXPECT_EQ(judged(straight),
              "case-drain-return T1.D pass\ncase-drain-return T1.E fail warning\n");
    EXPECT_EQ(witness_of(with(straight), "case-drain-return", "T1.E"), "path: M1>L L3 T1.E");
}

TEST(CaseDrainReturn, WhetherBelowIsMissing) {
    EXPECT_EQ(judged({}), "case-drain-return T1.D inconclusive needs T1.D.level\n");
}

TEST(CaseDrainReturn, DrawnInAgainAtOnce) {
    const Edit no_suction{R"(<line id="S1" joins="T1.S P2.S"/>)", ""};
    const Edit teed{"joins=\"K1.B T1.D\"", "joins=\"K1.B T1.D P2.S\""};
    EXPECT_EQ(judged({below, no_suction, teed}), "case-drain-return T1.D fail warning\n");
    EXPECT_EQ(judged({no_suction, teed}), "case-drain-return T1.D fail warning\n");
}

TEST(CaseDrainReturn, NothingToAskWhereAllDrainInside) {
    EXPECT_EQ(judged({{R"(flow-directions="2" drain="external" case-pressure="3 bar")",
                       R"(flow-directions="2")"},
                      {R"(displacement="80 cm3/rev" drain="external" case-pressure="3 bar")",
                       R"(displacement="80 cm3/rev")"},
                      {"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T K1.A\""}}),
              "case-drain-return circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
