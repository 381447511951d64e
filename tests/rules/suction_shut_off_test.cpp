// Circuits that differ from the sound drive in a valve in its suction line.
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

/// A valve between the reservoir and the charge pump.
std::vector<Edit> valve(const std::string& part, const std::string& more = "") {
    return {{"joins=\"T1.S P2.S\"", "joins=\"T1.S H1.A\""},
            added(part + R"(<line id="S2" joins="H1.B P2.S"/>)" + more)};
}

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "suction-shut-off");
}

TEST(SuctionShutOff, LockedOpen) {
    EXPECT_EQ(judged(valve(R"(<shut-off-valve id="H1" locked="yes"/>)")),
              "suction-shut-off H1 pass\n");
    EXPECT_EQ(witness_of(with(valve(R"(<shut-off-valve id="H1" locked="yes"/>)")),
                         "suction-shut-off", "H1"),
              "path: T1 S1 H1.A>B S2 P2.S");
}

TEST(SuctionShutOff, CanBeClosedOrIsLockedShut) {
    const char* const failed = "suction-shut-off H1 fail error\n";
    EXPECT_EQ(judged(valve(R"(<shut-off-valve id="H1"/>)")), failed);
    EXPECT_EQ(judged(valve(R"(<shut-off-valve id="H1" position="closed" locked="yes"/>)")), failed);
    EXPECT_EQ(judged(valve(R"(<quick-coupling id="H1"/>)")), failed);
}

TEST(SuctionShutOff, ASwitchCountsOnlyWithTheInterlock) {
    EXPECT_EQ(judged(valve(R"(<shut-off-valve id="H1" switched="yes"/>)",
                           R"(<interlock when="H1 closed" prevents="start E1"/>)")),
              "suction-shut-off H1 pass\n");
    EXPECT_EQ(judged(valve(R"(<shut-off-valve id="H1" switched="yes"/>)")),
              "suction-shut-off H1 fail error\n");
}

TEST(SuctionShutOff, BehindAFilterOnEitherWayRound) {
    const Edit filtered{"joins=\"T1.S P2.S\"", "joins=\"T1.S F2.A\""};
    const std::string parts = R"(<filter id="F2"/><shut-off-valve id="H1"/>)";
    EXPECT_EQ(judged({filtered, added(parts + R"(<line id="S2" joins="F2.B H1.B"/>
                                                 <line id="S3" joins="H1.A P2.S"/>)")}),
              "suction-shut-off H1 fail error\n");
    // On a dead end it shuts nothing off.
    EXPECT_EQ(judged({filtered, added(parts + R"(<line id="S2" joins="F2.B H1.B P2.S"/>
                                                 <gauge id="X1"/><line id="S3" joins="H1.A X1.P"/>)")}),
              "suction-shut-off circuit not-applicable\n");
}

TEST(SuctionShutOff, NotAskedOfOtherLines) {
    EXPECT_EQ(judged({{"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P H1.A\""},
                      added(R"(<shut-off-valve id="H1"/><line id="X1" joins="H1.B F1.A"/>)")}),
              "suction-shut-off circuit not-applicable\n");
    // Between two reservoirs, one of which feeds the pump.
    EXPECT_EQ(judged({{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                      added(R"(<reservoir id="T2"><port id="B"/></reservoir>
                               <shut-off-valve id="H1"/><line id="X1" joins="T2.B H1.A"/>
                               <line id="X2" joins="H1.B T1.E"/>)")}),
              "suction-shut-off circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
