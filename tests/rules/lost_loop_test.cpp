// A machine meant for a closed loop is in a sound one in some running state. What is expected
// follows by hand from the design's definitions.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/reversing_drive.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::circuit_from;
using testing::circuit_with;
using testing::edited;
using testing::findings_of;
using testing::reversing_drive;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string failed(const std::string& machine) {
    return "lost-loop " + machine + " fail error" + all_running;
}

const char* const blocked_in_motion =
    "blocked-pump P1 fail error drive-forward drive-reverse overrun-forward overrun-reverse\n";

TEST(LostLoop, OnceRoundIsTheWitnessOfALoop) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "lost-loop"), std::string("lost-loop P1 pass") + all_running);
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"), "path: P1.B>A HA M1.A>B HB>P1.B");
}

TEST(LostLoop, MachineDeclaredClosedLoopIsASubjectToo) {
    const Circuit circuit =
        with({{R"("80 cm3/rev" drain)", R"("80 cm3/rev" closed-loop="yes" drain)"}});
    EXPECT_EQ(verdicts_of(circuit, "lost-loop"),
              std::string("lost-loop P1 pass") + all_running + "lost-loop M1 pass" + all_running);
}

TEST(LostLoop, DeclaredMachinesOfAnOpenCircuitFail) {
    const Circuit circuit = circuit_with(R"(
        <engine id="E1"/><pump id="P1"/><motor id="M1" closed-loop="yes"/>
        <shaft id="W1" joins="E1 P1"/>
        <reservoir id="T1"><port id="S"/><port id="R"/></reservoir><cooler id="K1"/>
        <line id="S1" joins="T1.S P1.S"/><line id="H1" joins="P1.P M1.A"/>
        <line id="H2" joins="M1.B K1.A"/><line id="H3" joins="K1.B T1.R"/>)");
    EXPECT_EQ(findings_of(circuit), failed("M1") + "blocked-pump P1 fail error" + all_running);
    EXPECT_EQ(witness_of(circuit, "lost-loop", "M1"), "path: M1>B H2 K1.A>B H3 T1");
}

TEST(LostLoop, LineOfASideThatRunsStraightIntoAReservoir) {
    const Circuit circuit = circuit_with(R"(
        <engine id="E1"/><pump id="P1" flow-directions="2"/><motor id="M1"/>
        <shaft id="W1" joins="E1 P1"/><reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
        <line id="HA" joins="P1.A M1.A"/><line id="S1" joins="T1.S P1.B"/>
        <line id="H2" joins="M1.B T1.R"/>)");
    EXPECT_EQ(findings_of(circuit),
              failed("P1") + "blocked-pump P1 fail error drive-forward overrun-forward\n");
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"), "path: P1>B S1 T1");
}

// Oil must be able to get both ways between side and reservoir: out alone leaves the loop, whose
// side then cannot be charged.
TEST(LostLoop, SideOpenToAReservoirBothWays) {
    const auto to_tank = [](const std::string& part, const std::string& in,
                            const std::string& out) {
        return with({{"M1.B R3.P R2.T C2.B V1.B", "M1.B R3.P R2.T C2.B V1.B X1." + in},
                     {"R1.T T1.R", "R1.T T1.R X1." + out},
                     added(part)});
    };
    const Circuit lost = to_tank(R"(<cooler id="X1"/>)", "A", "B");
    EXPECT_EQ(findings_of(lost), failed("P1"));
    EXPECT_EQ(witness_of(lost, "lost-loop", "P1"), "path: P1>B HB X1.A>B G3 T1");
    EXPECT_EQ(verdicts_of(to_tank(R"(<check-valve id="X1"/>)", "A", "B"), "lost-loop"),
              std::string("lost-loop P1 pass") + all_running);
    EXPECT_EQ(findings_of(to_tank(R"(<relief-valve id="X1" setting="400 bar"/>)", "P", "T")), "");
}

TEST(LostLoop, BothPortsOnOneLine) {
    const Circuit circuit =
        with({{R"("P1.A M1.A R2.P R3.T C1.B V1.A")", R"("P1.A P1.B M1.A R2.P R3.T C1.B V1.A")"},
              {R"("P1.B M1.B R3.P)", R"("M1.B R3.P)"}});
    EXPECT_EQ(findings_of(circuit), failed("P1") + "shorted-ports P1 fail error\n");
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"), "path: P1.A>HA>P1.B");
}

TEST(LostLoop, ShutOffValvesInPlaceOfTheMakeUpChecksShortTheLoop) {
    const Circuit circuit = with({{R"(<check-valve id="C1"/>)", R"(<shut-off-valve id="C1"/>)"},
                                  {R"(<check-valve id="C2"/>)", R"(<shut-off-valve id="C2"/>)"}});
    EXPECT_EQ(findings_of(circuit), failed("P1"));
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"), "path: P1.A>HA C1.B>A G2 C2.A>B HB>P1.B");
}

TEST(LostLoop, ShutOffValveInAWorkingLineCountsAsDrawn) {
    const auto valve = [](const std::string& position) {
        return circuit_with(R"(<engine id="E1"/><pump id="P1" flow-directions="2" drain="external"/>
            <motor id="M1"/><reservoir id="T1"><port id="D"/></reservoir>
            <line id="L1" joins="P1.L T1.D"/>
            <shaft id="W1" joins="E1 P1"/><line id="HA" joins="P1.A B1.A"/>
            <line id="HC" joins="B1.B M1.A"/><line id="HB" joins="P1.B M1.B"/>
            <shut-off-valve id="B1" position=")" +
                            position + "\"/>");
    };
    const Circuit open = valve("open");
    EXPECT_EQ(verdicts_of(open, "lost-loop"), std::string("lost-loop P1 pass") + all_running);
    EXPECT_EQ(witness_of(open, "lost-loop", "P1"), "path: P1.B>A HA B1.A>B HC M1.A>B HB>P1.B");
    const Circuit closed = valve("closed");
    EXPECT_EQ(findings_of(closed), failed("P1") + blocked_in_motion);
    const std::string ends = witness_of(closed, "lost-loop", "P1");
    EXPECT_EQ(ends.find("frontier: "), 0U) << ends;
    EXPECT_NE(ends.find(" B1.A>B"), std::string::npos) << ends;
    EXPECT_NE(ends.find(" M1.B>A"), std::string::npos) << ends;
}

TEST(LostLoop, PumpWithoutAnActuator) {
    const Circuit circuit = circuit_with(R"(<engine id="E1"/><pump id="P1" flow-directions="2"/>
        <shaft id="W1" joins="E1 P1"/><check-valve id="C1"/><line id="HA" joins="P1.A C1.B"/>)");
    EXPECT_EQ(findings_of(circuit), failed("P1") + "trapped-volume HA fail warning\n" +
                                        blocked_in_motion +
                                        "unconnected-port P1.B fail error\n"
                                        "unconnected-port C1.A fail error\n");
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"), "frontier: C1.B>A");
}

TEST(LostLoop, ValveThatClosesTheLoopWhenDrivingIsEnough) {
    const Circuit circuit = circuit_from(reversing_drive());
    EXPECT_EQ(verdicts_of(circuit, "lost-loop"),
              "lost-loop P1 pass drive-forward drive-reverse overrun-forward overrun-reverse\n");
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"),
              "path: P1.S>P HP V3.P>A HA M1.A>B HB V3.B>T HT>P1.S");
}

TEST(LostLoop, ValveThatNeverClosesTheLoop) {
    const Circuit circuit = circuit_from(edited(
        reversing_drive(),
        {{R"(<path from="P" to="A"/><path from="B" to="T"/>)", R"(<path from="P" to="A"/>)"},
         {R"(<path from="P" to="B"/><path from="A" to="T"/>)", R"(<path from="A" to="T"/>)"}}));
    // In position r nothing leads out of the pump's line.
    EXPECT_EQ(
        findings_of(circuit),
        failed("P1") + "blocked-pump P1 fail error neutral[V3=r] drive-reverse overrun-reverse\n");
}

TEST(LostLoop, OfTwoLoopsTheShortedOneFails) {
    const Circuit circuit = with({{"E1 P1 P2", "E1 P1 P2 P3"},
                                  {"M1 D1", "M1 D1 M2"},
                                  {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A C6.A"},
                                  added(R"(<pump id="P3" flow-directions="2"/><motor id="M2"/>
        <check-valve id="C5"/><check-valve id="C6"/><shut-off-valve id="B9"/>
        <line id="JA" joins="P3.A M2.A C5.B B9.A"/><line id="JB" joins="P3.B M2.B C6.B B9.B"/>)")});
    EXPECT_EQ(verdicts_of(circuit, "lost-loop"),
              std::string("lost-loop P1 pass") + all_running + failed("P3"));
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P3"), "path: P3.A>JA B9.A>B JB>P3.B");
}

/// The make-up checks opened by pilots; what else is joined to either side.
Circuit piloted_checks(const std::string& on_ha, const std::string& on_hb,
                       const std::string& parts = "") {
    return with({{R"(<check-valve id="C1"/>)", R"(<check-valve id="C1" pilot="opens"/>)"},
                 {R"(<check-valve id="C2"/>)", R"(<check-valve id="C2" pilot="opens"/>)"},
                 {"joins=\"P1.A M1.A", "joins=\"P1.A M1.A " + on_ha},
                 {"joins=\"P1.B M1.B", "joins=\"P1.B M1.B " + on_hb},
                 added(parts)});
}

// Each is opened by the other side's pressure, and so never while oil could go round by it.
TEST(LostLoop, ChecksFromTheChargeLineThatTheOppositeSideOpens) {
    EXPECT_EQ(findings_of(piloted_checks("C2.X", "C1.X")), "");
    // An orifice in a pilot line changes nothing.
    EXPECT_EQ(findings_of(piloted_checks("O1.A", "C1.X",
                                         R"(<orifice id="O1"/><line id="X1" joins="O1.B C2.X"/>)")),
              "");
}

// Opened by their own sides they let the one side into the other.
TEST(LostLoop, ChecksFromTheChargeLineThatTheirOwnSidesOpen) {
    const Circuit circuit = piloted_checks("C1.X", "C2.X");
    EXPECT_EQ(findings_of(circuit), failed("P1"));
    EXPECT_EQ(witness_of(circuit, "lost-loop", "P1"), "path: P1.A>HA C1.B>A G2 C2.A>B HB>P1.B");
    const std::string shuttle = R"(<shuttle-valve id="V3"/><line id="X1" joins="V3.C C1.X C2.X"/>)";
    EXPECT_EQ(findings_of(piloted_checks("V3.A", "V3.B", shuttle)), failed("P1"));
}

// A loop of one-way machines that nobody declared closed asks for nothing.
TEST(LostLoop, LoopWithoutASubjectIsNotApplicable) {
    const Circuit circuit =
        circuit_from(edited(reversing_drive(), {{R"( closed-loop="yes")", ""}}));
    EXPECT_EQ(verdicts_of(circuit, "lost-loop"), "lost-loop circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
