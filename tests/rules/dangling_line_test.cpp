// What is expected follows by hand from the design's words: a line joined at one end only.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

TEST(DanglingLine, AllJoinTwoPorts) {
    EXPECT_EQ(verdicts_of(with({}), "dangling-line"), "dangling-line circuit pass\n");
}

TEST(DanglingLine, LinesAndHosesThatEndInNothing) {
    const Circuit circuit = with({added(R"(<shuttle-valve id="X1"/><line id="Y1" joins="X1.A"/>
                   <hose id="Y2" joins="X1.B"/><line id="Y3" joins="X1.C"/>)")});
    EXPECT_EQ(findings_of(circuit),
              "dangling-line Y1 fail error\n"
              "dangling-line Y2 fail error\n"
              "dangling-line Y3 fail error\n");
    EXPECT_EQ(witness_of(circuit, "dangling-line", "Y2"), "set: Y2");
}

TEST(DanglingLine, NothingToAskWithoutLines) {
    EXPECT_EQ(verdicts_of(circuit_from(R"(<circuit format="1"><engine id="E1"/></circuit>)"),
                          "dangling-line"),
              "dangling-line circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
