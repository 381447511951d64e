// Circuits that differ from the sound drive in the way of the charge oil to its make-up check C1.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

/// A part between the charge line and the check.
Circuit over(const std::string& part) {
    return with({{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B H1.A C2.A\""},
                 added(part + R"(<line id="G5" joins="H1.B C1.A"/>)")});
}

const std::string c1_fails = std::string("make-up-path C1 fail error") + all_running;

TEST(MakeUpPath, FreeToBothChecks) {
    EXPECT_EQ(
        verdicts_of(with({}), "make-up-path"),
        std::string("make-up-path C1 pass") + all_running + "make-up-path C2 pass" + all_running);
    EXPECT_EQ(witness_of(with({}), "make-up-path", "C2"), "path: P2>P G1 F1.A>B G2 C2.A>B");
}

TEST(MakeUpPath, AValveThatSomebodyCanShut) {
    const Circuit circuit = over(R"(<shut-off-valve id="H1"/>)");
    EXPECT_EQ(findings_of(circuit), c1_fails);
    EXPECT_EQ(witness_of(circuit, "make-up-path", "C1"),
              "path: P2>P G1 F1.A>B G2 H1.A>B G5 C1.A>B");
    EXPECT_EQ(findings_of(over(R"(<shut-off-valve id="H1" locked="yes"/>)")), "");
    EXPECT_EQ(findings_of(over(R"(<orifice id="H1" bore="8 mm"/>)")), "");
}

// A valve drawn shut makes the check no less a make-up check.
TEST(MakeUpPath, AValveDrawnShut) {
    const Circuit circuit = over(R"(<shut-off-valve id="H1" position="closed"/>)");
    EXPECT_EQ(verdicts_of(circuit, "make-up-path"),
              c1_fails + "make-up-path C2 pass" + all_running);
}

TEST(MakeUpPath, ShutInOnePosition) {
    const Circuit circuit = over(
        R"(<directional-valve id="H1"><port id="A"/><port id="B"/>
            <position id="a" rest="yes"><path from="A" to="B"/></position><position id="b"/>
            </directional-valve>)");
    EXPECT_EQ(verdicts_of(circuit, "make-up-path"),
              "make-up-path C1 fail error neutral[H1=b] drive-forward[H1=b] drive-reverse[H1=b] "
              "overrun-forward[H1=b] overrun-reverse[H1=b]\nmake-up-path C2 pass" +
                  std::string(all_running));
}

TEST(MakeUpPath, NothingToAskWithoutASource) {
    EXPECT_EQ(verdicts_of(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}), "make-up-path"),
              "make-up-path circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
