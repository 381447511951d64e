// Circuits that differ from the sound drive in how oil leaves its loop.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const char* const moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";
const Edit no_flushing{R"(<line id="FL" joins="V1.F R4.P"/>)", ""};
const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"};
const Edit side_a{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
                  "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A X1.A\""};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "loop-flushing");
}

TEST(LoopFlushing, OverTheFlushingValve) {
    EXPECT_EQ(judged({}), std::string("loop-flushing loop:P1 pass") + moving);
    // Driving forward side A is high, and the valve takes oil from B.
    EXPECT_EQ(witness_of(with({}), "loop-flushing", "loop:P1"),
              "path: P1.B>HB V1.B>F FL R4.P>T L1 K1.A>B L2 T1");
}

TEST(LoopFlushing, OverARestriction) {
    EXPECT_EQ(judged({no_flushing, room, side_a,
                      added(R"(<orifice id="X1" bore="1 mm"/><line id="X2" joins="X1.B T1.E"/>)")}),
              std::string("loop-flushing loop:P1 pass") + moving);
}

TEST(LoopFlushing, NotByLeakageAndReliefValvesAlone) {
    EXPECT_EQ(judged({no_flushing}), std::string("loop-flushing loop:P1 fail note") + moving);
    expect_at_frontier(witness_of(with({no_flushing}), "loop-flushing", "loop:P1"), "C1.B>A");
    EXPECT_EQ(judged({no_flushing,
                      room,
                      {"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
                       "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A X1.P\""},
                      added(R"(<relief-valve id="X1" setting="400 bar"/>
                               <line id="X2" joins="X1.T T1.E"/>)")}),
              std::string("loop-flushing loop:P1 fail note") + moving);
}

TEST(LoopFlushing, NotAskedOfAShortCircuitedLoop) {
    EXPECT_EQ(judged({{"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
                       "joins=\"P1.A M1.A R2.P R3.T C1.B V1.A P1.B M1.B R3.P R2.T C2.B V1.B\""},
                      {R"(<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B"/>)", ""}}),
              "loop-flushing circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
