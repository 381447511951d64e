// What is expected follows by hand from the design's words: a port that no line joins.
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

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "unconnected-port"); }

TEST(UnconnectedPort, NoneInTheSoundDrive) {
    EXPECT_EQ(rule(with({})), "unconnected-port circuit pass\n");
}

TEST(UnconnectedPort, OfAMotor) {
    const Circuit circuit = with({{"joins=\"P1.A M1.A R2.P", "joins=\"P1.A R2.P"}});
    EXPECT_EQ(rule(circuit), "unconnected-port M1.A fail error\n");
    EXPECT_EQ(witness_of(circuit, "unconnected-port", "M1.A"), "set: M1>A");
}

// One case port drains the housing; a second one that is left is a plug forgotten.
TEST(UnconnectedPort, CasePorts) {
    EXPECT_EQ(rule(with({{"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T P1.L K1.A\""}})),
              "unconnected-port M1.L fail error\n");
    EXPECT_EQ(rule(with({{"80 cm3/rev\" drain=\"external\"",
                          "80 cm3/rev\" drain=\"external\" case-ports=\"2\""},
                         {"M1.L P1.L", "M1.L1 P1.L"}})),
              "unconnected-port M1.L2 fail warning\n");
}

TEST(UnconnectedPort, OfAValve) {
    EXPECT_EQ(rule(circuit_with(R"(<relief-valve id="R1" drain="external"/>)")),
              "unconnected-port R1.P fail error\nunconnected-port R1.T fail error\n"
              "unconnected-port R1.Y fail error\n");
    EXPECT_EQ(rule(circuit_with(R"(<check-valve id="C1" pilot="opens"/><check-valve id="C2"/>
                                   <line id="G1" joins="C1.A C2.A"/>
                                   <line id="G2" joins="C1.B C2.B"/>)")),
              "unconnected-port C1.X fail warning\n");
}

TEST(UnconnectedPort, OfWhatOnlyJoinsClosesOrShows) {
    EXPECT_EQ(rule(circuit_with(R"(<gauge id="I1"/><plug id="O1"/><breather id="O2"/>
                                   <junction id="J1"><port id="a"/></junction>
                                   <reservoir id="T1"><port id="S"/></reservoir>)")),
              "unconnected-port I1.P fail warning\nunconnected-port O1.P fail warning\n"
              "unconnected-port O2.P fail warning\nunconnected-port J1.a fail warning\n"
              "unconnected-port T1.S fail warning\n");
    EXPECT_EQ(rule(circuit_with(R"(<accumulator id="A1"/>)")),
              "unconnected-port A1.A fail error\n");
}

TEST(UnconnectedPort, NotAskedOfMeasuringPointsAndFreeCouplings) {
    EXPECT_EQ(rule(circuit_with(R"(<measuring-point id="I1"/><quick-coupling id="Q1"/>
                                   <quick-coupling id="Q2" joined="no" valves="none"/>)")),
              "unconnected-port circuit not-applicable\n");
    EXPECT_EQ(rule(circuit_with(R"(<quick-coupling id="Q1" valves="none"/>)")),
              "unconnected-port Q1.A fail error\nunconnected-port Q1.B fail error\n");
}

// Joined inside its assembly, or to the assembly's port from outside, is joined.
TEST(UnconnectedPort, InsideAnAssembly) {
    EXPECT_EQ(rule(circuit_with(R"(<assembly id="U1"><check-valve id="C1"/><check-valve id="C2"/>
                                     <line id="G1" joins="C1.B C2.A"/>
                                     <port id="A" of="C1.A"/><port id="B" of="C2.B"/></assembly>
                                   <line id="G2" joins="U1.A U1.B"/>)")),
              "unconnected-port circuit pass\n");
}

}  // namespace
}  // namespace loopwright
