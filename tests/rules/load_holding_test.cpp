// The sound drive with a load that can drive its motor. What is expected follows by hand from the
// design's words: a brake on the load's side holds it, whatever becomes of the loop.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "load-holding"); }

const std::string passes = "load-holding D1 pass\n";
const std::string fails = "load-holding D1 fail error\n";
const Edit overrunning{R"(<load id="D1")", R"(<load overrunning="yes" id="D1")"};

Circuit with_brake(const std::string& attributes) {
    return with({overrunning,
                 {"joins=\"M1 D1\"", "joins=\"M1 B1 D1\""},
                 added("<brake id=\"B1\" " + attributes + "/>")});
}
/// A valve between side A and the motor.
Circuit with_valve(const std::string& valve) {
    return with({overrunning,
                 {"joins=\"P1.A M1.A R2.P", "joins=\"P1.A Q1.A R2.P"},
                 added(valve + R"(<line id="HC" joins="Q1.B M1.A"/>)")});
}

TEST(LoadHolding, ByABrakeThatASpringApplies) {
    EXPECT_EQ(rule(with_brake("")), passes);
    EXPECT_EQ(witness_of(with_brake(""), "load-holding", "D1"), "set: D1 B1");
    EXPECT_EQ(rule(with_brake("use=\"both\"")), passes);
    EXPECT_EQ(rule(with_brake("use=\"service\"")), fails);
    EXPECT_EQ(rule(with_brake("applied=\"pressure\" use=\"parking\"")), fails);
    EXPECT_EQ(rule(with({overrunning})), fails);
    EXPECT_EQ(witness_of(with({overrunning}), "load-holding", "D1"), "set: D1 M1");
}

TEST(LoadHolding, TheBrakeStandsBehindTheGearbox) {
    EXPECT_EQ(rule(with({overrunning,
                         {"joins=\"M1 D1\"", "joins=\"M1 B1 X1.in\""},
                         added(R"(<brake id="B1"/><gearbox id="X1"/>
                                  <shaft id="W3" joins="X1.out D1"/>)")})),
              passes);
}

TEST(LoadHolding, ByAValveAtTheMotor) {
    EXPECT_EQ(rule(with_valve(R"(<counterbalance-valve id="Q1" setting="200 bar"/>)")), passes);
    EXPECT_EQ(rule(with_valve(R"(<check-valve id="Q1" pilot="opens"/>)")), passes);
    // A check that nothing opens, and one that stands the other way round, are no holding valves.
    EXPECT_EQ(rule(with_valve(R"(<check-valve id="Q1"/>)")), fails);
    EXPECT_EQ(rule(with_valve(R"(<throttle-check id="Q1"/>)")), fails);
}

// It limits the pressure of the side; it holds nothing when the loop fails.
TEST(LoadHolding, NotByAReliefValveWithACheck) {
    EXPECT_EQ(rule(with({overrunning,
                         {R"(id="R2" setting="380 bar")",
                          R"(id="R2" setting="380 bar" make-up-check="yes")"}})),
              fails);
}

TEST(LoadHolding, NotAskedOfALoadThatDoesNotDrive) {
    EXPECT_EQ(rule(with({})), "load-holding circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
