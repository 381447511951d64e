// Circuits that differ from the sound drive in what turns its charge pump.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit alone{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""};
const Edit by_another{"<load id=\"D1\"/>",
                      R"(<load id="D1"/><engine id="E2"/><shaft id="W3" joins="E2 P2"/>)"};

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "charge-pump-drive"); }

const std::string pass = std::string("charge-pump-drive loop:P1 pass") + all_running;
const std::string fail = std::string("charge-pump-drive loop:P1 fail error") + all_running;

/// The drive whose charge pump has an engine of its own, with a part at the end of the charge line
/// and an interlock.
Circuit sensed(const std::string& part, const std::string& interlock) {
    return with({alone,
                 by_another,
                 {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A PS1.P\""},
                 added(part + interlock)});
}
const std::string pressure_switch = R"(<pressure-switch id="PS1" setting="12 bar"/>)";

TEST(ChargePumpDrive, OnOneShaft) {
    EXPECT_EQ(verdict(with({})), pass);
    EXPECT_EQ(witness_of(with({}), "charge-pump-drive", "loop:P1"), "set: P2 P1");
}

TEST(ChargePumpDrive, AnotherEngineAlone) {
    const Circuit circuit = with({alone, by_another});
    EXPECT_EQ(verdict(circuit), fail);
    EXPECT_EQ(witness_of(circuit, "charge-pump-drive", "loop:P1"), "set: P2 P1");
    EXPECT_EQ(verdict(with({alone})), fail);
}

TEST(ChargePumpDrive, AnotherEngineWithAnInterlock) {
    const Circuit circuit =
        sensed(pressure_switch, R"(<interlock when="PS1 below 10 bar" prevents="start E1"/>)");
    EXPECT_EQ(verdict(circuit), pass);
    EXPECT_EQ(witness_of(circuit, "charge-pump-drive", "loop:P1"), "path: P2>P G1 F1.A>B G2 PS1.P");
    EXPECT_EQ(verdict(sensed(R"(<sensor id="PS1"/>)",
                             R"(<interlock when="PS1 below 10 bar" prevents="start E1"/>)")),
              pass);
}

TEST(ChargePumpDrive, ASwitchThatNothingReads) {
    EXPECT_EQ(verdict(sensed(pressure_switch, "")), fail);
    EXPECT_EQ(verdict(sensed(R"(<sensor id="PS1" measures="temperature"/>)",
                             R"(<interlock when="PS1 above 80 degC" prevents="start E1"/>)")),
              fail);
    // The switch must stand on the charge line.
    EXPECT_EQ(
        verdict(with({alone,
                      by_another,
                      {"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T M1.L P1.L K1.A PS1.P\""},
                      added(pressure_switch +
                            R"(<interlock when="PS1 below 1 bar" prevents="start E1"/>)")})),
        fail);
}

// A one-way pump delivers nothing while its shaft turns backwards.
TEST(ChargePumpDrive, TheRightWayRound) {
    EXPECT_EQ(
        verdict(with({{"<engine id=\"E1\"/>",
                       R"(<electric-motor id="E1" variable-speed="yes" reversing="yes"/>)"}})),
        "charge-pump-drive loop:P1 fail error neutral drive-reverse overrun-reverse "
        "lost-signal\n");
}

TEST(ChargePumpDrive, NotAskedWithoutACandidate) {
    EXPECT_EQ(verdict(with({{"joins=\"P2.P R1.P F1.A\"", "joins=\"R1.P F1.A\""}})),
              std::string("charge-pump-drive loop:P1 not-applicable") + all_running);
}

}  // namespace
}  // namespace loopwright
