// Circuits that differ in one thing. What is expected follows by hand from the design's words: the
// control supply reaches every control in every running state.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::Edit;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "control-supply"); }

/// P1 with a control port X on the outlet of a lever J1, which is supplied by the line J5.
Circuit lever(const std::string& supply, const std::string& parts, const Edit& more = {"", ""}) {
    std::vector<Edit> edits = {
        {"variable=\"yes\"", R"(variable="yes" control="hydraulic" pilot-ports="1")"},
        {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
        {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A" + supply + "\""},
        added(parts + R"(<pilot-control-valve id="J1"/><line id="J2" joins="J1.A P1.X"/>
                         <line id="J4" joins="J1.T T1.E"/>)")};
    if (!more.first.empty()) edits.push_back(more);
    return with(edits);
}

TEST(ControlSupply, FromTheChargeLineOverTheLever) {
    const Circuit circuit = lever(" J1.P", "");
    EXPECT_EQ(rule(circuit), std::string("control-supply P1 pass") + all_running);
    EXPECT_EQ(witness_of(circuit, "control-supply", "P1"),
              "path: P2>P G1 F1.A>B G2 J1.P>A J2>P1.X");
}

TEST(ControlSupply, NothingJoinsTheLever) {
    const Circuit circuit = lever("", "");
    EXPECT_EQ(rule(circuit), std::string("control-supply P1 fail error") + all_running);
    expect_at_frontier(witness_of(circuit, "control-supply", "P1"), "P1.X");
}

TEST(ControlSupply, OnlyAsHandValvesAndChecksStand) {
    EXPECT_EQ(rule(lever(" H1.A", R"(<shut-off-valve id="H1"/><line id="J5" joins="H1.B J1.P"/>)")),
              std::string("control-supply P1 pass") + all_running);
    EXPECT_EQ(rule(lever(" H1.A", R"(<shut-off-valve id="H1" position="closed"/>
                                     <line id="J5" joins="H1.B J1.P"/>)")),
              std::string("control-supply P1 fail error") + all_running);
    EXPECT_EQ(rule(lever(" H1.B", R"(<check-valve id="H1"/><line id="J5" joins="H1.A J1.P"/>)")),
              std::string("control-supply P1 fail error") + all_running);
}

TEST(ControlSupply, OverAReliefValveThereIsNone) {
    EXPECT_EQ(rule(lever(" H1.P", R"(<relief-valve id="H1" setting="5 bar"/>
                                     <line id="J5" joins="H1.T J1.P"/>)")),
              std::string("control-supply P1 fail error") + all_running);
}

TEST(ControlSupply, FromAnAccumulator) {
    EXPECT_EQ(rule(lever("", R"(<accumulator id="A1"/><line id="J5" joins="A1.A J1.P"/>)")),
              std::string("control-supply P1 pass") + all_running);
}

// A pump of its own, with a reservoir of its own, is as good.
TEST(ControlSupply, FromAPumpApart) {
    const std::string pump = R"(<pump id="P3"/><reservoir id="T2"><port id="S"/></reservoir>
        <line id="J6" joins="T2.S P3.S"/><line id="J5" joins="P3.P J1.P"/>)";
    EXPECT_EQ(rule(lever("", pump, {"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 P3\""})),
              std::string("control-supply P1 pass") + all_running);
    EXPECT_EQ(rule(lever("", pump)), std::string("control-supply P1 fail error") + all_running);
}

TEST(ControlSupply, NotAskedWhileNoPumpTurns) {
    EXPECT_EQ(rule(lever(" J1.P", "",
                         {"<engine id=\"E1\"", R"(<electric-motor variable-speed="yes" id="E1")"})),
              "control-supply P1 pass drive-forward drive-reverse overrun-forward overrun-reverse "
              "hold lost-signal\n");
}

TEST(ControlSupply, NotAskedOfControlsSuppliedInside) {
    EXPECT_EQ(rule(with({{"variable=\"yes\"", R"(variable="yes" control="hydraulic")"}})),
              "control-supply circuit not-applicable\n");
    EXPECT_EQ(rule(with({})), "control-supply circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
