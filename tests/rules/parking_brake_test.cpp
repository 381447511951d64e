// A brake on the sound drive's motor, and its port joined in several ways. What is expected follows
// by hand from the design's words: its pressure vanishes with the supply and the signal.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "parking-brake"); }

/// What stands between the gallery (G2), the reservoir (T1.E) and the brake's port.
Circuit braked(const std::string& brake, const std::string& on_gallery, const std::string& parts) {
    return with({{"joins=\"M1 D1\"", "joins=\"M1 B1 D1\""},
                 {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                 {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A " + on_gallery + "\""},
                 added("<brake id=\"B1\" " + brake + "/>" + parts)});
}

/// A brake valve with these paths at rest; `more` is joined to the brake's line.
std::string valve(const std::string& rest, const std::string& more = "") {
    return R"(<directional-valve id="V2"><port id="A"/><port id="P"/><port id="T"/>
        <position id="applied" rest="yes">)" +
           rest + R"(</position><position id="released"><path from="P" to="A"/></position>
        </directional-valve><line id="B2" joins="V2.A B1.Z)" +
           more + R"("/><line id="B3" joins="V2.T T1.E"/>)";
}

const std::string drained = R"(<path from="A" to="T"/>)";

TEST(ParkingBrake, DrainedByItsValve) {
    const Circuit circuit = braked("use=\"parking\"", "V2.P", valve(drained));
    EXPECT_EQ(rule(circuit), "parking-brake B1 pass lost-signal stopped\n");
    EXPECT_EQ(witness_of(circuit, "parking-brake", "B1"), "path: B1.Z>B2 V2.A>T B3 T1");
    EXPECT_EQ(rule(braked("", "V2.P", valve(drained))),
              "parking-brake B1 pass lost-signal stopped\n");
}

TEST(ParkingBrake, OnTheChargeLine) {
    const Circuit circuit = braked("use=\"both\"", "B1.Z", "");
    EXPECT_EQ(rule(circuit), "parking-brake B1 fail error lost-signal\n");
    EXPECT_EQ(witness_of(circuit, "parking-brake", "B1"), "path: P2>P G1 F1.A>B G2>B1.Z");
    EXPECT_EQ(rule(braked("", "V2.P", valve(R"(<path from="P" to="A"/>)"))),
              "parking-brake B1 fail error lost-signal\n");
}

// Nothing drains it, yet nothing gives it pressure either: what leaks lets the spring apply it.
TEST(ParkingBrake, ShutInAtRest) {
    EXPECT_EQ(rule(braked("", "V2.P", valve(""))), "parking-brake B1 pass lost-signal stopped\n");
}

TEST(ParkingBrake, KeptReleasedByAnAccumulator) {
    const Circuit circuit = braked("", "V2.P", R"(<accumulator id="A1"/>)" + valve("", " A1.A"));
    EXPECT_EQ(rule(circuit), "parking-brake B1 fail error lost-signal stopped\n");
    EXPECT_EQ(witness_of(circuit, "parking-brake", "B1"), "path: A1>A B2>B1.Z");
}

TEST(ParkingBrake, AppliedByPressure) {
    EXPECT_EQ(rule(braked(R"(applied="pressure" use="parking")", "V2.P", valve(drained))),
              "parking-brake B1 fail error\n");
    EXPECT_EQ(rule(braked(R"(applied="pressure")", "V2.P", valve(drained))),
              "parking-brake circuit not-applicable\n");
}

TEST(ParkingBrake, WithNothingAtItsPort) {
    EXPECT_EQ(rule(braked("use=\"parking\"", "", "")), "parking-brake B1 pass\n");
    EXPECT_EQ(rule(braked("use=\"service\"", "", "")), "parking-brake circuit not-applicable\n");
    EXPECT_EQ(rule(with({})), "parking-brake circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
