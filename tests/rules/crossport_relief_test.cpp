// A relief that cannot be isolated limits every main side and section, into another side or into
// the charge line with make-up onward. What is expected follows by hand from the design's
// definitions.
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
using testing::Edit;
using testing::edited;
using testing::expect_at_frontier;
using testing::findings_of;
using testing::reversing_drive;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

/// The outlet of R2 taken off side B and led to `outlet_joins`.
Circuit discharging(const std::string& outlet_joins, const std::string& parts = "",
                    std::vector<Edit> edits = {}) {
    edits.insert(edits.begin(), {"R3.P R2.T C2.B", "R3.P C2.B"});
    edits.push_back(added(R"(<line id="X" joins="R2.T )" + outlet_joins + "\"/>" + parts));
    return with(edits);
}

std::string relief(const std::string& side, const std::string& outcome,
                   const std::string& states = all_running) {
    return "crossport-relief side:" + side + ' ' + outcome + states;
}

TEST(CrossportRelief, FromSideToSide) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "crossport-relief"),
              relief("P1.A", "pass") + relief("P1.B", "pass"));
    EXPECT_EQ(witness_of(circuit, "crossport-relief", "side:P1.A"), "path: P1.A>HA R2.P>T HB>P1.B");
    EXPECT_EQ(witness_of(circuit, "crossport-relief", "side:P1.B"), "path: P1.B>HB R3.P>T HA>P1.A");
}

TEST(CrossportRelief, BothTheSameWayLeaveOneSideOpen) {
    const Circuit circuit = with({{"M1.A R2.P R3.T C1.B", "M1.A R2.P R3.P C1.B"},
                                  {"M1.B R3.P R2.T C2.B", "M1.B R3.T R2.T C2.B"}});
    EXPECT_EQ(findings_of(circuit), relief("P1.B", "fail error"));
    expect_at_frontier(witness_of(circuit, "crossport-relief", "side:P1.B"), "R2.T>P");
}

TEST(CrossportRelief, BackIntoItsOwnSideFails) {
    EXPECT_EQ(findings_of(with(
                  {{"R3.P R2.T C2.B", "R3.P C2.B"}, {"M1.A R2.P R3.T", "M1.A R2.P R2.T R3.T"}})),
              relief("P1.A", "fail error") + "shorted-ports R2 fail error\n");
}

TEST(CrossportRelief, SettingIsNotAskedHere) {
    EXPECT_EQ(findings_of(with({{R"(<relief-valve id="R2" setting="380 bar"/>)",
                                 R"(<relief-valve id="R2"/>)"}})),
              "");
}

// Into the charge line counts if a make-up check leads on into another side.
TEST(CrossportRelief, IntoTheChargeLineNeedsMakeUpOnward) {
    const std::vector<Edit> into_charge{{"R3.P R2.T C2.B", "R3.P C2.B"},
                                        {"F1.B C1.A C2.A", "F1.B R2.T C1.A C2.A"}};
    const Circuit sound = with(into_charge);
    EXPECT_EQ(findings_of(sound), "");
    const std::string way = witness_of(sound, "crossport-relief", "side:P1.A");
    EXPECT_EQ(way.find("path: P1.A>HA R2.P>T G2"), 0U) << way;
    const Circuit no_way_on = with({{"R3.P R2.T C2.B", "R3.P"},
                                    {"F1.B C1.A C2.A", "F1.B R2.T C1.A"},
                                    {R"(<check-valve id="C2"/>)", ""}});
    EXPECT_EQ(verdicts_of(no_way_on, "crossport-relief"),
              relief("P1.A", "fail error") + relief("P1.B", "pass"));
}

TEST(CrossportRelief, BeforeTheChargeFilterCountsToo) {
    const Circuit circuit =
        with({{"R3.P R2.T C2.B", "R3.P C2.B"}, {"P2.P R1.P F1.A", "P2.P R1.P F1.A R2.T"}});
    EXPECT_EQ(findings_of(circuit), "");
}

TEST(CrossportRelief, IntoADrainIsIntoAReservoir) {
    const Circuit circuit = with(
        {{"R3.P R2.T C2.B", "R3.P C2.B"}, {"R4.T M1.L P1.L K1.A", "R4.T R2.T M1.L P1.L K1.A"}});
    EXPECT_EQ(findings_of(circuit), relief("P1.A", "fail error"));
    const std::string way = witness_of(circuit, "crossport-relief", "side:P1.A");
    EXPECT_EQ(way.find("path: P1.A>HA R2.P>T"), 0U) << way;
}

TEST(CrossportRelief, StraightToAReservoirShowsIt) {
    const Circuit circuit =
        with({{"R3.P R2.T C2.B", "R3.P C2.B"}, {"R1.T T1.R", "R1.T R2.T T1.R"}});
    EXPECT_EQ(findings_of(circuit), relief("P1.A", "fail error"));
    EXPECT_EQ(witness_of(circuit, "crossport-relief", "side:P1.A"), "path: P1.A>HA R2.P>T G3 T1");
}

// A check without a spring vents the outlet although a locked valve leads on to the other side.
TEST(CrossportRelief, OutletVentedOnTheWay) {
    const auto drive = [](const std::string& spring) {
        return discharging("B1.A C9.A",
                           R"(<shut-off-valve id="B1" locked="yes"/><check-valve id="C9")" +
                               spring +
                               R"(/><check-valve id="C8"/><line id="Y" joins="B1.B C8.A"/>)",
                           {{"C2.B V1.B", "C8.B C2.B V1.B"}, {"R1.T T1.R", "R1.T T1.R C9.B"}});
    };
    const Circuit held = drive(R"( opening-pressure="30 bar")");
    EXPECT_EQ(findings_of(held), "");
    EXPECT_EQ(witness_of(held, "crossport-relief", "side:P1.A"),
              "path: P1.A>HA R2.P>T X B1.A>B Y C8.A>B HB>P1.B");
    EXPECT_EQ(findings_of(drive("")), relief("P1.A", "fail error"));
}

// The outlet itself holds, over a spring; what lies behind is open to the reservoir.
TEST(CrossportRelief, VentedBehindASpring) {
    const auto drive = [](const std::string& spring) {
        return discharging("C8.A",
                           R"(<check-valve id="C8" opening-pressure="1 bar"/>
                              <shut-off-valve id="B1" locked="yes"/><check-valve id="C7"/>
                              <line id="Z" joins="B1.B C7.A"/>
                              <line id="Y" joins="C8.B B1.A C9.A"/><check-valve id="C9")" +
                               spring + "/>",
                           {{"C2.B V1.B", "C7.B C2.B V1.B"}, {"R1.T T1.R", "R1.T T1.R C9.B"}});
    };
    const Circuit held = drive(R"( opening-pressure="30 bar")");
    EXPECT_EQ(findings_of(held), "");
    EXPECT_EQ(witness_of(held, "crossport-relief", "side:P1.A"),
              "path: P1.A>HA R2.P>T X C8.A>B Y B1.A>B Z C7.A>B HB>P1.B");
    EXPECT_EQ(findings_of(drive("")), relief("P1.A", "fail error"));
}

// A side that is open to a reservoir takes what the relief lets off, and loses it.
TEST(CrossportRelief, IntoASideThatIsVentedFails) {
    const Circuit circuit = with({{"C2.B V1.B", "C2.B V1.B C9.A"},
                                  {"R1.T T1.R", "R1.T T1.R C9.B"},
                                  added(R"(<check-valve id="C9"/>)")});
    EXPECT_EQ(verdicts_of(circuit, "crossport-relief"),
              relief("P1.A", "fail error") + relief("P1.B", "pass"));
}

TEST(CrossportRelief, ShutOffValveBehindItMustBeLocked) {
    const auto drive = [](const std::string& valve) {
        return discharging("B1.A", R"(<shut-off-valve id="B1" )" + valve + "/>",
                           {{"C2.B V1.B", "B1.B C2.B V1.B"}});
    };
    const Circuit locked = drive(R"(locked="yes")");
    EXPECT_EQ(findings_of(locked), "");
    EXPECT_EQ(witness_of(locked, "crossport-relief", "side:P1.A"),
              "path: P1.A>HA R2.P>T X B1.A>B HB>P1.B");
    // What stands between relief and valve is shut in, too.
    const std::string shut = relief("P1.A", "fail error") + "trapped-volume X fail warning\n";
    EXPECT_EQ(findings_of(drive("")), shut);
    EXPECT_EQ(findings_of(drive(R"(locked="yes" position="closed")")), shut);
}

TEST(CrossportRelief, OrificeBeforeItFails) {
    const Circuit circuit = with({{"M1.A R2.P R3.T", "M1.A O1.A R3.T"},
                                  added(R"(<orifice id="O1"/><line id="X" joins="O1.B R2.P"/>)")});
    EXPECT_EQ(findings_of(circuit), relief("P1.A", "fail error"));
    expect_at_frontier(witness_of(circuit, "crossport-relief", "side:P1.A"), "O1.A>B");
}

TEST(CrossportRelief, CheckBeforeItByItsSense) {
    const auto check = [](const std::string& on_side, const std::string& at_relief) {
        return with(
            {{"M1.A R2.P R3.T", "M1.A " + on_side + " R3.T"},
             added(R"(<check-valve id="C9"/><line id="X" joins="R2.P )" + at_relief + "\"/>")});
    };
    const Circuit sound = check("C9.A", "C9.B");
    EXPECT_EQ(findings_of(sound), "");
    EXPECT_EQ(witness_of(sound, "crossport-relief", "side:P1.A"),
              "path: P1.A>HA C9.A>B X R2.P>T HB>P1.B");
    const Circuit turned = check("C9.B", "C9.A");
    EXPECT_EQ(findings_of(turned), relief("P1.A", "fail error"));
    expect_at_frontier(witness_of(turned, "crossport-relief", "side:P1.A"), "C9.B>A");
}

// Two motors in series: the line between them is no main side, so a relief into it is none to
// another side, and it is no subject itself.
TEST(CrossportRelief, IntoAnIntermediateSideFails) {
    const auto series = [](const std::string& on_hb, const std::string& on_hi) {
        return with({{"P1.B M1.B R3.P R2.T", "P1.B M2.B R3.P" + on_hb},
                     {"M1 D1", "M1 D1 M2"},
                     added(R"(<motor id="M2"/><line id="HI" joins="M1.B M2.A)" + on_hi + "\"/>")});
    };
    EXPECT_EQ(verdicts_of(series(" R2.T", ""), "crossport-relief"),
              relief("P1.A", "pass") + relief("P1.B", "pass"));
    EXPECT_EQ(verdicts_of(series("", " R2.T"), "crossport-relief"),
              relief("P1.A", "fail error") + relief("P1.B", "pass"));
}

TEST(CrossportRelief, IntoAnotherLoopFails) {
    const auto loops = [](const std::string& on_jb, const std::string& on_hb) {
        return with(
            {{"E1 P1 P2", "E1 P1 P2 P3"},
             {"M1 D1", "M1 D1 M2"},
             {"R4.T M1.L P1.L", "R4.T M1.L P1.L M2.L P3.L"},
             {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A C6.A"},
             {"R3.P R2.T C2.B", "R3.P C2.B" + on_hb},
             added(R"(<pump id="P3" displacement="45 cm3/rev" flow-directions="2" drain="external"/>
        <motor id="M2" drain="external"/>
        <check-valve id="C5"/><check-valve id="C6"/>
        <relief-valve id="R5" setting="300 bar"/><relief-valve id="R6" setting="300 bar"/>
        <line id="JA" joins="P3.A M2.A R5.P R6.T C5.B"/>
        <line id="JB" joins="P3.B M2.B R6.P R5.T C6.B)" +
                   on_jb + "\"/>")});
    };
    const Circuit sound = loops("", " R2.T");
    EXPECT_EQ(findings_of(sound), "");
    EXPECT_EQ(witness_of(sound, "crossport-relief", "side:P3.B"), "path: P3.B>JB R6.P>T JA>P3.A");
    EXPECT_EQ(findings_of(loops(" R2.T", "")), relief("P1.A", "fail error"));
}

TEST(CrossportRelief, SectionsAreAskedWhileCutOff) {
    const Circuit sound = circuit_from(reversing_drive());
    const char* const moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";
    const char* const shut = " neutral hold lost-signal\n";
    EXPECT_EQ(verdicts_of(sound, "crossport-relief"),
              relief("P1.S", "pass", moving) + relief("P1.P", "pass", moving) +
                  relief("M1.A", "pass", shut) + relief("M1.B", "pass", shut));
    EXPECT_EQ(witness_of(sound, "crossport-relief", "side:M1.A"), "path: M1.A>HA R2.P>T HB>M1.B");
    // On the pump's lines the reliefs do not protect a motor that the valve shuts off.
    const Circuit at_pump =
        circuit_from(edited(reversing_drive(), {{"P1.P V3.P", "P1.P V3.P R2.P R3.T"},
                                                {"P1.S V3.T", "P1.S V3.T R3.P R2.T"},
                                                {"V3.A M1.A R2.P R3.T", "V3.A M1.A"},
                                                {"V3.B M1.B R3.P R2.T", "V3.B M1.B"}}));
    EXPECT_EQ(findings_of(at_pump),
              relief("M1.A", "fail error", shut) + relief("M1.B", "fail error", shut));
    expect_at_frontier(witness_of(at_pump, "crossport-relief", "side:M1.B"), "M1.B>A");
}

// Position f shuts the valve's way X-Y to relief R2; g, in which the load overruns, leaves it open.
TEST(CrossportRelief, FaultInDriveForwardOnly) {
    const Circuit circuit = circuit_from(edited(
        reversing_drive(),
        {{R"(<port id="B"/>)", R"(<port id="B"/><port id="X"/><port id="Y"/>)"},
         {R"(<path from="P" to="T"/>)", R"(<path from="P" to="T"/><path from="X" to="Y"/>)"},
         {R"(<path from="A" to="T"/>)", R"(<path from="A" to="T"/><path from="X" to="Y"/>)"},
         {R"(<position id="f" in="drive-forward overrun-forward">)",
          R"(<position id="g" in="overrun-forward"><path from="P" to="A"/><path from="B" to="T"/>
             <path from="X" to="Y"/></position><position id="f" in="drive-forward">)"},
         {"V3.A M1.A R2.P R3.T", "V3.A M1.A V3.X R3.T"},
         added(R"(<line id="X" joins="V3.Y R2.P"/>)")}));
    EXPECT_EQ(findings_of(circuit), relief("P1.P", "fail error", " drive-forward\n"));
    EXPECT_EQ(witness_of(circuit, "crossport-relief", "side:P1.P").find("frontier: "), 0U);
}

// Shut, the valve leaves the pump on a piece of its own, past which no relief is to be reached.
TEST(CrossportRelief, HandValveInTheSideBetweenPumpAndReliefs) {
    const auto cut = [](const std::string& valve) {
        return with({{R"(joins="P1.A M1.A R2.P)", R"(joins="B1.B M1.A R2.P)"},
                     added(valve + R"(<line id="PA" joins="P1.A B1.A"/>)")});
    };
    const Circuit circuit = cut(R"(<shut-off-valve id="B1"/>)");
    EXPECT_EQ(findings_of(circuit), relief("P1.A", "fail error"));
    expect_at_frontier(witness_of(circuit, "crossport-relief", "side:P1.A"), "B1.A>B");
    EXPECT_EQ(findings_of(cut(R"(<shut-off-valve id="B1" locked="yes"/>)")), "");
}

/// The motor's port A behind a check that the pressure of side A shuts; R2 at the pump, and
/// perhaps R5 at the motor.
Circuit shut_by_its_pressure(bool relief_at_motor) {
    const std::string inlet = relief_at_motor ? " R5.P" : "";
    const std::string outlet = relief_at_motor ? " R5.T" : "";
    return with(
        {{"joins=\"P1.A M1.A R2.P", "joins=\"P1.A V2.A V2.X R2.P"},
         {"joins=\"P1.B M1.B", "joins=\"P1.B M1.B" + outlet},
         added(R"(<check-valve id="V2" pilot="shuts"/><line id="HC" joins="V2.B M1.A)" + inlet +
               "\"/>" + (relief_at_motor ? R"(<relief-valve id="R5" setting="380 bar"/>)" : ""))});
}

// The check makes it a loop with one direction. What its own pressure cuts off needs a relief of
// its own.
TEST(CrossportRelief, CheckInTheSideThatItsPressureShuts) {
    const std::string forward = " neutral drive-forward overrun-forward hold lost-signal\n";
    const Circuit circuit = shut_by_its_pressure(false);
    EXPECT_EQ(verdicts_of(circuit, "crossport-relief"),
              relief("P1.A", "fail error", " drive-forward hold lost-signal\n") +
                  relief("P1.B", "pass", forward));
    expect_at_frontier(witness_of(circuit, "crossport-relief", "side:P1.A"), "M1.A>B");
    EXPECT_EQ(verdicts_of(shut_by_its_pressure(true), "crossport-relief"),
              relief("P1.A", "pass", forward) + relief("P1.B", "pass", forward));
}

}  // namespace
}  // namespace loopwright
