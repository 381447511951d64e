// Each rule on circuits that differ from a sound one in one thing. What is expected follows by hand
// from the design's definitions; a stray finding fails a case as surely as a missing one.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::a_low;
using testing::all_running;
using testing::b_low;
using testing::circuit_from;
using testing::Edit;
using testing::edited;
using testing::not_passed;
using testing::running_and_towing;
using testing::sound_drive;
using testing::verdicts_of;

constexpr const char* moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";

std::string with(const std::vector<Edit>& edits) {
    return not_passed(circuit_from(edited(sound_drive(), edits)));
}

TEST(SoundDrive, RaisesNothing) { EXPECT_EQ(with({}), ""); }

TEST(SoundDrive, HasEveryVerdict) {
    const Circuit circuit = circuit_from(sound_drive());
    EXPECT_EQ(verdicts_of(circuit, "lost-loop"), std::string("lost-loop P1 pass") + all_running);
    EXPECT_EQ(verdicts_of(circuit, "charge-supply"), std::string("charge-supply side:P1.A pass") +
                                                         a_low + "charge-supply side:P1.B pass" +
                                                         b_low);
    EXPECT_EQ(verdicts_of(circuit, "filtration"),
              std::string("filtration loop:P1 pass") + all_running);
}

TEST(LostLoop, SideJoinedToAReservoir) {
    const std::string found =
        with({{"R1.T T1.R", "R1.T T1.R P1.B M1.B R3.P R2.T C2.B V1.B"},
              {R"(<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B"/>)", ""}});
    EXPECT_EQ(found, std::string("lost-loop P1 fail error") + all_running);
}

TEST(LostLoop, TowingValveDrawnOpen) {
    const std::string valve = R"(<shut-off-valve id="B1"/><line id="HB" joins="B1.B )";
    EXPECT_EQ(with({{R"(<line id="HB" joins=")", valve}, {R"(C1.B V1.A")", R"(C1.B V1.A B1.A")"}}),
              std::string("lost-loop P1 fail error") + all_running);
}

TEST(LostLoop, TowingValveDrawnClosedIsSound) {
    const std::string valve =
        R"(<shut-off-valve id="B1" position="closed"/><line id="HB" joins="B1.B )";
    EXPECT_EQ(with({{R"(<line id="HB" joins=")", valve}, {R"(C1.B V1.A")", R"(C1.B V1.A B1.A")"}}),
              "");
}

TEST(LostLoop, NoLoopAndNoSignOfOneIsANote) {
    EXPECT_EQ(not_passed(testing::circuit_with(R"(
        <engine id="E1"/> <pump id="P1"/> <motor id="M1"/> <shaft id="W1" joins="E1 P1"/>
        <reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
        <line id="S1" joins="T1.S P1.S"/> <line id="H1" joins="P1.P M1.A"/>
        <line id="H2" joins="M1.B T1.R"/>)")),
              std::string("lost-loop circuit fail note\nblocked-pump P1 fail error") + all_running);
}

TEST(ChargeSupply, PumpOffTheShaftDeliversNothing) {
    EXPECT_EQ(
        with({{"E1 P1 P2", "E1 P1"}}),
        std::string("charge-supply side:P1.A fail error") + a_low +
            "charge-supply side:P1.B fail error" + b_low + "charge-vented loop:P1 not-applicable" +
            all_running + "charge-pump-drive loop:P1 fail error" + all_running +
            "charge-relief loop:P1 not-applicable" + all_running +
            "charge-backflow side:P1.A not-applicable" + all_running +
            "charge-backflow side:P1.B not-applicable" + all_running +
            "make-up-check side:P1.A fail error" + a_low + "make-up-check side:P1.B fail error" +
            b_low + "flushing-setting R4 not-applicable" + moving);
}

TEST(ChargeSupply, ChargeLineOpenToAReservoir) {
    EXPECT_EQ(with({{"F1.B C1.A C2.A", "F1.B C1.A C2.A T1.V"},
                    {R"(<port id="S"/>)", R"(<port id="S"/><port id="V"/>)"}}),
              std::string("charge-supply side:P1.A fail error") + a_low +
                  "charge-supply side:P1.B fail error" + b_low +
                  "charge-vented loop:P1 not-applicable" + all_running +
                  "charge-pump-drive loop:P1 not-applicable" + all_running +
                  "charge-relief loop:P1 not-applicable" + all_running +
                  "charge-backflow side:P1.A not-applicable" + all_running +
                  "charge-backflow side:P1.B not-applicable" + all_running +
                  "make-up-check side:P1.A fail error" + a_low +
                  "make-up-check side:P1.B fail error" + b_low + "filtration loop:P1 fail error" +
                  all_running + "flushing-setting R4 not-applicable" + moving);
}

TEST(MakeUpCheck, TurnedRound) {
    EXPECT_EQ(with({{"F1.B C1.A C2.A", "F1.B C1.B C2.A"}, {"R3.T C1.B V1.A", "R3.T C1.A V1.A"}}),
              std::string("charge-supply side:P1.A fail error") + a_low +
                  "make-up-check side:P1.A fail error" + a_low);
}

TEST(MakeUpCheck, AnOrificeInItsPlaceFeedsButIsNone) {
    EXPECT_EQ(with({{R"(<check-valve id="C1"/>)", R"(<orifice id="C1"/>)"}}),
              std::string("make-up-check side:P1.A fail error") + a_low);
}

TEST(CrossportRelief, OnOneSideOnly) {
    EXPECT_EQ(with({{R"(<relief-valve id="R2" setting="380 bar"/>)", ""},
                    {"M1.A R2.P R3.T", "M1.A R3.T"},
                    {"R3.P R2.T C2.B", "R3.P C2.B"}}),
              std::string("crossport-relief side:P1.A fail error") + all_running);
}

TEST(CrossportRelief, IntoTheChargeLineWithMakeUpOnward) {
    EXPECT_EQ(with({{"R3.P R2.T C2.B", "R3.P C2.B"}, {"F1.B C1.A C2.A", "F1.B C1.A C2.A R2.T"}}),
              "");
}

TEST(CrossportRelief, IntoAReservoir) {
    EXPECT_EQ(with({{"R3.P R2.T C2.B", "R3.P C2.B"}, {"R1.T T1.R", "R1.T T1.R R2.T"}}),
              std::string("crossport-relief side:P1.A fail error") + all_running);
}

TEST(CrossportRelief, BehindAShutOffValve) {
    const std::vector<Edit> edits{
        {"M1.A R2.P R3.T", "M1.A B1.A R3.T"},
        {"</circuit>", R"(<shut-off-valve id="B1"/><line id="X" joins="B1.B R2.P"/></circuit>)"}};
    EXPECT_EQ(with(edits), std::string("crossport-relief side:P1.A fail error") + all_running);
    EXPECT_EQ(
        with(
            {edits[0],
             {"</circuit>",
              R"(<shut-off-valve id="B1" locked="yes"/><line id="X" joins="B1.B R2.P"/></circuit>)"}}),
        "");
}

TEST(CrossportRelief, OneForBothSidesThroughChecks) {
    EXPECT_EQ(with({{R"(<relief-valve id="R3" setting="380 bar"/>)",
                     R"(<check-valve id="C3"/><check-valve id="C4"/>)"},
                    {"M1.A R2.P R3.T", "M1.A C3.A"},
                    {"R3.P R2.T C2.B", "C4.A C2.B"},
                    {"F1.B C1.A C2.A", "F1.B C1.A C2.A R2.T"},
                    {"</circuit>", R"(<line id="X" joins="C3.B C4.B R2.P"/></circuit>)"}}),
              "");
}

TEST(Filtration, TwoSideBySidePass) {
    EXPECT_EQ(with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A F2.A"},
                    {"F1.B C1.A C2.A", "F1.B F2.B C1.A C2.A"},
                    {"</circuit>", R"(<filter id="F2"/></circuit>)"}}),
              "");
}

TEST(Filtration, AnOrificeRoundTheFilter) {
    EXPECT_EQ(with({{"P2.P R1.P F1.A", "P2.P R1.P F1.A O1.A"},
                    {"F1.B C1.A C2.A", "F1.B O1.B C1.A C2.A"},
                    {"</circuit>", R"(<orifice id="O1"/></circuit>)"}}),
              std::string("filtration loop:P1 fail error") + all_running);
}

TEST(Filtration, NoFilterAtAll) {
    EXPECT_EQ(with({{R"(<filter id="F1" fineness="10 um" clogging-indicator="visual"/>)",
                     R"(<cooler id="F1"/>)"}}),
              std::string("filtration loop:P1 fail error") + all_running);
}

TEST(CaseDrainPath, SpringCheckBelowAndAboveWhatTheHousingBears) {
    const auto check = [](const std::string& opening) {
        return std::vector<Edit>{
            {"K1.B T1.D", "K1.B C9.A"},
            {"</circuit>", R"(<check-valve id="C9" opening-pressure=")" + opening +
                               R"("/><line id="X" joins="C9.B T1.D"/></circuit>)"}};
    };
    EXPECT_EQ(with(check("0.5 bar")), "");
    EXPECT_EQ(with(check("5 bar")), std::string("case-drain-path P1 fail error") +
                                        running_and_towing + "case-drain-path M1 fail error" +
                                        running_and_towing);
}

TEST(CaseDrainPath, UnknownLimitIsInconclusive) {
    const std::string found = with(
        {{"K1.B T1.D", "K1.B C9.A"},
         {R"(<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar"/>)",
          R"(<motor id="M1" displacement="80 cm3/rev" drain="external"/>)"},
         {"</circuit>",
          R"(<check-valve id="C9" opening-pressure="0.5 bar"/><line id="X" joins="C9.B T1.D"/></circuit>)"}});
    EXPECT_EQ(found,
              "case-drain-path M1 inconclusive neutral drive-forward drive-reverse "
              "overrun-forward overrun-reverse hold lost-signal towing needs M1.case-pressure\n");
}

TEST(CaseDrainPath, OverAReliefWithoutSetting) {
    const std::string found = with(
        {{"K1.B T1.D", "K1.B R9.P"},
         {"</circuit>", R"(<relief-valve id="R9"/><line id="X" joins="R9.T T1.D"/></circuit>)"}});
    EXPECT_EQ(found,
              "case-drain-path P1 inconclusive neutral drive-forward drive-reverse "
              "overrun-forward overrun-reverse hold lost-signal towing needs R9.setting\n"
              "case-drain-path M1 inconclusive neutral drive-forward drive-reverse "
              "overrun-forward overrun-reverse hold lost-signal towing needs R9.setting\n");
}

TEST(CaseDrainPath, ShutOffValveUnlockedAndLocked) {
    const auto valve = [](const std::string& locked) {
        return std::vector<Edit>{
            {"K1.B T1.D", "K1.B B1.A"},
            {"</circuit>", R"(<shut-off-valve id="B1" locked=")" + locked +
                               R"("/><line id="X" joins="B1.B T1.D"/></circuit>)"}};
    };
    EXPECT_EQ(with(valve("yes")), "");
    EXPECT_EQ(with(valve("no")), std::string("case-drain-path P1 fail error") + running_and_towing +
                                     "case-drain-path M1 fail error" + running_and_towing);
}

TEST(CaseDrainPath, DirectionalValveThatShutsTheDrainInOnePosition) {
    const std::string found = with(
        {{"K1.B T1.D", "K1.B V3.A"},
         {"</circuit>",
          R"(<directional-valve id="V3"><port id="A"/><port id="B"/><position id="a" rest="yes"><path from="A" to="B"/></position><position id="b"/></directional-valve><line id="X" joins="V3.B T1.D"/></circuit>)"}});
    const std::string shut =
        " neutral[V3=b] drive-forward[V3=b] drive-reverse[V3=b] overrun-forward[V3=b] "
        "overrun-reverse[V3=b]\n";
    EXPECT_EQ(found,
              "case-drain-path P1 fail error" + shut + "case-drain-path M1 fail error" + shut);
}

}  // namespace
}  // namespace loopwright
