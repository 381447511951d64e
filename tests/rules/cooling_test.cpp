// Circuits that differ from the sound drive in where its cooler stands.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/generated_circuit.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::Edit;
using testing::edited;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const char* const moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";
const Edit no_cooler{R"(<cooler id="K1" bypass="1.5 bar"/>)", R"(<heater id="K1"/>)"};

std::string judged(const std::vector<Edit>& edits) { return verdicts_of(with(edits), "cooling"); }

TEST(Cooling, InTheDrain) {
    EXPECT_EQ(judged({}), std::string("cooling circuit pass") + moving);
    // Not over the flushing valve: what leaks into a housing passes the cooler too.
    EXPECT_EQ(witness_of(with({}), "cooling", "circuit"), "path: P1.A>L L1 K1.A>B");
}

TEST(Cooling, InTheChargeLine) {
    EXPECT_EQ(judged({no_cooler,
                      {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P K2.A\""},
                      added(R"(<cooler id="K2"/><line id="X1" joins="K2.B F1.A"/>)")}),
              std::string("cooling circuit pass") + moving);
}

TEST(Cooling, InTheLoop) {
    EXPECT_EQ(judged({no_cooler,
                      {"joins=\"P1.A M1.A R2.P R3.T C1.B V1.A\"",
                       "joins=\"P1.A K2.A R2.P R3.T C1.B V1.A\""},
                      added(R"(<cooler id="K2"/><line id="X1" joins="K2.B M1.A"/>)")}),
              std::string("cooling circuit pass") + moving);
}

TEST(Cooling, NoCoolerOrOneBehindTheReservoir) {
    EXPECT_EQ(judged({no_cooler}), std::string("cooling circuit fail note") + moving);
    expect_at_frontier(witness_of(with({no_cooler}), "cooling", "circuit"), "C1.B>A");
    EXPECT_EQ(judged({no_cooler,
                      {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/><port id="F"/>)"},
                      added(R"(<cooler id="K2"/><line id="X1" joins="T1.E K2.A"/>
                               <line id="X2" joins="K2.B T1.F"/>)")}),
              std::string("cooling circuit fail note") + moving);
}

// One drive without a cooler is enough, whichever stands first in the file.
TEST(Cooling, OfTwoDrivesApartBothNeedOne) {
    for (const char* const drive : {"0", "1"}) {
        const std::string cooler =
            std::string("<cooler id=\"K") + drive +
            R"(" title="oil cooler" capacity="12 kW" temperature-difference="30 K" bypass="1.5 bar"/>)";
        const std::string heater = std::string("<heater id=\"K") + drive + "\"/>";
        EXPECT_EQ(verdicts_of(circuit_from(edited(testing::many_loops(30), {{cooler, heater}})),
                              "cooling"),
                  std::string("cooling circuit fail note") + moving);
    }
    EXPECT_EQ(verdicts_of(circuit_from(testing::many_loops(30)), "cooling"),
              std::string("cooling circuit pass") + moving);
}

TEST(Cooling, NothingToAskWithoutALoop) {
    EXPECT_EQ(
        judged({{"joins=\"P1.B M1.B R3.P R2.T C2.B V1.B\"", "joins=\"P1.B R3.P R2.T C2.B V1.B\""}}),
        "cooling circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
