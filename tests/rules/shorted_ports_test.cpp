// What is expected follows by hand from the design's words: a component whose working ports share a
// node for good.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string shorted(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "shorted-ports");
}

TEST(ShortedPorts, NoneIs) { EXPECT_EQ(shorted({}), "shorted-ports circuit pass\n"); }

TEST(ShortedPorts, AReliefOnOneLine) {
    const std::vector<Edit> edits{{"R2.P R3.T C1.B", "R2.P R2.T R3.T C1.B"},
                                  {"R3.P R2.T C2.B", "R3.P C2.B"}};
    EXPECT_EQ(shorted(edits), "shorted-ports R2 fail error\n");
    EXPECT_EQ(witness_of(with(edits), "shorted-ports", "R2"), "set: R2.P>T");
}

TEST(ShortedPorts, OverAJunctionToo) {
    EXPECT_EQ(shorted({{"joins=\"V1.F R4.P\"", "joins=\"V1.F R4.P J1.a\""},
                       {"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"M1.L P1.L K1.A\""},
                       added(R"(<junction id="J1"><port id="a"/><port id="b"/></junction>
                           <line id="X1" joins="J1.b R4.T"/>)")}),
              "shorted-ports R4 fail error\n");
}

TEST(ShortedPorts, AnOpenValveBetweenIsNoJoin) {
    EXPECT_EQ(shorted({{"C1.B V1.A", "C1.B V1.A H1.A"},
                       {"C2.B V1.B", "C2.B V1.B H1.B"},
                       added(R"(<shut-off-valve id="H1"/>)")}),
              "shorted-ports circuit pass\n");
}

TEST(ShortedPorts, NothingToAskWithoutPassages) {
    EXPECT_EQ(verdicts_of(circuit_from(R"(<circuit format="1"><engine id="E1"/></circuit>)"),
                          "shorted-ports"),
              "shorted-ports circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
