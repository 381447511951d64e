// What is expected follows by hand from the design's words: a component that no oil or shaft
// reaches.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_with;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "isolated-part"); }

TEST(IsolatedPart, NoneInTheSoundDrive) {
    EXPECT_EQ(rule(with({})), "isolated-part circuit pass\n");
}

TEST(IsolatedPart, AValveAndALoad) {
    const Circuit circuit = with({added(R"(<relief-valve id="R9"/><load id="D9"/>)")});
    EXPECT_EQ(rule(circuit), "isolated-part R9 fail warning\nisolated-part D9 fail warning\n");
    EXPECT_EQ(witness_of(circuit, "isolated-part", "R9"), "set: R9");
}

TEST(IsolatedPart, OneOfTheTwoIsEnough) {
    EXPECT_EQ(rule(circuit_with(R"(<engine id="E1"/><pump id="P1"/>
                                   <shaft id="W1" joins="E1 P1"/>)")),
              "isolated-part circuit pass\n");
    EXPECT_EQ(rule(circuit_with(R"(<pump id="P1"/><reservoir id="T1"><port id="S"/></reservoir>
                                   <line id="S1" joins="T1.S P1.S"/>)")),
              "isolated-part circuit pass\n");
}

TEST(IsolatedPart, NotAskedOfInstrumentsPlugsAndBreathers) {
    EXPECT_EQ(rule(circuit_with(R"(<gauge id="I1"/><level-indicator id="I2"/><plug id="O1"/>
                                   <breather id="O2"/><tachometer id="I3"/>)")),
              "isolated-part circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
