// The sound drive with a cylinder in place of its motor.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::expect_at_frontier;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const std::string moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";

Circuit cylinder(const std::string& attributes, std::vector<Edit> more = {}) {
    more.push_back(
        {R"(<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar"/>)",
         "<cylinder id=\"M1\" " + attributes + "/>"});
    more.push_back({"R4.T M1.L P1.L", "R4.T P1.L"});
    return with(more);
}

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "unequal-cylinder"); }

const std::string pass = "unequal-cylinder M1 pass" + moving;
const std::string fail = "unequal-cylinder M1 fail error" + moving;

TEST(UnequalCylinder, FlushingLetsItOut) {
    const Circuit circuit = cylinder("");
    EXPECT_EQ(verdict(circuit), pass);
    EXPECT_EQ(findings_of(circuit), "");
    // Forward, side B is the low one.
    EXPECT_EQ(witness_of(circuit, "unequal-cylinder", "M1"),
              "path: P1.B>HB V1.B>F FL R4.P>T L1 K1.A>B L2 T1");
}

TEST(UnequalCylinder, NoWayOut) {
    const Circuit circuit = cylinder("", {{"joins=\"V1.F R4.P\"", "joins=\"R4.P\""}});
    EXPECT_EQ(verdict(circuit), fail);
    expect_at_frontier(witness_of(circuit, "unequal-cylinder", "M1"), "R3.P>T");
}

// A check that side B's pressure opens lets the oil of side A out into the charge line.
TEST(UnequalCylinder, OutOverAPilotedCheck) {
    const Circuit circuit =
        cylinder("", {{"joins=\"V1.F R4.P\"", "joins=\"R4.P\""},
                      {R"(<check-valve id="C1"/>)", R"(<check-valve id="C1" pilot="opens"/>)"},
                      {"joins=\"P1.B M1.B", "joins=\"P1.B C1.X M1.B"}});
    EXPECT_EQ(verdict(circuit), "unequal-cylinder M1 fail error drive-forward overrun-reverse\n");
}

// One to each side, each opened by the other side's pressure, do without a flushing valve.
TEST(UnequalCylinder, OutOverTwoPilotedChecks) {
    const Circuit circuit =
        cylinder("", {{"joins=\"V1.F R4.P\"", "joins=\"R4.P\""},
                      {R"(<check-valve id="C1"/>)", R"(<check-valve id="C1" pilot="opens"/>)"},
                      {R"(<check-valve id="C2"/>)", R"(<check-valve id="C2" pilot="opens"/>)"},
                      {"joins=\"P1.A M1.A", "joins=\"P1.A C2.X M1.A"},
                      {"joins=\"P1.B M1.B", "joins=\"P1.B C1.X M1.B"}});
    EXPECT_EQ(verdict(circuit), pass);
    EXPECT_EQ(witness_of(circuit, "unequal-cylinder", "M1"), "path: P1.B>HB C2.B>A");
    EXPECT_EQ(verdicts_of(circuit, "charge-backflow").find("fail"), std::string::npos);
}

TEST(UnequalCylinder, NoWayIn) {
    // Side A alone is fed.
    const Circuit circuit = cylinder("", {{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A\""}});
    EXPECT_EQ(verdict(circuit), "unequal-cylinder M1 fail error drive-forward overrun-reverse\n");
}

TEST(UnequalCylinder, EqualAreas) {
    EXPECT_EQ(verdict(cylinder(R"(rods="2")")), "unequal-cylinder M1 not-applicable" + moving);
    EXPECT_EQ(verdict(cylinder(R"(area-ratio="1")")),
              "unequal-cylinder M1 not-applicable" + moving);
    EXPECT_EQ(verdict(cylinder(R"(area-ratio="1.6")")), pass);
}

/// At work: 80 mm bore against a rod, moved by 71 cm3/rev at 2400 rpm, 170.4 L/min, of which the
/// charge pump's 43.2 L/min may make up for the rod's share of the piston's area (the definition).
std::string at_work(const std::string& rod, const std::string& travel) {
    return testing::judged_at_work(
        {{R"(<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar" low-side-pressure="10 bar" max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="95 degC"/>)",
          "<cylinder id=\"M1\" bore=\"80 mm\" rod=\"" + rod + "\"/>"},
         {"M1.L K1.A P1.L R4.T", "P1.L K1.A R4.T"},
         {R"(travel="100 %" torque="200 N.m")", "travel=\"" + travel + "\" force=\"10 kN\""}},
        "unequal-cylinder");
}

// Coming out it takes the whole flow at A and gives less at B: the rod's share of the area is made
// up by charge oil, 34.5 of 43.2 L/min with a rod of 36 mm, 53.9 with one of 45 mm.
TEST(UnequalCylinder, TheChargeFlowMakesUpForTheRod) {
    EXPECT_EQ(at_work("36 mm", "100 %"), pass);
    EXPECT_EQ(at_work("45 mm", "100 %"), "unequal-cylinder M1 fail error at work\n");
    // Going in it gives more than it takes.
    EXPECT_EQ(at_work("45 mm", "-100 %"), pass);
}

TEST(UnequalCylinder, NothingToAskOfMotors) {
    EXPECT_EQ(verdict(with({})), "unequal-cylinder circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
