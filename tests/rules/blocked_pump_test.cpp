// Pumps whose oil has no way out. What is expected follows by hand from the design's words.
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
using testing::expect_at_frontier;
using testing::reversing_drive;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "blocked-pump"); }

const std::string p2_pass = std::string("blocked-pump P2 pass") + all_running;

/// An open circuit beside the drive: P3 drives M3, whose oil goes back to the reservoir.
Circuit open_circuit(const std::string& pump, const std::string& relief) {
    return with(
        {{"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 P3\""},
         added("<pump id=\"P3\" " + pump +
               R"(/><motor id="M3"/><reservoir id="T3"><port id="S"/><port id="R"/></reservoir>
                     <line id="X0" joins="T3.S P3.S"/>
                     <line id="X1" joins="P3.P M3.A )" +
               relief)});
}
const std::string no_relief = R"("/><line id="X2" joins="M3.B T3.R"/>)";
const std::string relief =
    R"(R9.P"/><relief-valve id="R9" setting="200 bar"/><line id="X2" joins="M3.B R9.T T3.R"/>)";

TEST(BlockedPump, TheChargeReliefLetsItOut) {
    EXPECT_EQ(verdict(with({})), p2_pass);
    EXPECT_EQ(witness_of(with({}), "blocked-pump", "P2"), "path: P2>P G1 R1.P>T G3 T1");
}

// In motion the flushing valve lets the charge oil out of the low side; centred it does not.
TEST(BlockedPump, WithoutTheChargeReliefInNeutral) {
    const Circuit circuit = with({{"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P F1.A\""}});
    EXPECT_EQ(verdict(circuit), "blocked-pump P2 fail error neutral\n");
    expect_at_frontier(witness_of(circuit, "blocked-pump", "P2"), "V1.A>F");
}

TEST(BlockedPump, InAnOpenCircuit) {
    const Circuit circuit = open_circuit("", no_relief);
    EXPECT_EQ(verdict(circuit), p2_pass + "blocked-pump P3 fail error" + all_running);
    expect_at_frontier(witness_of(circuit, "blocked-pump", "P3"), "M3.A>B");
    EXPECT_EQ(verdict(open_circuit("", relief)), p2_pass + "blocked-pump P3 pass" + all_running);
}

TEST(BlockedPump, OneThatTakesItsDisplacementBack) {
    EXPECT_EQ(verdict(open_circuit(R"(variable="yes" control="pressure-compensated")", no_relief)),
              p2_pass + "blocked-pump P3 pass" + all_running);
    EXPECT_EQ(verdict(open_circuit(R"(variable="yes" control="hydraulic")", no_relief)),
              p2_pass + "blocked-pump P3 fail error" + all_running);
}

TEST(BlockedPump, RoundToItsOwnInlet) {
    const Circuit circuit = circuit_from(reversing_drive());
    EXPECT_EQ(verdict(circuit), "blocked-pump P1 pass neutral hold lost-signal\n" + p2_pass);
    EXPECT_EQ(witness_of(circuit, "blocked-pump", "P1"), "path: P1>P HP V3.P>T HT>P1.S");
}

// A relief that leads back to where the pump delivers lets nothing out.
TEST(BlockedPump, AReliefOntoItsOwnLine) {
    EXPECT_EQ(verdict(open_circuit("", R"(R9.P K9.A"/><relief-valve id="R9" setting="200 bar"/>
                  <cooler id="K9"/><line id="X3" joins="K9.B R9.T"/>
                  <line id="X2" joins="M3.B T3.R"/>)")),
              p2_pass + "blocked-pump P3 fail error" + all_running);
}

TEST(BlockedPump, BehindAValveThatSomebodyCanShut) {
    const auto valve = [](const std::string& locked) {
        return open_circuit("", R"(H9.A"/><shut-off-valve id="H9" )" + locked + R"(/>
            <relief-valve id="R9" setting="200 bar"/><line id="X3" joins="H9.B R9.P"/>
            <line id="X2" joins="M3.B R9.T T3.R"/>)");
    };
    EXPECT_EQ(verdict(valve("")), p2_pass + "blocked-pump P3 fail error" + all_running);
    EXPECT_EQ(verdict(valve(R"(locked="yes")")), p2_pass + "blocked-pump P3 pass" + all_running);
}

TEST(BlockedPump, NothingToAskWhereNoneTurns) {
    EXPECT_EQ(verdict(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}})),
              "blocked-pump circuit not-applicable\n");
}

/// P3 and its motor in a loop; P1 in one where V1 leads its oil round, else in none: driven forward
/// its oil then gets into the loop of P3 and no further.
Circuit in_a_loop_at_times(const std::string& pumps, const std::string& positions) {
    return circuit_from(R"(<circuit format="1" title="Sweeper">
        <engine id="E1"/> <reservoir id="T1"><port id="S"/></reservoir>)" +
                        pumps + R"(<motor id="M1"/> <motor id="M3"/>
        <shaft id="W1" joins="E1 P3 P1"/>
        <check-valve id="C3"/>
        <directional-valve id="V1"><port id="P"/><port id="A"/><port id="T"/>)" +
                        positions + R"(</directional-valve>
        <line id="H1" joins="P3.P M3.A"/>
        <line id="H2" joins="P3.S M3.B C3.B"/>
        <line id="A1" joins="P1.A M1.A C3.A"/>
        <line id="B1" joins="P1.B V1.P"/>
        <line id="B2" joins="V1.A M1.B"/>
        <line id="S1" joins="V1.T T1.S"/>
        </circuit>)");
}

TEST(BlockedPump, WhateverTheOrderOfTheFile) {
    const std::string drawn =
        R"(<position id="drawn" rest="yes"><path from="P" to="T"/></position>)";
    const std::string round = R"(<position id="round"><path from="P" to="A"/></position>)";
    const std::string one = R"(<pump id="P1" flow-directions="2"/>)";
    const std::string other = R"(<pump id="P3" closed-loop="yes"/>)";
    for (const std::string& pumps : {one + other, other + one})
        for (const std::string& positions : {drawn + round, round + drawn})
            EXPECT_EQ(verdict(in_a_loop_at_times(pumps, positions)),
                      "blocked-pump P1 fail error drive-forward overrun-forward\n");
}

}  // namespace
}  // namespace loopwright
