// A check leads from the charge line into every side, section and branch that can be low, and
// nothing that meters stands behind it. What is expected follows by hand from the design's
// definitions.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/reversing_drive.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::a_low;
using testing::added;
using testing::b_low;
using testing::circuit_from;
using testing::circuit_with;
using testing::edited;
using testing::expect_at_frontier;
using testing::findings_of;
using testing::reversing_drive;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string make_up(const std::string& side, const std::string& outcome,
                    const std::string& states) {
    return "make-up-check side:" + side + ' ' + outcome + states;
}

/// More between check C2 and side B; `parts` joins C2.B and `joined`, which stands on HB.
Circuit behind_c2(const std::string& parts, const std::string& joined) {
    return with({{"R3.P R2.T C2.B V1.B", "R3.P R2.T " + joined + " V1.B"}, added(parts)});
}

TEST(MakeUpCheck, EachSideHasItsOwn) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "make-up-check"),
              make_up("P1.A", "pass", a_low) + make_up("P1.B", "pass", b_low));
    EXPECT_EQ(witness_of(circuit, "make-up-check", "side:P1.A"),
              "path: P2>P G1 F1.A>B G2 C1.A>B HA>P1.A");
    EXPECT_EQ(witness_of(circuit, "make-up-check", "side:P1.B"),
              "path: P2>P G1 F1.A>B G2 C2.A>B HB>P1.B");
}

TEST(MakeUpCheck, IntermediateSideIsNoSubject) {
    const Circuit circuit = with({{"P1.B M1.B R3.P", "P1.B M2.B R3.P"},
                                  {"M1 D1", "M1 D1 M2"},
                                  added(R"(<motor id="M2"/><line id="HI" joins="M1.B M2.A"/>)")});
    EXPECT_EQ(verdicts_of(circuit, "make-up-check"),
              make_up("P1.A", "pass", a_low) + make_up("P1.B", "pass", b_low));
}

TEST(MakeUpCheck, LeftOut) {
    const Circuit circuit = with({{R"(<check-valve id="C2"/>)", ""},
                                  {"F1.B C1.A C2.A", "F1.B C1.A"},
                                  {"R2.T C2.B V1.B", "R2.T V1.B"}});
    EXPECT_EQ(findings_of(circuit), std::string("charge-supply side:P1.B fail error") + b_low +
                                        make_up("P1.B", "fail error", b_low));
    EXPECT_EQ(witness_of(circuit, "make-up-check", "side:P1.B").find("frontier: "), 0U);
}

TEST(MakeUpCheck, TurnedRoundStandsInTheWitness) {
    const Circuit circuit = with(
        {{"F1.B C1.A C2.A", "F1.B C1.A C2.B"}, {"R3.P R2.T C2.B V1.B", "R3.P R2.T C2.A V1.B"}});
    EXPECT_EQ(findings_of(circuit), std::string("charge-supply side:P1.B fail error") + b_low +
                                        make_up("P1.B", "fail error", b_low));
    expect_at_frontier(witness_of(circuit, "make-up-check", "side:P1.B"), "C2.B>A");
}

TEST(MakeUpCheck, OrificeBehindItFailsBeforeItPasses) {
    const Circuit behind =
        behind_c2(R"(<orifice id="O2"/><line id="X" joins="C2.B O2.A"/>)", "O2.B");
    EXPECT_EQ(findings_of(behind), make_up("P1.B", "fail error", b_low));
    expect_at_frontier(witness_of(behind, "make-up-check", "side:P1.B"), "O2.A>B");
    const Circuit before = with({{"F1.B C1.A C2.A", "F1.B C1.A O2.A"},
                                 added(R"(<orifice id="O2"/><line id="X" joins="O2.B C2.A"/>)")});
    EXPECT_EQ(findings_of(before), "");
    EXPECT_EQ(witness_of(before, "make-up-check", "side:P1.B"),
              "path: P2>P G1 F1.A>B G2 O2.A>B X C2.A>B HB>P1.B");
}

TEST(MakeUpCheck, SecondCheckBehindTheOrificeMakesItGood) {
    const Circuit circuit = behind_c2(R"(<orifice id="O2"/><check-valve id="C3"/>
        <line id="X" joins="C2.B O2.A"/><line id="Y" joins="O2.B C3.A"/>)",
                                      "C3.B");
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "make-up-check", "side:P1.B"),
              "path: P2>P G1 F1.A>B G2 C2.A>B X O2.A>B Y C3.A>B HB>P1.B");
}

TEST(MakeUpCheck, ElementBehindItPasses) {
    const Circuit circuit =
        behind_c2(R"(<cooler id="K2"/><line id="X" joins="C2.B K2.A"/>)", "K2.B");
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "make-up-check", "side:P1.B"),
              "path: P2>P G1 F1.A>B G2 C2.A>B X K2.A>B HB>P1.B");
}

TEST(MakeUpCheck, ShutOffValveBehindItCountsAsDrawn) {
    const auto valve = [](const std::string& position) {
        return behind_c2(R"(<shut-off-valve id="B1" position=")" + position +
                             R"("/><line id="X" joins="C2.B B1.A"/>)",
                         "B1.B");
    };
    // Not locked, it can shut oil in behind the check either way.
    const std::string shut_in = "trapped-volume X fail warning\n";
    EXPECT_EQ(findings_of(valve("open")), shut_in);
    const Circuit closed = valve("closed");
    EXPECT_EQ(findings_of(closed), std::string("charge-supply side:P1.B fail error") + b_low +
                                       make_up("P1.B", "fail error", b_low) + shut_in);
    expect_at_frontier(witness_of(closed, "make-up-check", "side:P1.B"), "B1.A>B");
}

// The charge pump delivers straight into side A: that side is fed, but there is no charge line.
TEST(MakeUpCheck, SourceOnASideHasNoChargeLine) {
    const Circuit circuit =
        with({{R"(<check-valve id="C1"/>)", ""},
              {R"(<filter id="F1" fineness="10 um" clogging-indicator="visual"/>)", ""},
              {R"(<line id="G1" joins="P2.P R1.P F1.A"/>)", ""},
              {R"(<line id="G2" joins="F1.B C1.A C2.A"/>)", ""},
              {R"("P1.A M1.A R2.P R3.T C1.B V1.A")", R"("P2.P C2.A P1.A M1.A R2.P R3.T V1.A")"}});
    EXPECT_EQ(verdicts_of(circuit, "make-up-check"),
              make_up("P1.A", "fail error", a_low) + make_up("P1.B", "fail error", b_low));
}

// The one-way loop of two motors; M2 stands behind C7, which lets its oil out only. An orifice from
// the gallery feeds the branch at M2, a check beside it makes it up.
TEST(MakeUpCheck, BranchFedByMeteringOnlyIsAWarning) {
    const auto drive = [](const std::string& part) {
        return circuit_with(R"(<engine id="E1"/><pump id="P1"/><pump id="P2"/>
            <shaft id="W1" joins="E1 P1 P2"/><motor id="M1"/><motor id="M2"/>
            <check-valve id="C1"/><check-valve id="C2"/><check-valve id="C7"/>
            <reservoir id="T1"><port id="S"/></reservoir>
            <line id="S1" joins="T1.S P2.S"/><line id="G1" joins="P2.P C1.A C2.A X1.A"/>
            <line id="HA" joins="P1.P M1.A C1.B C7.B"/><line id="HC" joins="M2.A C7.A X1.B"/>
            <line id="HB" joins="P1.S M1.B M2.B C2.B"/>)" +
                            part);
    };
    const char* const inlet_low = " neutral drive-forward hold lost-signal\n";
    const char* const outlet_low = " neutral overrun-forward hold lost-signal\n";
    const std::string sides =
        make_up("P1.S", "pass", inlet_low) + make_up("P1.P", "pass", outlet_low);
    const Circuit metered = drive(R"(<orifice id="X1"/>)");
    EXPECT_EQ(verdicts_of(metered, "make-up-check"),
              sides + make_up("M2.A", "fail warning", outlet_low));
    expect_at_frontier(witness_of(metered, "make-up-check", "side:M2.A"), "X1.A>B");
    const Circuit checked = drive(R"(<check-valve id="X1"/>)");
    EXPECT_EQ(verdicts_of(checked, "make-up-check"), sides + make_up("M2.A", "pass", outlet_low));
    EXPECT_EQ(witness_of(checked, "make-up-check", "side:M2.A"), "path: P2>P G1 X1.A>B HC>M2.A");
}

TEST(MakeUpCheck, SectionWithoutOne) {
    const Circuit circuit = circuit_from(
        edited(reversing_drive(), {{R"(<check-valve id="C4"/>)", R"(<orifice id="C4"/>)"}}));
    // Position f has HB on the pump's inlet, low in drive; r has it on the outlet, low in overrun.
    EXPECT_EQ(findings_of(circuit),
              make_up("P1.S", "fail error", " drive-forward\n") +
                  make_up("P1.P", "fail error", " overrun-reverse\n") +
                  make_up("M1.B", "fail error", " neutral hold lost-signal\n"));
    expect_at_frontier(witness_of(circuit, "make-up-check", "side:M1.B"), "C4.A>B");
}

TEST(MakeUpCheck, SectionMadeUpAtTheMotorsLine) {
    const Circuit circuit = circuit_from(reversing_drive());
    EXPECT_EQ(verdicts_of(circuit, "make-up-check"),
              make_up("P1.S", "pass", " drive-forward drive-reverse\n") +
                  make_up("P1.P", "pass", " overrun-forward overrun-reverse\n") +
                  make_up("M1.A", "pass", " neutral hold lost-signal\n") +
                  make_up("M1.B", "pass", " neutral hold lost-signal\n"));
    EXPECT_EQ(witness_of(circuit, "make-up-check", "side:M1.A"),
              "path: P2>P G1 F1.A>B G2 C3.A>B HA>M1.A");
}

// The other valve stands in any position unless the file says otherwise; it commands no loop.
TEST(MakeUpCheck, ValveBehindItThatThrottlesInOnePosition) {
    const Circuit circuit = behind_c2(R"(<directional-valve id="V3"><port id="A"/><port id="B"/>
        <position id="open" rest="yes"><path from="A" to="B"/></position>
        <position id="throttled"><path from="A" to="B" throttled="yes"/></position>
        </directional-valve><line id="X" joins="C2.B V3.A"/>)",
                                      "V3.B");
    EXPECT_EQ(findings_of(circuit), make_up("P1.B", "fail error",
                                            " neutral[V3=throttled] drive-forward[V3=throttled] "
                                            "overrun-reverse[V3=throttled]\n"));
    expect_at_frontier(witness_of(circuit, "make-up-check", "side:P1.B"), "V3.A>B");
}

TEST(MakeUpCheck, OfTwoLoopsTheOneWithTheCheckTurnedFails) {
    const auto second_loop = [](const std::string& on_gallery, const std::string& on_side) {
        return with(
            {{"E1 P1 P2", "E1 P1 P2 P3"},
             {"M1 D1", "M1 D1 M2"},
             {"R4.T M1.L P1.L", "R4.T M1.L P1.L M2.L P3.L"},
             {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A " + on_gallery},
             added(R"(<pump id="P3" displacement="45 cm3/rev" flow-directions="2" drain="external"/>
        <motor id="M2" drain="external"/>
        <check-valve id="C5"/><check-valve id="C6"/>
        <relief-valve id="R5" setting="300 bar"/><relief-valve id="R6" setting="300 bar"/>
        <line id="JA" joins="P3.A M2.A R5.P R6.T C5.B"/>
        <line id="JB" joins="P3.B M2.B R6.P R5.T )" +
                   on_side + "\"/>")});
    };
    EXPECT_EQ(findings_of(second_loop("C6.A", "C6.B")), "");
    const Circuit turned = second_loop("C6.B", "C6.A");
    EXPECT_EQ(findings_of(turned), std::string("charge-supply side:P3.B fail error") + b_low +
                                       make_up("P3.B", "fail error", b_low));
    expect_at_frontier(witness_of(turned, "make-up-check", "side:P3.B"), "C6.B>A");
}

}  // namespace
}  // namespace loopwright
