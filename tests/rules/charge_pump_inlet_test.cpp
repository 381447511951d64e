// Circuits that differ from the sound drive in the suction line of its charge pump.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

/// The sound drive with a part in the suction line.
Circuit drawing_through(const std::string& part) {
    return with({{R"(<line id="S1" joins="T1.S P2.S"/>)",
                  part + R"(<line id="S1" joins="T1.S H1.A"/><line id="S2" joins="H1.B P2.S"/>)"}});
}

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "charge-pump-inlet"); }

const std::string pass = std::string("charge-pump-inlet P2 pass") + all_running;
const std::string warning = std::string("charge-pump-inlet P2 fail warning") + all_running;
const std::string error = std::string("charge-pump-inlet P2 fail error") + all_running;

TEST(ChargePumpInlet, StraightFromTheReservoir) {
    EXPECT_EQ(verdict(with({})), pass);
    EXPECT_EQ(witness_of(with({}), "charge-pump-inlet", "P2"), "path: T1 S1 P2.S");
}

TEST(ChargePumpInlet, AValveIsLockedOrReported) {
    const Circuit unlocked = drawing_through(R"(<shut-off-valve id="H1"/>)");
    EXPECT_EQ(verdict(unlocked), warning);
    EXPECT_EQ(witness_of(unlocked, "charge-pump-inlet", "P2"), "path: T1 S1 H1.A>B S2 P2.S");
    EXPECT_EQ(verdict(drawing_through(R"(<shut-off-valve id="H1" locked="yes"/>)")), pass);
    EXPECT_EQ(verdict(drawing_through(R"(<shut-off-valve id="H1" switched="yes"/>)")), pass);
}

TEST(ChargePumpInlet, AMeshHasABypassOrAnIndicator) {
    EXPECT_EQ(verdict(drawing_through(R"(<strainer id="H1"/>)")), warning);
    EXPECT_EQ(verdict(drawing_through(R"(<strainer id="H1" bypass="0.2 bar"/>)")), pass);
    EXPECT_EQ(verdict(drawing_through(R"(<filter id="H1"/>)")), warning);
    EXPECT_EQ(verdict(drawing_through(R"(<filter id="H1" clogging-indicator="visual"/>)")), pass);
    EXPECT_EQ(verdict(drawing_through(R"(<cooler id="H1"/>)")), pass);
}

TEST(ChargePumpInlet, NoWayFromAReservoir) {
    const Circuit shut = drawing_through(R"(<shut-off-valve id="H1" position="closed"/>)");
    EXPECT_EQ(verdict(shut), error);
    expect_at_frontier(witness_of(shut, "charge-pump-inlet", "P2"), "H1.A>B");
    const Circuit turned = drawing_through(R"(<check-valve id="H2"/><check-valve id="H1"/>
        <line id="S3" joins="H2.A H2.B"/>)");
    EXPECT_EQ(verdict(turned), pass);
    EXPECT_EQ(verdict(with({{"joins=\"T1.S P2.S\"", "joins=\"P2.S H1.A\""},
                            added(R"(<check-valve id="H1"/><line id="S2" joins="H1.B T1.S"/>)")})),
              error);
}

// A second way makes the first one safe.
TEST(ChargePumpInlet, OneSafeWayIsEnough) {
    EXPECT_EQ(verdict(with({{R"(<line id="S1" joins="T1.S P2.S"/>)",
                             R"(<shut-off-valve id="H1"/><strainer id="H2" bypass="0.2 bar"/>
                                <line id="S1" joins="T1.S H1.A H2.A"/>
                                <line id="S2" joins="H1.B H2.B P2.S"/>)"}})),
              pass);
}

TEST(ChargePumpInlet, NothingToAskWithoutACandidate) {
    EXPECT_EQ(verdict(with({{"joins=\"P2.P R1.P F1.A\"", "joins=\"R1.P F1.A\""}})),
              "charge-pump-inlet circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
