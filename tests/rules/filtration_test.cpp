// All oil that enters a loop passes a filter: dominance from one source over all reservoirs. What
// is expected follows by hand from the design's definitions.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::circuit_with;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string failed(const std::string& loop, const std::string& states = all_running) {
    return "filtration " + loop + " fail error" + states;
}

std::string passed(const std::string& loop) { return "filtration " + loop + " pass" + all_running; }

TEST(Filtration, ChargeFilterPasses) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "filtration"), passed("loop:P1"));
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 F1.A>B G2 C1.A>B HA>P1.A");
}

TEST(Filtration, SuctionFilterPasses) {
    const Circuit circuit =
        with({{R"(<line id="S1" joins="T1.S P2.S"/>)",
               R"(<line id="S1" joins="T1.S F1.A"/><line id="S2" joins="F1.B P2.S"/>)"},
              {"P2.P R1.P F1.A", "P2.P R1.P C1.A C2.A"},
              {R"(<line id="G2" joins="F1.B C1.A C2.A"/>)", ""}});
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"),
              "path: T1 S1 F1.A>B S2 P2.S>P G1 C1.A>B HA>P1.A");
}

TEST(Filtration, WayFromTheReservoirOverAJunctionIsShownInOrder) {
    const Circuit circuit = with({{R"(<line id="S1" joins="T1.S P2.S"/>)",
                                   R"(<line id="S1" joins="T1.S J1.X"/>
                                      <line id="S2" joins="J1.Y P2.S"/>)"},
                                  added(R"(<junction id="J1"><port id="X"/><port id="Y"/>
                                      </junction>)")});
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"),
              "path: T1 S1 J1.X>Y S2 P2.S>P G1 F1.A>B G2 C1.A>B HA>P1.A");
}

TEST(Filtration, FilterWithABypassCounts) {
    EXPECT_EQ(findings_of(with({{R"(fineness="10 um")", R"(fineness="10 um" bypass="2 bar")"}})),
              "");
}

TEST(Filtration, SecondReservoirRoundTheFilterFails) {
    const Circuit circuit =
        with({{"E1 P1 P2", "E1 P1 P2 P3"},
              {"F1.B C1.A C2.A", "F1.B C1.A C2.A P3.P R9.P"},
              {"R1.T T1.R", "R1.T R9.T T1.R"},
              added(
                  R"(<relief-valve id="R9" setting="24 bar"/><line id="S9" joins="T2.S P3.S"/>
                                      <pump id="P3" displacement="18 cm3/rev"/>
                                      <reservoir id="T2"><port id="S"/></reservoir>)")});
    EXPECT_EQ(findings_of(circuit), failed("loop:P1"));
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"), "path: T2 S9 P3.S>P G2 C1.A>B HA>P1.A");
}

TEST(Filtration, AFilterForEachSourcePassesThoughNeitherTakesAll) {
    const Circuit circuit =
        with({{"E1 P1 P2", "E1 P1 P2 P3"},
              {"F1.B C1.A C2.A", "F1.B C1.A C2.A F2.B"},
              {"R1.T T1.R", "R1.T R9.T T1.R"},
              added(
                  R"(<relief-valve id="R9" setting="24 bar"/><line id="S9" joins="T2.S P3.S"/>
                                      <pump id="P3" displacement="18 cm3/rev"/>
                                      <filter id="F2"/><line id="G9" joins="P3.P F2.A R9.P"/>
                                      <reservoir id="T2"><port id="S"/></reservoir>)")});
    EXPECT_EQ(findings_of(circuit), "");
}

TEST(Filtration, OnlyOneOfTwoBranchesFilteredFails) {
    const Circuit circuit =
        with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A C1.A"}, {"F1.B C1.A C2.A", "F1.B C2.A"}});
    EXPECT_EQ(findings_of(circuit), failed("loop:P1"));
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"), "path: T1 S1 P2.S>P G1 C1.A>B HA>P1.A");
}

TEST(Filtration, ReliefRoundTheFilterFails) {
    const Circuit circuit = with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A R5.P"},
                                  {"F1.B C1.A C2.A", "F1.B C1.A C2.A R5.T"},
                                  added(R"(<relief-valve id="R5" setting="5 bar"/>)")});
    EXPECT_EQ(verdicts_of(circuit, "filtration"), failed("loop:P1"));
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 R5.P>T G2 C1.A>B HA>P1.A");
}

TEST(Filtration, CheckRoundTheFilterMattersByItsSense) {
    const auto check = [](const std::string& before, const std::string& behind) {
        return with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A " + before},
                     {"F1.B C1.A C2.A", "F1.B C1.A C2.A " + behind},
                     added(R"(<check-valve id="C5" opening-pressure="3 bar"/>)")});
    };
    EXPECT_EQ(findings_of(check("C5.B", "C5.A")), "");
    const Circuit forward = check("C5.A", "C5.B");
    EXPECT_EQ(findings_of(forward), failed("loop:P1"));
    EXPECT_EQ(witness_of(forward, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 C5.A>B G2 C1.A>B HA>P1.A");
}

TEST(Filtration, ShutOffValveRoundTheFilterCountsAsDrawn) {
    const auto valve = [](const std::string& position) {
        return with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A B1.A"},
                     {"F1.B C1.A C2.A", "F1.B C1.A C2.A B1.B"},
                     added(R"(<shut-off-valve id="B1" position=")" + position + "\"/>")});
    };
    EXPECT_EQ(findings_of(valve("closed")), "");
    const Circuit open = valve("open");
    EXPECT_EQ(findings_of(open), failed("loop:P1"));
    EXPECT_EQ(witness_of(open, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 B1.A>B G2 C1.A>B HA>P1.A");
}

// The valve commands no loop: without a command it may stand anywhere, without a signal it rests,
// and driving forward it stands where the file says.
TEST(Filtration, ValveThatOpensAWayRoundInOnePosition) {
    const Circuit circuit = with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A V3.A"},
                                  {"F1.B C1.A C2.A", "F1.B C1.A C2.A V3.B"},
                                  added(R"(<directional-valve id="V3">
        <port id="A"/><port id="B"/>
        <position id="shut" rest="yes" in="drive-reverse overrun-forward overrun-reverse"/>
        <position id="open" in="drive-forward"><path from="A" to="B"/></position>
        </directional-valve>)")});
    EXPECT_EQ(findings_of(circuit), failed("loop:P1", " neutral[V3=open] drive-forward\n"));
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 V3.A>B G2 C1.A>B HA>P1.A");
}

TEST(Filtration, FanMotorRoundTheFilterFailsEitherWayRound) {
    const auto fan = [](const std::string& before_filter, const std::string& behind_filter) {
        return with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A " + before_filter},
                     {"F1.B C1.A C2.A", "F1.B C1.A C2.A " + behind_filter},
                     added(R"(<motor id="M3"/>)")});
    };
    const Circuit forward = fan("M3.A", "M3.B");
    EXPECT_EQ(findings_of(forward), failed("loop:P1"));
    EXPECT_EQ(witness_of(forward, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 M3.A>B G2 C1.A>B HA>P1.A");
    const Circuit backward = fan("M3.B", "M3.A");
    EXPECT_EQ(findings_of(backward), failed("loop:P1"));
    EXPECT_EQ(witness_of(backward, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 M3.B>A G2 C1.A>B HA>P1.A");
}

// The charge oil is the return of a fan motor; the relief round the motor ends before the filter,
// or behind it.
TEST(Filtration, ReturnOfAnOpenPartIsFilteredWithTheOilOfItsRelief) {
    const auto fan = [](const std::string& before_filter, const std::string& behind_filter) {
        return with({{R"(<line id="G1" joins="P2.P R1.P F1.A"/>)",
                      R"(<line id="G0" joins="P2.P M3.A R5.P"/>
                         <line id="G1" joins="M3.B R1.P F1.A)" +
                          before_filter + "\"/>"},
                     {"F1.B C1.A C2.A", "F1.B C1.A C2.A" + behind_filter},
                     added(R"(<motor id="M3"/><relief-valve id="R5" setting="150 bar"/>)")});
    };
    const Circuit sound = fan(" R5.T", "");
    EXPECT_EQ(findings_of(sound), "");
    const Circuit past_it = fan("", " R5.T");
    EXPECT_EQ(verdicts_of(past_it, "filtration"), failed("loop:P1"));
    EXPECT_EQ(witness_of(past_it, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G0 R5.P>T G2 C1.A>B HA>P1.A");
}

TEST(Filtration, OfTwoLoopsOnOneChargePumpTheOneBeforeTheFilterFails) {
    const Circuit circuit = with(
        {{"E1 P1 P2", "E1 P1 P2 P3"},
         {"M1 D1", "M1 D1 M2"},
         {"R4.T M1.L P1.L", "R4.T M1.L P1.L M2.L P3.L"},
         {"P2.P R1.P F1.A", "P2.P R1.P F1.A C5.A C6.A"},
         added(R"(<pump id="P3" displacement="45 cm3/rev" flow-directions="2" drain="external"/>
        <motor id="M2" drain="external"/>
        <check-valve id="C5"/><check-valve id="C6"/>
        <relief-valve id="R5" setting="300 bar"/><relief-valve id="R6" setting="300 bar"/>
        <line id="JA" joins="P3.A M2.A R5.P R6.T C5.B"/>
        <line id="JB" joins="P3.B M2.B R6.P R5.T C6.B"/>)")});
    EXPECT_EQ(findings_of(circuit), failed("loop:P3"));
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P1"),
              "path: T1 S1 P2.S>P G1 F1.A>B G2 C1.A>B HA>P1.A");
    EXPECT_EQ(witness_of(circuit, "filtration", "loop:P3"), "path: T1 S1 P2.S>P G1 C5.A>B JA>P3.A");
}

// Nothing to filter: no way leads from the reservoir into the loop.
TEST(Filtration, NoOilFromOutsideIsNotApplicable) {
    const Circuit circuit = with({{R"(fineness="10 um")", R"(fineness="10 um" one-way="yes")"},
                                  {"P2.P R1.P F1.A", "P2.P R1.P F1.B"},
                                  {"F1.B C1.A C2.A", "F1.A C1.A C2.A"}});
    EXPECT_EQ(verdicts_of(circuit, "filtration"),
              std::string("filtration loop:P1 not-applicable") + all_running);
}

// A circuit that has no loop has no subject to judge.
TEST(Filtration, OpenPartIsNoSubject) {
    EXPECT_EQ(verdicts_of(circuit_with(R"(
        <engine id="E1"/><pump id="P1"/><motor id="M1"/><shaft id="W1" joins="E1 P1"/>
        <reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
        <line id="S1" joins="T1.S P1.S"/><line id="H1" joins="P1.P M1.A"/>
        <line id="H2" joins="M1.B T1.R"/>)"),
                          "filtration"),
              "filtration circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
