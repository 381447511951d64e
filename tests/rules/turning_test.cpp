// What turns the pumps, and units, cylinders and hand pumps in place of machines: circuits that
// differ from the sound drive in one thing. What is expected follows by hand from the rule table.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::not_passed;
using testing::verdicts_of;
using testing::with;

const Edit pumps_behind_x1{"joins=\"E1 P1 P2\"", "joins=\"X1.out P1 P2\""};

std::string behind(const std::string& link) {
    return not_passed(
        with({pumps_behind_x1, added(link + R"(<shaft id="W3" joins="E1 X1.in"/>)")}));
}

TEST(Turning, SoundBehindGearboxAndEngagedClutch) {
    EXPECT_EQ(behind("<gearbox id=\"X1\" ratio=\"0.8\"/>"), "");
    EXPECT_EQ(behind("<clutch id=\"X1\"/>"), "");
}

TEST(Turning, NoChargeOilBehindAPartedClutch) {
    const std::string trouble = behind(R"(<clutch id="X1" engaged="no"/>)");
    EXPECT_NE(trouble.find("charge-supply side:P1.A fail error"), std::string::npos) << trouble;
    EXPECT_NE(trouble.find("charge-supply side:P1.B fail error"), std::string::npos) << trouble;
    // The loop itself is there, whatever turns its pump.
    EXPECT_EQ(trouble.find("lost-loop"), std::string::npos) << trouble;
    EXPECT_EQ(trouble.find("crossport-relief"), std::string::npos) << trouble;
}

TEST(Turning, SoundWithAnElectricMotor) {
    EXPECT_EQ(not_passed(with({{"<engine id=\"E1\"", "<electric-motor id=\"E1\""}})), "");
}

// "A variable-speed one that drives the loop pump stands" in neutral, and the charge pump with it.
TEST(Turning, ChargePumpOnAMotorThatStandsInNeutral) {
    const Edit variable{"<engine id=\"E1\"", R"(<electric-motor variable-speed="yes" id="E1")"};
    EXPECT_EQ(not_passed(with({variable})),
              "charge-supply side:P1.A fail error neutral\n"
              "charge-supply side:P1.B fail error neutral\n"
              "charge-pump-drive loop:P1 fail error neutral\n"
              "make-up-check side:P1.A fail error neutral\n"
              "make-up-check side:P1.B fail error neutral\n");
    // On a motor of its own it turns on, and an interlock reads its pressure.
    EXPECT_EQ(not_passed(with({variable,
                               {"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""},
                               {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A PS1.P\""},
                               added(R"(<electric-motor id="E2"/><shaft id="W3" joins="E2 P2"/>
                             <pressure-switch id="PS1" setting="12 bar"/>
                             <interlock when="PS1 below 12 bar" prevents="start E1"/>)")})),
              "");
}

TEST(Turning, ChargePumpTurnedBackwardsInReverse) {
    const std::string trouble =
        not_passed(with({{"<engine id=\"E1\"",
                          R"(<electric-motor variable-speed="yes" reversing="yes" id="E1")"}}));
    EXPECT_NE(trouble.find("charge-supply side:P1.A fail error neutral drive-reverse lost-signal"),
              std::string::npos)
        << trouble;
}

// A hoist: the load's side is high whether it goes up, down or stands.
TEST(Turning, LoadThatAlwaysPullsOneWay) {
    const Edit hoist{"<load id=\"D1\"",
                     R"(<load overrunning="yes" overrunning-sense="reverse" id="D1")"};
    EXPECT_EQ(verdicts_of(with({hoist}), "charge-supply"),
              "charge-supply side:P1.A pass neutral\n"
              "charge-supply side:P1.B pass neutral drive-forward overrun-reverse hold "
              "lost-signal\n");
}

TEST(Turning, BrakeAndGearboxAtTheLoadChangeNothing) {
    EXPECT_EQ(not_passed(with({{"joins=\"M1 D1\"", "joins=\"M1 B1 X1.in\""},
                               {"joins=\"R1.T T1.R\"", "joins=\"R1.T T1.R B1.Z\""},
                               added(R"(<brake id="B1"/><gearbox id="X1"/>
                                   <shaft id="W3" joins="X1.out D1"/>)")})),
              "");
}

TEST(Turning, UnitsInPlaceOfPumpAndMotor) {
    EXPECT_EQ(not_passed(with({{"<motor id=\"M1\"", "<pump-motor id=\"M1\""}})), "");
    EXPECT_EQ(not_passed(with({{"<pump id=\"P1\"", "<pump-motor id=\"P1\""}})), "");
}

// A unit that nothing turns is an actuator: then no pump is left in the loop.
TEST(Turning, UnitBehindAPartedClutchMakesNoLoop) {
    const auto unit = [](const std::string& engaged) {
        return verdicts_of(with({{"<pump id=\"P1\"", R"(<pump-motor closed-loop="yes" id="P1")"},
                                 {"joins=\"E1 P1 P2\"", "joins=\"E1 P2 X1.in\""},
                                 added(R"(<clutch id="X1" engaged=")" + engaged +
                                       R"("/><shaft id="W3" joins="X1.out P1"/>)")}),
                           "lost-loop");
    };
    EXPECT_EQ(unit("yes"), verdicts_of(with({}), "lost-loop"));
    EXPECT_EQ(unit("no"), std::string("lost-loop P1 fail error") + testing::all_running);
}

// Its housing is asked for like any other.
TEST(Turning, UnitDrainedThroughAHandValve) {
    const auto drained = [](const std::string& locked) {
        return verdicts_of(with({{"<motor id=\"M1\"", "<pump-motor id=\"M1\""},
                                 {"R4.T M1.L P1.L K1.A", "R4.T X1.A P1.L K1.A"},
                                 added(R"(<shut-off-valve id="X1" locked=")" + locked +
                                       R"("/><line id="L9" joins="M1.L X1.B"/>)")}),
                           "case-drain-path");
    };
    EXPECT_EQ(drained("yes").find("fail"), std::string::npos) << drained("yes");
    EXPECT_NE(drained("no").find("case-drain-path M1 fail error"), std::string::npos)
        << drained("no");
}

// A hand pump is worked in towing only: it brings no unfiltered oil into a running loop, and does
// not stand for the charge pump.
TEST(Turning, HandPumpDoesNotCountWhileRunning) {
    EXPECT_EQ(not_passed(with({{"M1.A R2.P", "M1.A X1.P R2.P"},
                               {"T1.S P2.S", "T1.S P2.S X1.S"},
                               added("<hand-pump id=\"X1\"/>")})),
              "");
    const std::string trouble =
        not_passed(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""},
                         {R"(<pump id="P2" displacement="18 cm3/rev")", "<hand-pump id=\"P2\""}}));
    EXPECT_NE(trouble.find("charge-supply side:P1.A fail error"), std::string::npos) << trouble;
}

}  // namespace
}  // namespace loopwright
