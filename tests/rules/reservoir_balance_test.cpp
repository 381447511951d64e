// Circuits that differ from the sound drive in a second reservoir.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit other_reservoir{"joins=\"R1.T T1.R\"", "joins=\"R1.T T2.R\""};
const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"};

Edit second(const std::string& parts = "") {
    return added(R"(<reservoir id="T2" breather="yes" level-indicator="yes">
                    <port id="R"/><port id="B"/></reservoir>)" +
                 parts);
}

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "reservoir-balance");
}

TEST(ReservoirBalance, OneReservoir) {
    EXPECT_EQ(judged({}), "reservoir-balance T1 pass\n");
    // One without a line is none.
    EXPECT_EQ(judged({second()}), "reservoir-balance T1 pass\n");
}

TEST(ReservoirBalance, TheReturnEndsInAnotherOne) {
    const Circuit circuit = with({other_reservoir,
                                  {R"(<port id="R"/>)", ""},
                                  added(R"(<reservoir id="T2" breather="yes" level-indicator="yes">
                                           <port id="R"/></reservoir>)")});
    EXPECT_EQ(verdicts_of(circuit, "reservoir-balance"),
              "reservoir-balance T1 fail error\nreservoir-balance T2 pass\n");
    EXPECT_EQ(findings_of(circuit), "reservoir-balance T1 fail error\n");
    EXPECT_EQ(witness_of(circuit, "reservoir-balance", "T1"), "path: T1 S1 P2.S>P G1 R1.P>T G3 T2");
}

TEST(ReservoirBalance, JoinedOrDrawnFrom) {
    const std::string both = "reservoir-balance T1 pass\nreservoir-balance T2 pass\n";
    EXPECT_EQ(judged({other_reservoir, room, second(R"(<line id="X1" joins="T2.B T1.E"/>)")}),
              both);
    EXPECT_EQ(judged({other_reservoir, room,
                      second(R"(<strainer id="X1"/><line id="X2" joins="T2.B X1.A"/>
                                <line id="X3" joins="X1.B T1.E"/>)")}),
              both);
    // A check lets it back one way only, which is enough if it is the right one.
    EXPECT_EQ(judged({other_reservoir, room,
                      second(R"(<check-valve id="X1"/><line id="X2" joins="T2.B X1.A"/>
                                <line id="X3" joins="X1.B T1.E"/>)")}),
              both);
    EXPECT_EQ(judged({other_reservoir, room,
                      second(R"(<check-valve id="X1"/><line id="X2" joins="T2.B X1.B"/>
                                <line id="X3" joins="X1.A T1.E"/>)")}),
              "reservoir-balance T1 fail error\nreservoir-balance T2 pass\n");
}

TEST(ReservoirBalance, APumpBackCountsWhereItIsTurned) {
    const std::string pump = R"(<pump id="P9"/><line id="X2" joins="T2.B P9.S"/>
                                <line id="X3" joins="P9.P T1.E"/>)";
    EXPECT_EQ(
        judged(
            {other_reservoir, room, second(pump), {"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 P9\""}}),
        "reservoir-balance T1 pass\nreservoir-balance T2 pass\n");
    EXPECT_EQ(judged({other_reservoir, room, second(pump)}),
              "reservoir-balance T1 fail error\nreservoir-balance T2 pass\n");
}

}  // namespace
}  // namespace loopwright
