// A housing reaches a reservoir over nothing that can close or holds more than it bears. What is
// expected follows by hand from the design's definitions; the housings of P1 and M1 bear 3 bar.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::findings_of;
using testing::running_and_towing;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

/// The sound drive with more between the cooler and the reservoir. `parts` joins K1.B and T1.D.
Circuit drained_over(const std::string& parts) {
    return with({{R"(<line id="L2" joins="K1.B T1.D"/>)", parts}});
}

std::string verdict(const std::string& machine, const std::string& outcome,
                    const std::string& states = running_and_towing) {
    return "case-drain-path " + machine + ' ' + outcome + states;
}

const std::string& both_fail() {
    static const std::string text = verdict("P1", "fail error") + verdict("M1", "fail error");
    return text;
}

TEST(CaseDrainPath, ThroughTheCoolerPasses) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "case-drain-path"),
              verdict("P1", "pass") + verdict("M1", "pass"));
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "M1"), "path: M1>L L1 K1.A>B L2 T1");
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "P1"), "path: P1>L L1 K1.A>B L2 T1");
}

TEST(CaseDrainPath, ThroughAnotherHousingPasses) {
    const Circuit circuit =
        with({{R"(<motor id="M1" displacement="80 cm3/rev" drain="external")",
               R"(<motor id="M1" displacement="80 cm3/rev" drain="external" case-ports="2")"},
              {R"(<line id="L1" joins="R4.T M1.L P1.L K1.A"/>)",
               R"(<line id="L0" joins="R4.T M1.L1 P1.L"/><line id="L1" joins="M1.L2 K1.A"/>)"}});
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "P1"),
              "path: P1>L L0 M1.L1>L2 L1 K1.A>B L2 T1");
}

TEST(CaseDrainPath, StraightToAReservoirPasses) {
    const Circuit circuit =
        with({{"R4.T M1.L P1.L K1.A", "R4.T P1.L K1.A"},
              {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
              {"</circuit>", R"(<reservoir id="T2"><port id="D"/><port id="E"/></reservoir>
             <line id="X" joins="M1.L T2.D"/><line id="Y" joins="T1.E T2.E"/></circuit>)"}});
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "M1"), "path: M1>L X T2");
}

TEST(CaseDrainPath, SpringsInSeriesAddUp) {
    const auto checks = [](const std::string& second) {
        return drained_over(R"(<check-valve id="C8" opening-pressure="1.5 bar"/>
            <check-valve id="C9" opening-pressure=")" +
                            second + R"("/><line id="L2" joins="K1.B C8.A"/>
            <line id="L3" joins="C8.B C9.A"/><line id="L4" joins="C9.B T1.D"/>)");
    };
    EXPECT_EQ(findings_of(checks("1.5 bar")), "");
    const Circuit too_much = checks("2 bar");
    EXPECT_EQ(findings_of(too_much), both_fail());
    EXPECT_EQ(witness_of(too_much, "case-drain-path", "M1"),
              "path: M1>L L1 K1.A>B L2 C8.A>B L3 C9.A>B L4 T1");
}

TEST(CaseDrainPath, TheWayThatHoldsLeastCounts) {
    const Circuit circuit = drained_over(R"(<check-valve id="C8" opening-pressure="5 bar"/>
        <check-valve id="C9" opening-pressure="1 bar"/><line id="L2" joins="K1.B C8.A C9.A"/>
        <line id="L3" joins="C8.B C9.B T1.D"/>)");
    EXPECT_EQ(findings_of(circuit), "");
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "P1"), "path: P1>L L1 K1.A>B L2 C9.A>B L3 T1");
}

TEST(CaseDrainPath, OverAReliefItsSettingCounts) {
    const auto relief = [](const std::string& setting) {
        return drained_over(R"(<relief-valve id="R9" setting=")" + setting +
                            R"("/><line id="L2" joins="K1.B R9.P"/>
            <line id="L3" joins="R9.T T1.D"/>)");
    };
    EXPECT_EQ(findings_of(relief("2 bar")), "");
    const Circuit too_much = relief("4 bar");
    EXPECT_EQ(findings_of(too_much), both_fail());
    EXPECT_EQ(witness_of(too_much, "case-drain-path", "P1"),
              "path: P1>L L1 K1.A>B L2 R9.P>T L3 T1");
}

TEST(CaseDrainPath, OnlyTheWeakerHousingFails) {
    const Circuit circuit = with({{R"(<line id="L2" joins="K1.B T1.D"/>)",
                                   R"(<check-valve id="C9" opening-pressure="2 bar"/>
                  <line id="L2" joins="K1.B C9.A"/><line id="L3" joins="C9.B T1.D"/>)"},
                                  {R"("80 cm3/rev" drain="external" case-pressure="3 bar")",
                                   R"("80 cm3/rev" drain="external" case-pressure="1 bar")"}});
    EXPECT_EQ(findings_of(circuit), verdict("M1", "fail error"));
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "M1"), "path: M1>L L1 K1.A>B L2 C9.A>B L3 T1");
}

TEST(CaseDrainPath, AFreeWayNeedsNoLimit) {
    EXPECT_EQ(findings_of(with({{R"("80 cm3/rev" drain="external" case-pressure="3 bar")",
                                 R"("80 cm3/rev" drain="external")"}})),
              "");
}

TEST(CaseDrainPath, UnknownSettingMattersOnlyWhereNoOtherWayIsLeft) {
    const auto drain = [](const std::string& beside) {
        return drained_over(R"(<relief-valve id="R9"/><line id="L2" joins="K1.B R9.P O1.A"/>
            <orifice id="O1" bore="3 mm"/><line id="L3" joins="R9.T T1.D)" +
                            beside + R"("/>)");
    };
    EXPECT_EQ(findings_of(drain(" O1.B")), "");
    const Circuit unknown = drain("");
    EXPECT_EQ(findings_of(unknown),
              "case-drain-path P1 inconclusive neutral drive-forward drive-reverse overrun-forward "
              "overrun-reverse hold lost-signal towing needs R9.setting\n"
              "case-drain-path M1 inconclusive neutral drive-forward drive-reverse overrun-forward "
              "overrun-reverse hold lost-signal towing needs R9.setting\n");
    EXPECT_EQ(witness_of(unknown, "case-drain-path", "M1"), "path: M1>L L1 K1.A>B L2 R9.P>T L3 T1");
}

TEST(CaseDrainPath, CheckTurnedRoundFails) {
    const auto check = [](const std::string& first, const std::string& second) {
        return drained_over(R"(<check-valve id="C9"/><line id="L2" joins="K1.B )" + first +
                            R"("/><line id="L3" joins="T1.D )" + second + "\"/>");
    };
    EXPECT_EQ(findings_of(check("C9.A", "C9.B")), "");
    const Circuit turned = check("C9.B", "C9.A");
    EXPECT_EQ(findings_of(turned), both_fail());
    // The oil gets through the cooler, and into neither the flushing relief nor the check.
    EXPECT_EQ(witness_of(turned, "case-drain-path", "M1"), "frontier: M1>L R4.T>P C9.B>A");
}

TEST(CaseDrainPath, FilterInTheDrainByItsSense) {
    const auto filter = [](const std::string& first, const std::string& second) {
        return drained_over(
            R"(<filter id="F9" one-way="yes" bypass="2 bar"/><line id="L2" joins="K1.B )" + first +
            R"("/><line id="L3" joins="T1.D )" + second + "\"/>");
    };
    EXPECT_EQ(findings_of(filter("F9.A", "F9.B")), "");
    const Circuit turned = filter("F9.B", "F9.A");
    EXPECT_EQ(findings_of(turned), both_fail());
    EXPECT_EQ(witness_of(turned, "case-drain-path", "P1"), "frontier: P1>L R4.T>P F9.B>A");
}

TEST(CaseDrainPath, LockedShutIsShut) {
    const Circuit circuit = drained_over(R"(<shut-off-valve id="B1" locked="yes" position="closed"/>
            <line id="L2" joins="K1.B B1.A"/><line id="L3" joins="B1.B T1.D"/>)");
    EXPECT_EQ(findings_of(circuit), both_fail());
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "M1"), "frontier: M1>L R4.T>P B1.A>B");
}

TEST(CaseDrainPath, ReturnPumpIsNoFreeWay) {
    const Circuit circuit = with({{R"(<line id="L2" joins="K1.B T1.D"/>)",
                                   R"(<pump id="P4"/><line id="L2" joins="K1.B P4.S"/>
                                      <line id="L3" joins="P4.P T1.D"/>)"},
                                  {"E1 P1 P2", "E1 P1 P2 P4"}});
    EXPECT_EQ(findings_of(circuit), both_fail());
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "M1"), "frontier: M1>L R4.T>P P4.S>P");
}

TEST(CaseDrainPath, OfTwoHousingsTheOneWithoutADrainLineFails) {
    const Circuit circuit = with({{"R4.T M1.L P1.L K1.A", "R4.T P1.L K1.A"}});
    EXPECT_EQ(verdicts_of(circuit, "case-drain-path"),
              verdict("P1", "pass") + verdict("M1", "fail error"));
    EXPECT_EQ(findings_of(circuit), "missing-drain-port M1 fail error\n");
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "P1"), "path: P1>L L1 K1.A>B L2 T1");
}

TEST(CaseDrainPath, MachineDrainedInsideIsNoSubject) {
    const Circuit circuit = with(
        {{R"(<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar"/>)",
          R"(<motor id="M1" displacement="80 cm3/rev"/>)"},
         {"R4.T M1.L P1.L K1.A", "R4.T P1.L K1.A"}});
    EXPECT_EQ(verdicts_of(circuit, "case-drain-path"), verdict("P1", "pass"));
}

// The valve commands no loop, so in neutral it may stand either way; without a signal it rests.
TEST(CaseDrainPath, ShutInOneStateOnly) {
    const Circuit circuit = drained_over(R"(<directional-valve id="V3">
        <port id="A"/><port id="B"/>
        <position id="open" rest="yes" in="drive-forward drive-reverse overrun-forward">
          <path from="A" to="B"/></position>
        <position id="shut" in="overrun-reverse"/></directional-valve>
        <line id="L2" joins="K1.B V3.A"/><line id="L3" joins="V3.B T1.D"/>)");
    const std::string states = " neutral[V3=shut] overrun-reverse\n";
    EXPECT_EQ(findings_of(circuit),
              verdict("P1", "fail error", states) + verdict("M1", "fail error", states));
    EXPECT_EQ(witness_of(circuit, "case-drain-path", "M1"), "frontier: M1>L R4.T>P V3.A>B");
}

// The relief's oil and the housings meet before the cooler, as in the drives after the manuals;
// a cooler that is clogged lets the oil over its bypass, which asks for nothing here.
TEST(CaseDrainPath, CoolerBypassAboveTheLimitIsNotNeeded) {
    EXPECT_EQ(findings_of(with({{R"(bypass="1.5 bar")", R"(bypass="9 bar")"}})), "");
}

TEST(CaseDrainPath, HousingWithoutADrainLineIsShown) {
    const Circuit circuit = with({{"R4.T M1.L P1.L K1.A", "R4.T P1.L K1.A"}});
    const std::string where = witness_of(circuit, "case-drain-path", "M1");
    EXPECT_NE(where.find(" M1>L"), std::string::npos) << where;
}

}  // namespace
}  // namespace loopwright
