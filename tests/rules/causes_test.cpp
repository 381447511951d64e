// What a finding follows from.
#include <gtest/gtest.h>

#include <string>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::added;
using testing::with;

/// "rule subject <- rule subject" of each finding that follows from another, a line each.
std::string causes(const Circuit& circuit) {
    std::string text;
    const CheckResult result = check(circuit, rules());
    for (const Verdict& verdict : result.verdicts) {
        if (verdict.follows == nullptr) continue;
        EXPECT_EQ(verdict.outcome, Outcome::fail);
        text += std::string(verdict.rule->id) + ' ' + std::string(verdict.subject.id) + " <- " +
                std::string(verdict.follows->rule->id) + ' ' +
                std::string(verdict.follows->subject.id) + '\n';
    }
    return text;
}

TEST(Causes, NoneInASoundDrive) { EXPECT_EQ(causes(with({})), ""); }

TEST(Causes, WhatTheSidesLackFollowsFromTheOpenChargeLine) {
    EXPECT_EQ(
        causes(with({{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                     {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A H1.A\""},
                     added(R"(<shut-off-valve id="H1"/><line id="G4" joins="H1.B T1.E"/>)")})),
        "charge-supply side:P1.A <- charge-vented loop:P1\n"
        "charge-supply side:P1.B <- charge-vented loop:P1\n"
        "make-up-check side:P1.A <- charge-vented loop:P1\n"
        "make-up-check side:P1.B <- charge-vented loop:P1\n");
}

// A finding on one loop explains nothing on another: here P1.A lacks its check.
TEST(Causes, NotFromAnotherLoop) {
    EXPECT_EQ(causes(with({{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C2.A\""},
                           added(R"(<engine id="E2"/><pump id="P3" flow-directions="2"/>
                        <motor id="M3"/><pump id="P4"/><shaft id="W3" joins="E2 P3 P4"/>
                        <reservoir id="T2"><port id="S"/><port id="R"/></reservoir>
                        <line id="KA" joins="P3.A M3.A C3.B R5.P R6.T"/>
                        <line id="KB" joins="P3.B M3.B C4.B R6.P R5.T"/>
                        <relief-valve id="R5" setting="380 bar"/>
                        <relief-valve id="R6" setting="380 bar"/>
                        <line id="KS" joins="T2.S P4.S"/>
                        <line id="KG" joins="P4.P C3.A C4.A C5.A"/>
                        <line id="KR" joins="C5.B T2.R"/><check-valve id="C3"/>
                        <check-valve id="C4"/><check-valve id="C5"/>)")})),
              "charge-supply side:P3.A <- charge-vented loop:P3\n"
              "charge-supply side:P3.B <- charge-vented loop:P3\n"
              "make-up-check side:P3.A <- charge-vented loop:P3\n"
              "make-up-check side:P3.B <- charge-vented loop:P3\n");
}

// The housings are filled until their line bursts; and what leaks into them cannot get away when
// the oil warms up.
TEST(Causes, WhatADrainThatIsShutPutsUnderPressure) {
    EXPECT_EQ(
        causes(with(
            {{"joins=\"K1.B T1.D\"", "joins=\"K1.B H1.A\""},
             {"joins=\"R4.T M1.L P1.L K1.A\"", "rating=\"16 bar\" joins=\"R4.T M1.L P1.L K1.A\""},
             added(R"(<shut-off-valve id="H1"/><line id="L3" joins="H1.B T1.D"/>)")})),
        "pressure-rating L1 <- case-drain-path P1\n"
        "trapped-volume HA <- case-drain-path P1\n"
        "trapped-volume HB <- case-drain-path P1\n"
        "trapped-volume FL <- case-drain-path P1\n"
        "trapped-volume L1 <- case-drain-path P1\n"
        "trapped-volume L2 <- case-drain-path P1\n");
}

}  // namespace
}  // namespace loopwright
