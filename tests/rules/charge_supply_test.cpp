// A charge source feeds every main side, branch and section that can be the low one. What is
// expected follows by hand from the design's definitions.
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
using testing::Edit;
using testing::edited;
using testing::findings_of;
using testing::reversing_drive;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string supply(const std::string& side, const std::string& outcome, const std::string& states) {
    return "charge-supply side:" + side + ' ' + outcome + states;
}

std::string both_fail() {
    return supply("P1.A", "fail error", a_low) + supply("P1.B", "fail error", b_low);
}

std::string both_pass() { return supply("P1.A", "pass", a_low) + supply("P1.B", "pass", b_low); }

TEST(ChargeSupply, EachSideOverItsCheck) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "charge-supply"), both_pass());
    EXPECT_EQ(witness_of(circuit, "charge-supply", "side:P1.A"),
              "path: P2>P G1 F1.A>B G2 C1.A>B HA>P1.A");
    EXPECT_EQ(witness_of(circuit, "charge-supply", "side:P1.B"),
              "path: P2>P G1 F1.A>B G2 C2.A>B HB>P1.B");
}

TEST(ChargeSupply, SuctionShutByAHandValve) {
    const auto valve = [](const std::string& position) {
        return with(
            {{"T1.S P2.S", "T1.S B1.A"},
             added(R"(<line id="S2" joins="B1.B P2.S"/><shut-off-valve id="B1" position=")" +
                   position + R"(" locked="yes"/>)")});
    };
    EXPECT_EQ(findings_of(valve("open")), "");
    const Circuit shut = valve("closed");
    EXPECT_EQ(verdicts_of(shut, "charge-supply"), both_fail());
    const std::string ends = witness_of(shut, "charge-supply", "side:P1.A");
    EXPECT_EQ(ends.find("frontier: "), 0U) << ends;
    EXPECT_NE(ends.find(" P2.S>P"), std::string::npos) << ends;
}

TEST(ChargeSupply, CheckToTheReservoirVentsTheLineUnlessItHasASpring) {
    const auto check = [](const std::string& spring) {
        return with({{"F1.B C1.A C2.A", "F1.B C1.A C2.A C9.A"},
                     {"R1.T T1.R", "R1.T T1.R C9.B"},
                     added(R"(<check-valve id="C9")" + spring + "/>")});
    };
    EXPECT_EQ(findings_of(check(R"( opening-pressure="21 bar")")), "");
    EXPECT_EQ(verdicts_of(check(""), "charge-supply"), both_fail());
}

// Charge oil comes out of a fan motor. At a standstill it gets past the motor if a relief leads
// round it into the same line.
TEST(ChargeSupply, ReturnOfAnOpenPartNeedsAReliefRoundItsMotor) {
    const auto fan = [](const std::string& behind_motor) {
        return with({{R"(<line id="G1" joins="P2.P R1.P F1.A"/>)",
                      R"(<line id="G0" joins="P2.P M3.A R5.P"/>
                         <line id="G1" joins="R1.P F1.A M3.B)" +
                          behind_motor + "\"/>"},
                     added(R"(<motor id="M3"/><relief-valve id="R5" setting="150 bar"/>)")});
    };
    const Circuit sound = fan(" R5.T");
    EXPECT_EQ(findings_of(sound), "");
    EXPECT_EQ(witness_of(sound, "charge-supply", "side:P1.B"),
              "path: P2>P G0 M3.A>B G1 F1.A>B G2 C2.A>B HB>P1.B");
    EXPECT_EQ(verdicts_of(fan(""), "charge-supply"), both_fail());
}

// No charge pump: what stands on the line of the checks charges the loop.
std::vector<Edit> without_charge_pump(const std::string& at_checks, const std::string& more) {
    return {{"E1 P1 P2", "E1 P1"},
            {"F1.B C1.A C2.A", "C1.A C2.A " + at_checks},
            {R"(joins="P2.P R1.P F1.A"/>)", R"(joins="P2.P R1.P F1.A F1.B"/>)"},
            added(more)};
}

TEST(ChargeSupply, AReservoirUnderPressure) {
    const auto drive = [](const std::string& attributes) {
        return with(without_charge_pump(
            "T9.A",
            R"(<reservoir id="T9")" + attributes + R"(><port id="A" level="below"/></reservoir>)"));
    };
    const Circuit sealed = drive(R"( pressure="5 bar")");
    EXPECT_EQ(verdicts_of(sealed, "charge-supply"), both_pass());
    EXPECT_EQ(witness_of(sealed, "charge-supply", "side:P1.A"), "path: T9 G2 C1.A>B HA>P1.A");
    EXPECT_EQ(verdicts_of(sealed, "make-up-check"),
              "make-up-check side:P1.A pass" + std::string(a_low) + "make-up-check side:P1.B pass" +
                  std::string(b_low));
    EXPECT_EQ(verdicts_of(sealed, "charge-vented"),
              "charge-vented loop:P1 pass" + std::string(testing::all_running));
    EXPECT_EQ(verdicts_of(drive(""), "charge-supply"), both_fail());
    EXPECT_EQ(verdicts_of(drive(R"( pressure="5 bar" breather="yes")"), "charge-supply"),
              both_fail());
}

// A relief may discharge into it, for it makes up the other side; not into a vented one.
TEST(ChargeSupply, AReservoirUnderPressureTakesTheReliefsOil) {
    const auto drive = [](const std::string& attributes) {
        std::vector<Edit> edits = without_charge_pump(
            "R2.T R3.T T9.A",
            R"(<reservoir id="T9")" + attributes + R"(><port id="A" level="below"/></reservoir>)");
        edits.push_back({"P1.A M1.A R2.P R3.T", "P1.A M1.A R2.P"});
        edits.push_back({"P1.B M1.B R3.P R2.T", "P1.B M1.B R3.P"});
        return verdicts_of(with(edits), "crossport-relief");
    };
    const auto both = [](const std::string& outcome) {
        return "crossport-relief side:P1.A " + outcome + testing::all_running +
               "crossport-relief side:P1.B " + outcome + testing::all_running;
    };
    EXPECT_EQ(drive(R"( pressure="5 bar")"), both("pass"));
    EXPECT_EQ(drive(""), both("fail error"));
}

// What an accumulator holds comes to an end.
TEST(ChargeSupply, AnAccumulatorIsANote) {
    const auto drive = [](const std::string& edits) {
        return with(without_charge_pump("X1.A", edits));
    };
    const Circuit stored = drive(R"(<accumulator id="X1"/>)");
    EXPECT_EQ(verdicts_of(stored, "charge-supply"),
              supply("P1.A", "fail note", a_low) + supply("P1.B", "fail note", b_low));
    EXPECT_EQ(witness_of(stored, "charge-supply", "side:P1.A"), "path: X1>A G2 C1.A>B HA>P1.A");
    EXPECT_EQ(verdicts_of(with({{"F1.B C1.A C2.A", "F1.B C1.A C2.A X1.A"},
                                added(R"(<accumulator id="X1"/>)")}),
                          "charge-supply"),
              both_pass());
}

// The pump's outlet, or the gallery behind a spring, is open to the reservoir.
TEST(ChargeSupply, NothingIsFedOverAVentedNode) {
    const auto drive = [](const std::string& at_pump, const std::string& at_gallery,
                          const std::string& spring) {
        return with({{R"("P2.P R1.P F1.A")", R"("P2.P R1.P C8.A)" + at_pump + '"'},
                     {"F1.B C1.A C2.A", "F1.B C1.A C2.A" + at_gallery},
                     {"R1.T T1.R", "R1.T T1.R C9.B"},
                     added(R"(<line id="X" joins="C8.B F1.A"/>
                              <check-valve id="C8" opening-pressure="1 bar"/>
                              <check-valve id="C9")" +
                           spring + "/>")});
    };
    const std::string held = R"( opening-pressure="21 bar")";
    EXPECT_EQ(findings_of(drive(" C9.A", "", held)), "");
    EXPECT_EQ(findings_of(drive("", " C9.A", held)), "");
    EXPECT_EQ(verdicts_of(drive(" C9.A", "", ""), "charge-supply"), both_fail());
    EXPECT_EQ(verdicts_of(drive("", " C9.A", ""), "charge-supply"), both_fail());
}

// Over its centre with the loop's flow: it draws through one port and delivers through the other
// going one way, has nothing to draw from the other way and no stroke without a command.
TEST(ChargeSupply, TwoWayChargePumpDeliversOneWayOnly) {
    const auto drive = [](const std::string& inlet, const std::string& outlet) {
        return with(
            {{R"(<pump id="P2" displacement)", R"(<pump id="P2" flow-directions="2" displacement)"},
             {"T1.S P2.S", "T1.S " + inlet},
             {"P2.P R1.P F1.A", outlet + " R1.P F1.A"}});
    };
    EXPECT_EQ(verdicts_of(drive("P2.B", "P2.A"), "charge-supply"),
              supply("P1.A", "fail error", " neutral drive-reverse hold lost-signal\n") +
                  supply("P1.B", "fail error", " neutral overrun-reverse hold lost-signal\n"));
    EXPECT_EQ(verdicts_of(drive("P2.A", "P2.B"), "charge-supply"),
              supply("P1.A", "fail error", " neutral overrun-forward hold lost-signal\n") +
                  supply("P1.B", "fail error", " neutral drive-forward hold lost-signal\n"));
}

TEST(ChargeSupply, SecondSourceAloneIsEnough) {
    const Circuit circuit = with({{"E1 P1 P2", "E1 P1 P3"},
                                  {"T1.S P2.S", "T1.S P2.S P3.S"},
                                  {"P2.P R1.P F1.A", "P2.P P3.P R1.P F1.A"},
                                  added(R"(<pump id="P3" displacement="18 cm3/rev"/>)")});
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "charge-supply", "side:P1.A"),
              "path: P3>P G1 F1.A>B G2 C1.A>B HA>P1.A");
}

// Oil that has come into a side serves that side, and feeds nothing else out of it: the check from
// side A into side B feeds B with loop oil only.
TEST(ChargeSupply, ASideIsNotFedOutOfTheOther) {
    const Circuit circuit = with(
        {{R"(<check-valve id="C1"/>)", ""},
         {R"(<filter id="F1" fineness="10 um" clogging-indicator="visual"/>)", ""},
         {R"(<line id="G1" joins="P2.P R1.P F1.A"/>)", ""},
         {R"(<line id="G2" joins="F1.B C1.A C2.A"/>)", ""},
         {R"("P1.A M1.A R2.P R3.T C1.B V1.A")", R"("P2.P R1.P C2.A P1.A M1.A R2.P R3.T V1.A")"}});
    EXPECT_EQ(verdicts_of(circuit, "charge-supply"),
              supply("P1.A", "pass", a_low) + supply("P1.B", "fail error", b_low));
    EXPECT_EQ(witness_of(circuit, "charge-supply", "side:P1.A"), "path: P2>P HA>P1.A");
}

TEST(ChargeSupply, OneChargePumpForTwoLoops) {
    const auto second_loop = [](const std::string& check) {
        return with(
            {{"E1 P1 P2", "E1 P1 P2 P3"},
             {"M1 D1", "M1 D1 M2"},
             {"R4.T M1.L P1.L", "R4.T M1.L P1.L M2.L P3.L"},
             {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A" + check},
             added(R"(<pump id="P3" displacement="45 cm3/rev" flow-directions="2" drain="external"/>
        <motor id="M2" drain="external"/>
        <check-valve id="C5"/><check-valve id="C6"/>
        <relief-valve id="R5" setting="300 bar"/><relief-valve id="R6" setting="300 bar"/>
        <line id="JA" joins="P3.A M2.A R5.P R6.T C5.B"/>
        <line id="JB" joins="P3.B M2.B R6.P R5.T C6.B"/>)")});
    };
    const Circuit sound = second_loop(" C6.A");
    EXPECT_EQ(findings_of(sound), "");
    EXPECT_EQ(witness_of(sound, "charge-supply", "side:P3.B"),
              "path: P2>P G1 F1.A>B G2 C6.A>B JB>P3.B");
    EXPECT_EQ(verdicts_of(second_loop(""), "charge-supply"),
              both_pass() + supply("P3.A", "pass", a_low) + supply("P3.B", "fail error", b_low));
}

TEST(ChargeSupply, ShutOffMotorMakesSections) {
    const Circuit circuit = circuit_from(reversing_drive());
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(verdicts_of(circuit, "charge-supply"),
              supply("P1.S", "pass", " drive-forward drive-reverse\n") +
                  supply("P1.P", "pass", " overrun-forward overrun-reverse\n") +
                  supply("M1.A", "pass", " neutral hold lost-signal\n") +
                  supply("M1.B", "pass", " neutral hold lost-signal\n"));
    EXPECT_EQ(witness_of(circuit, "charge-supply", "side:M1.B"),
              "path: P2>P G1 F1.A>B G2 C4.A>B HB>M1.B");
}

// Charge oil let in at the pump's lines cannot reach the motor's when the valve shuts these off.
TEST(ChargeSupply, SectionsCutOffFromTheFeed) {
    const Circuit circuit =
        circuit_from(edited(reversing_drive(), {{"P1.P V3.P", "P1.P V3.P C3.B"},
                                                {"P1.S V3.T", "P1.S V3.T C4.B"},
                                                {"R2.P R3.T C3.B", "R2.P R3.T"},
                                                {"R3.P R2.T C4.B", "R3.P R2.T"}}));
    EXPECT_EQ(verdicts_of(circuit, "charge-supply"),
              supply("P1.S", "pass", " drive-forward drive-reverse\n") +
                  supply("P1.P", "pass", " overrun-forward overrun-reverse\n") +
                  supply("M1.A", "fail error", " neutral hold lost-signal\n") +
                  supply("M1.B", "fail error", " neutral hold lost-signal\n"));
}

// The reversing valve shuts the way to C4 in position f. Driving forward the line at C4 is low;
// overrunning it is high, and the other one is fed by C3.
TEST(ChargeSupply, FaultInDriveForwardOnly) {
    const Circuit circuit = circuit_from(
        edited(reversing_drive(),
               {{R"(<port id="B"/>)", R"(<port id="B"/><port id="X"/><port id="Y"/>)"},
                {R"(<path from="P" to="T"/>)", R"(<path from="P" to="T"/><path from="X" to="Y"/>)"},
                {R"(<path from="A" to="T"/>)", R"(<path from="A" to="T"/><path from="X" to="Y"/>)"},
                {"F1.B C3.A C4.A", "F1.B C3.A V3.X"},
                added(R"(<line id="G4" joins="V3.Y C4.A"/>)")}));
    EXPECT_EQ(findings_of(circuit), supply("P1.S", "fail error", " drive-forward\n") +
                                        "make-up-check side:P1.S fail error drive-forward\n"
                                        "make-up-path C4 fail error drive-forward "
                                        "overrun-forward\n");
    const std::string ends = witness_of(circuit, "charge-supply", "side:P1.S");
    EXPECT_EQ(ends.find("frontier: "), 0U) << ends;
    EXPECT_NE(ends.find(" V3.X>Y"), std::string::npos) << ends;
}

// The line between motors in series is asked for by another rule than this one.
TEST(ChargeSupply, IntermediateSideIsNoSubject) {
    const Circuit circuit = with({{"P1.B M1.B R3.P", "P1.B M2.B R3.P"},
                                  {"M1 D1", "M1 D1 M2"},
                                  added(R"(<motor id="M2"/><line id="HI" joins="M1.B M2.A"/>)")});
    EXPECT_EQ(verdicts_of(circuit, "charge-supply"), both_pass());
}

// A one-way loop with a second motor behind check C7: the piece at that motor is a branch, and is
// asked where its side is. With C7 turned round the oil of the gallery no longer gets there.
TEST(ChargeSupply, BranchBehindACheck) {
    const auto drive = [](const std::string& pump_end, const std::string& motor_end) {
        return circuit_with(R"(<engine id="E1"/><pump id="P1"/><pump id="P2"/>
            <shaft id="W1" joins="E1 P1 P2"/><motor id="M1"/><motor id="M2"/>
            <check-valve id="C1"/><check-valve id="C2"/><check-valve id="C7"/>
            <reservoir id="T1"><port id="S"/></reservoir>
            <line id="S1" joins="T1.S P2.S"/><line id="G1" joins="P2.P C1.A C2.A"/>
            <line id="HA" joins="P1.P M1.A C1.B )" +
                            pump_end + R"("/><line id="HC" joins="M2.A )" + motor_end +
                            R"("/><line id="HB" joins="P1.S M1.B M2.B C2.B"/>)");
    };
    const char* const inlet_low = " neutral drive-forward hold lost-signal\n";
    const char* const outlet_low = " neutral overrun-forward hold lost-signal\n";
    const Circuit sound = drive("C7.A", "C7.B");
    EXPECT_EQ(verdicts_of(sound, "charge-supply"), supply("P1.S", "pass", inlet_low) +
                                                       supply("P1.P", "pass", outlet_low) +
                                                       supply("M2.A", "pass", outlet_low));
    EXPECT_EQ(witness_of(sound, "charge-supply", "side:M2.A"),
              "path: P2>P G1 C1.A>B HA C7.A>B HC>M2.A");
    const Circuit turned = drive("C7.B", "C7.A");
    EXPECT_EQ(verdicts_of(turned, "charge-supply"), supply("P1.S", "pass", inlet_low) +
                                                        supply("P1.P", "pass", outlet_low) +
                                                        supply("M2.A", "fail error", outlet_low));
}

// 2^17 ways to set 17 valves in one state: not gone through, and never cut short in silence.
TEST(ChargeSupply, TooManyPositionsAreInconclusiveAndNameTheValves) {
    std::string valves;
    std::string joins;
    std::string named;
    for (int i = 10; i < 27; ++i) {
        const std::string id = "V" + std::to_string(i);
        valves += R"(<directional-valve id=")" + id +
                  R"("><port id="A"/><port id="B"/><position id="n" rest="yes"/>
                     <position id="a"><path from="A" to="B"/></position></directional-valve>)";
        joins += ' ' + id + ".A";
        named += ' ' + id;
    }
    const Circuit circuit = with({{"F1.B C1.A C2.A", "F1.B C1.A C2.A" + joins}, added(valves)});
    const std::string verdicts = verdicts_of(circuit, "charge-supply");
    EXPECT_EQ(verdicts.find(std::string("charge-supply side:P1.A inconclusive neutral")), 0U)
        << verdicts;
    EXPECT_EQ(witness_of(circuit, "charge-supply", "side:P1.A"), "set:" + named);
}

TEST(ChargeSupply, CircuitWithoutALoopHasNoSubject) {
    EXPECT_EQ(verdicts_of(with({{"R1.T T1.R", "R1.T T1.R P1.B M1.B R3.P R2.T C2.B V1.B"},
                                {R"(<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B"/>)", ""}}),
                          "charge-supply"),
              "charge-supply circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
