// Circuits that differ from the sound drive in one thing. What is expected follows by hand from the
// design's words: a charge line that is open to a reservoir by a way that holds no pressure.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::Edit;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"};
const Edit from_gallery{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A H1.A\""};

/// A valve between the gallery and the reservoir.
Circuit valve(const std::string& part) {
    return with({room, from_gallery, added(part + R"(<line id="G4" joins="H1.B T1.E"/>)")});
}

TEST(ChargeVented, HoldsItsPressure) {
    EXPECT_EQ(verdicts_of(with({}), "charge-vented"),
              std::string("charge-vented loop:P1 pass") + all_running);
    EXPECT_EQ(verdicts_of(valve(R"(<shut-off-valve id="H1" position="closed"/>)"), "charge-vented"),
              std::string("charge-vented loop:P1 pass") + all_running);
    // A check with a spring holds its pressure; one without does not.
    EXPECT_EQ(
        verdicts_of(valve(R"(<check-valve id="H1" opening-pressure="2 bar"/>)"), "charge-vented"),
        std::string("charge-vented loop:P1 pass") + all_running);
}

// What the sides lack follows from it.
TEST(ChargeVented, ACheckWithoutASpringIsTheOnlyFinding) {
    const Circuit circuit = valve(R"(<check-valve id="H1"/>)");
    EXPECT_EQ(findings_of(circuit), std::string("charge-vented loop:P1 fail error") + all_running);
    EXPECT_EQ(witness_of(circuit, "charge-vented", "loop:P1"),
              "path: P2>P G1 F1.A>B G2 H1.A>B G4 T1");
}

// An open valve lets oil in as well, past the filter.
TEST(ChargeVented, AnOpenValve) {
    EXPECT_EQ(findings_of(valve(R"(<shut-off-valve id="H1"/>)")),
              std::string("charge-vented loop:P1 fail error") + all_running +
                  "filtration loop:P1 fail error" + all_running);
}

TEST(ChargeVented, InOnePositionOnly) {
    const Circuit circuit = valve(
        R"(<directional-valve id="H1"><port id="A"/><port id="B"/><position id="a" rest="yes"/>
            <position id="b"><path from="A" to="B"/></position></directional-valve>)");
    EXPECT_EQ(verdicts_of(circuit, "charge-vented"),
              "charge-vented loop:P1 fail error neutral[H1=b] drive-forward[H1=b] "
              "drive-reverse[H1=b] overrun-forward[H1=b] overrun-reverse[H1=b]\n");
}

TEST(ChargeVented, NotAskedWhereNothingDelivers) {
    EXPECT_EQ(verdicts_of(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}), "charge-vented"),
              std::string("charge-vented loop:P1 not-applicable") + all_running);
}

}  // namespace
}  // namespace loopwright
