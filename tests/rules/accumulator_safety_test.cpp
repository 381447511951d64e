// An accumulator on the sound drive's gallery, where R1 limits its pressure over the filter. What
// is expected follows by hand from the design's words: isolation, relief, discharge, and a gauge.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "accumulator-safety"); }

Circuit on_gallery(const std::string& joined, const std::string& parts) {
    return with({{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                 {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A " + joined + "\""},
                 added(R"(<accumulator id="A1"/><gauge id="I1"/>)" + parts)});
}

const std::string discharge =
    R"(<shut-off-valve id="H1" position="closed"/><line id="G5" joins="H1.B T1.E"/>)";

TEST(AccumulatorSafety, WithDischargeReliefAndGauge) {
    const Circuit circuit = on_gallery("A1.A I1.P H1.A", discharge);
    EXPECT_EQ(rule(circuit), "accumulator-safety A1 pass stopped\n");
    EXPECT_EQ(witness_of(circuit, "accumulator-safety", "A1"), "path: A1>A G2 H1.A>B G5 T1");
}

TEST(AccumulatorSafety, StaysCharged) {
    const Circuit circuit = on_gallery("A1.A I1.P", "");
    EXPECT_EQ(rule(circuit), "accumulator-safety A1 fail error stopped\n");
    expect_at_frontier(witness_of(circuit, "accumulator-safety", "A1"), "R1.P>T");
}

TEST(AccumulatorSafety, WithoutAGauge) {
    EXPECT_EQ(rule(on_gallery("A1.A H1.A", discharge)),
              "accumulator-safety A1 fail warning stopped\n");
    // One of temperature does not tell.
    EXPECT_EQ(rule(on_gallery("A1.A H1.A I2.P",
                              discharge + R"(<sensor id="I2" measures="temperature"/>)")),
              "accumulator-safety A1 fail warning stopped\n");
    EXPECT_EQ(rule(on_gallery("A1.A H1.A I2.P", discharge + R"(<sensor id="I2"/>)")),
              "accumulator-safety A1 pass stopped\n");
}

// A valve that shuts it off parts it from the gallery's relief valve; it needs one of its own.
TEST(AccumulatorSafety, BehindAShutOffValve) {
    const std::string isolating =
        R"(<shut-off-valve id="H2"/><line id="G6" joins="H2.B A1.A I1.P"/>)";
    EXPECT_EQ(rule(on_gallery("H2.A", isolating)), "accumulator-safety A1 fail warning stopped\n");
    EXPECT_EQ(rule(on_gallery("H2.A", R"(<shut-off-valve id="H2"/>
                 <relief-valve id="R9" setting="30 bar"/><line id="G6" joins="H2.B A1.A I1.P R9.P"/>
                 <line id="G7" joins="R9.T T1.E"/>)")),
              "accumulator-safety A1 pass stopped\n");
}

TEST(AccumulatorSafety, NotAskedWithoutOne) {
    EXPECT_EQ(rule(with({})), "accumulator-safety circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
