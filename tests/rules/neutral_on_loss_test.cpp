// Circuits that differ in one thing. What is expected follows by hand from the design's words: with
// the signal gone both control lines drain, or the file says that the pump rests at zero.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "neutral-on-loss"); }

/// P1 with a control so.
Circuit controlled(const std::string& attributes) {
    return with({{"variable=\"yes\"", "variable=\"yes\" " + attributes}});
}

/// P1 with a hydraulic control, its ports joined to the outlets of a valve J1 on the gallery.
Circuit piloted(const std::string& valve) {
    return with(
        {{"variable=\"yes\"", R"(variable="yes" control="hydraulic" pilot-ports="2")"},
         {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
         {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A J1.P\""},
         added(valve + R"(<line id="J2" joins="J1.A P1.X1"/><line id="J3" joins="J1.B P1.X2"/>
                                  <line id="J4" joins="J1.T T1.E"/>)")});
}

TEST(NeutralOnLoss, AsTheFileSays) {
    EXPECT_EQ(rule(controlled(R"(control="electric" rest-displacement="zero")")),
              "neutral-on-loss P1 pass lost-signal\n");
    EXPECT_EQ(rule(controlled(R"(control="electric" rest-displacement="largest")")),
              "neutral-on-loss P1 fail error lost-signal\n");
    EXPECT_EQ(rule(controlled(R"(control="electric")")),
              "neutral-on-loss P1 inconclusive lost-signal needs P1.rest-displacement\n");
    EXPECT_EQ(rule(controlled(R"(control="hydraulic" rest-displacement="zero")")),
              "neutral-on-loss P1 pass lost-signal\n");
}

TEST(NeutralOnLoss, NotAskedWithoutASignal) {
    EXPECT_EQ(rule(controlled(R"(control="manual")")),
              "neutral-on-loss P1 not-applicable lost-signal\n");
    EXPECT_EQ(rule(with({})), "neutral-on-loss P1 not-applicable lost-signal\n");
    EXPECT_EQ(rule(with({{"variable=\"yes\"", ""}})), "neutral-on-loss circuit not-applicable\n");
}

TEST(NeutralOnLoss, ALeverThatIsLetGoDrainsBothControlLines) {
    const Circuit circuit = piloted(R"(<pilot-control-valve id="J1" outlets="2"/>)");
    EXPECT_EQ(rule(circuit), "neutral-on-loss P1 pass lost-signal\n");
    EXPECT_EQ(witness_of(circuit, "neutral-on-loss", "P1"), "path: P1.X1>J2 J1.A>T J4 T1");
}

TEST(NeutralOnLoss, AValveThatShutsOneControlLineAtRest) {
    const Circuit circuit = piloted(
        R"(<directional-valve id="J1"><port id="P"/><port id="T"/><port id="A"/><port id="B"/>
            <position id="n" rest="yes"><path from="A" to="T"/></position>
            <position id="f"><path from="P" to="A"/><path from="B" to="T"/></position>
            <position id="r"><path from="P" to="B"/><path from="A" to="T"/></position>
           </directional-valve>)");
    EXPECT_EQ(rule(circuit), "neutral-on-loss P1 fail error lost-signal\n");
    expect_at_frontier(witness_of(circuit, "neutral-on-loss", "P1"), "J1.B>T");
}

}  // namespace
}  // namespace loopwright
