// Valves that pressure shifts, that hand a pressure on, and that part the flow: circuits that
// differ from the sound drive in one thing. What is expected follows by hand from the rule table.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::not_passed;
using testing::structure_text;
using testing::verdicts_of;
using testing::with;

/// The motor's port A behind a part with ports A (towards the pump) and B, and X on side B.
std::vector<Edit> in_side_a(const std::string& part) {
    return {
        {"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"", "joins=\"P1.A V2.A R2.P R3.T C1.B V1.A\""},
        {"joins=\"P1.B M1.B R3.P R2.T C2.B V1.B\"", "joins=\"P1.B M1.B R3.P R2.T C2.B V1.B V2.X\""},
        added(part + R"(<line id="HC" joins="V2.B M1.A"/>)")};
}

TEST(ShiftedValves, LoopThroughACounterbalanceValve) {
    const Circuit circuit = with(in_side_a(R"(<counterbalance-valve id="V2" setting="330 bar"/>)"));
    EXPECT_EQ(not_passed(circuit), "");
    EXPECT_EQ(structure_text(circuit),
              "loop:P1 P1 : M1\n"
              "  side:P1.A main\n"
              "  side:P1.B main\n"
              "  side:M1.A branch\n"
              "open:P2 P2 :\n");
}

// Turned round it lets no charge oil to the motor while nothing opens it.
TEST(ShiftedValves, CounterbalanceValveTurnedRound) {
    std::vector<Edit> edits = in_side_a(R"(<counterbalance-valve id="V2" setting="330 bar"/>)");
    edits[0].second = "joins=\"P1.A V2.B R2.P R3.T C1.B V1.A\"";
    edits[2] = added(
        R"(<counterbalance-valve id="V2" setting="330 bar"/><line id="HC" joins="V2.A M1.A"/>)");
    EXPECT_EQ(
        verdicts_of(with(edits), "charge-supply").substr(0, 400),
        "charge-supply side:P1.A pass neutral drive-reverse overrun-forward hold lost-signal\n"
        "charge-supply side:P1.B pass neutral drive-forward overrun-reverse hold lost-signal\n"
        "charge-supply side:M1.A fail error neutral\n");
}

// A pilot-to-open check holds the motor: free to it, back while side B is high.
TEST(ShiftedValves, PilotToOpenCheckInASide) {
    EXPECT_EQ(not_passed(with(in_side_a(R"(<check-valve id="V2" pilot="opens"/>)"))), "");
}

TEST(ShiftedValves, ReducingAndPriorityValvesHandTheChargeOn) {
    const Edit behind{"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P V2.P\""};
    const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"};
    EXPECT_EQ(not_passed(with({behind, room, added(R"(<reducing-valve id="V2" setting="20 bar"/>
                            <line id="G4" joins="V2.A F1.A"/> <line id="G5" joins="V2.Y T1.E"/>)")})),
              "");
    EXPECT_EQ(not_passed(with({behind, room, added(R"(<priority-valve id="V2" setting="22 bar"/>
                            <line id="G4" joins="V2.CF F1.A"/> <line id="G5" joins="V2.EF T1.E"/>)")})),
              "");
}

// While side A is high its pilot opens the charge line to the reservoir, and B gets nothing.
TEST(ShiftedValves, UnloadingValveOnTheChargeLine) {
    const Circuit circuit = with(
        {{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
          "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A V2.X\""},
         {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P F1.A V2.P\""},
         {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
         added(
             R"(<unloading-valve id="V2" setting="200 bar"/><line id="G4" joins="V2.T T1.E"/>)")});
    EXPECT_EQ(
        verdicts_of(circuit, "charge-supply"),
        "charge-supply side:P1.A pass neutral drive-reverse overrun-forward hold lost-signal\n"
        "charge-supply side:P1.B fail error drive-forward overrun-reverse hold lost-signal\n");
}

/// The unloading valve V2 on the charge line; `pilot` joins its port X to something.
std::vector<Edit> unloading(const std::string& side_a, const std::string& side_b,
                            const std::string& pilot) {
    return {
        {"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
         "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A" + side_a + "\""},
        {"joins=\"P1.B M1.B R3.P R2.T C2.B V1.B\"",
         "joins=\"P1.B M1.B R3.P R2.T C2.B V1.B" + side_b + "\""},
        {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P F1.A V2.P\""},
        {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/><port id="F"/>)"},
        added(R"(<unloading-valve id="V2" setting="200 bar"/><line id="G4" joins="V2.T T1.E"/>)" +
              pilot)};
}
constexpr const char* unloaded_by_a =
    "charge-supply side:P1.A pass neutral drive-reverse overrun-forward hold lost-signal\n"
    "charge-supply side:P1.B fail error drive-forward overrun-reverse hold lost-signal\n";

// Oil that stands still loses no pressure at an orifice; where it flows off, nobody can tell how
// much arrives.
TEST(ShiftedValves, PilotBehindAnOrifice) {
    EXPECT_EQ(verdicts_of(with(unloading(" O1.A", "", R"(<orifice id="O1"/>
                              <line id="X1" joins="O1.B V2.X"/>)")),
                          "charge-supply"),
              unloaded_by_a);
    EXPECT_EQ(verdicts_of(with(unloading(" O1.A", "", R"(<orifice id="O1"/><orifice id="O2"/>
                              <line id="X1" joins="O1.B V2.X O2.A"/>
                              <line id="X2" joins="O2.B T1.F"/>)")),
                          "charge-supply")
                  .find("fail"),
              std::string::npos);
}

// The pilot feels through a shuttle valve which of two pressures is higher.
TEST(ShiftedValves, PilotBehindAShuttleValve) {
    const std::string pilot = R"(<shuttle-valve id="V3"/><line id="X1" joins="V3.C V2.X"/>)";
    EXPECT_EQ(
        verdicts_of(with(unloading(" V3.A", " V3.B", pilot)), "charge-supply"),
        "charge-supply side:P1.A fail error drive-reverse overrun-forward hold lost-signal\n"
        "charge-supply side:P1.B fail error drive-forward overrun-reverse hold lost-signal\n");
    // Nor is there a loss at an orifice before it.
    EXPECT_EQ(
        verdicts_of(with(unloading(" O1.A", " V3.B", pilot + R"(<orifice id="O1"/>
                              <line id="X2" joins="O1.B V3.A"/>)")),
                    "charge-supply"),
        "charge-supply side:P1.A fail error drive-reverse overrun-forward hold lost-signal\n"
        "charge-supply side:P1.B fail error drive-forward overrun-reverse hold lost-signal\n");
    // At an inlet it feels nothing of the other one.
    EXPECT_EQ(
        verdicts_of(with(unloading(" V2.X V3.A", " V3.B",
                                   R"(<shuttle-valve id="V3"/><line id="X1" joins="V3.C"/>)")),
                    "charge-supply"),
        unloaded_by_a);
    // Behind a closed hand valve one inlet is out of reach.
    EXPECT_EQ(
        verdicts_of(with(unloading(" V3.A", " Q1.A",
                                   pilot +
                                       R"(<shut-off-valve id="Q1" position="closed" locked="yes"/>
                              <line id="X2" joins="Q1.B V3.B"/>)")),
                    "charge-supply"),
        unloaded_by_a);
}

// The higher side to a gauge line that a relief limits: nothing is joined that should be apart.
TEST(ShiftedValves, ShuttleValveBetweenTheSides) {
    const Circuit circuit =
        with({{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
               "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A V2.A\""},
              {"joins=\"P1.B M1.B R3.P R2.T C2.B V1.B\"",
               "joins=\"P1.B M1.B R3.P R2.T C2.B V1.B V2.B\""},
              {"joins=\"R1.T T1.R\"", "joins=\"R1.T R9.T T1.R\""},
              added(R"(<shuttle-valve id="V2"/><relief-valve id="R9" setting="400 bar"/>
                  <line id="Q1" joins="V2.C R9.P"/>)")});
    EXPECT_EQ(not_passed(circuit), "");
}

// One motor behind each leg of a divider: each has a branch of its own, fed through the leg.
TEST(ShiftedValves, FlowDividerCarriesTheLoop) {
    for (const char* const design : {"spool", "rotary"}) {
        const Circuit circuit = with(
            {{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"", "joins=\"P1.A V2.P R2.P R3.T C1.B V1.A\""},
             {"joins=\"P1.B M1.B R3.P R2.T C2.B V1.B\"",
              "joins=\"P1.B M1.B M2.B R3.P R2.T C2.B V1.B\""},
             added(std::string(R"(<flow-divider id="V2" design=")") + design +
                   R"("><port id="A"/><port id="B"/></flow-divider><motor id="M2"/>
                      <line id="HC" joins="V2.A M1.A"/><line id="HD" joins="V2.B M2.A"/>)")});
        EXPECT_EQ(structure_text(circuit),
                  "loop:P1 P1 : M1 M2\n"
                  "  side:P1.A main\n"
                  "  side:P1.B main\n"
                  "  side:M1.A branch\n"
                  "  side:M2.A branch\n"
                  "open:P2 P2 :\n")
            << design;
        EXPECT_EQ(verdicts_of(circuit, "charge-supply").find("fail"), std::string::npos);
        EXPECT_EQ(verdicts_of(circuit, "lost-loop").find("fail"), std::string::npos);
    }
}

// Its two ways are asked one at a time, in every state: past the cooler the drain is free, but to
// the cooler somebody can part the coupling.
TEST(ShiftedValves, ThermostatInTheDrain) {
    const Circuit circuit =
        with({{"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T M1.L P1.L V2.A\""},
              {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
              added(R"(<thermostatic-bypass id="V2"/><quick-coupling id="Q1"/>
                  <line id="L3" joins="V2.B Q1.A"/><line id="L4" joins="Q1.B K1.A"/>
                  <line id="L5" joins="V2.C T1.E"/>)")});
    const std::string warm =
        " neutral[V2=warm] drive-forward[V2=warm] drive-reverse[V2=warm] overrun-forward[V2=warm]"
        " overrun-reverse[V2=warm] hold[V2=warm] lost-signal[V2=warm] towing[V2=warm]\n";
    EXPECT_EQ(not_passed(circuit),
              "case-drain-path P1 fail error" + warm + "case-drain-path M1 fail error" + warm);
}

// Its positions are those of its kind; let go, it leads its outlets to the reservoir, and only they
// are open to it.
TEST(ShiftedValves, PilotControlValveOnTheChargeLine) {
    const Circuit circuit =
        with({{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A V2.P\""},
              {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
              added(R"(<pilot-control-valve id="V2" outlets="2"/><line id="G4" joins="V2.T T1.E"/>
                  <line id="X1" joins="V2.A V2.B"/>)")});
    ASSERT_EQ(circuit.positions.size(), 3U);
    EXPECT_EQ(not_passed(circuit), "");
}

}  // namespace
}  // namespace loopwright
