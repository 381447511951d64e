// What is expected follows by hand: a line between valves that shut tightly, without a relief.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

constexpr const char* sound = "trapped-volume circuit pass\n";

/// Two valves in the charge line, behind the filter, with more parts.
std::string between(const std::string& valves, const std::string& more = "",
                    const std::string& joined = "") {
    return verdicts_of(with({{R"(<line id="G2" joins="F1.B C1.A C2.A"/>)",
                              R"(<line id="G2" joins="F1.B H1.A"/><line id="G4" joins="H1.B H2.A)" +
                                  joined + R"("/><line id="G5" joins="H2.B C1.A C2.A"/>)"},
                             {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                             added(valves + more)}),
                       "trapped-volume");
}

TEST(TrappedVolume, MachinesLeak) { EXPECT_EQ(verdicts_of(with({}), "trapped-volume"), sound); }

TEST(TrappedVolume, BetweenTwoHandValves) {
    const std::string valves = R"(<shut-off-valve id="H1"/><shut-off-valve id="H2"/>)";
    EXPECT_EQ(between(valves), "trapped-volume G4 fail warning\n");
    // A relief, an accumulator, or one of them locked open.
    EXPECT_EQ(
        between(valves,
                R"(<relief-valve id="R9" setting="60 bar"/><line id="G6" joins="R9.T T1.E"/>)",
                " R9.P"),
        sound);
    EXPECT_EQ(between(valves, R"(<accumulator id="A1"/>)", " A1.A"), sound);
    EXPECT_EQ(between(R"(<shut-off-valve id="H1" locked="yes"/><shut-off-valve id="H2"/>)"), sound);
    EXPECT_EQ(between(R"(<shut-off-valve id="H1"/><shut-off-valve id="H2" locked="yes"/>)"), sound);
    EXPECT_EQ(between(R"(<shut-off-valve id="H1" locked="yes" position="closed"/>
                      <shut-off-valve id="H2"/>)"),
              "trapped-volume G4 fail warning\n");
    // A coupling that closes is a hand valve; one that does not is a piece of the line.
    EXPECT_EQ(between(R"(<quick-coupling id="H1"/><shut-off-valve id="H2"/>)"),
              "trapped-volume G4 fail warning\n");
    EXPECT_EQ(between(R"(<quick-coupling id="H1" valves="none"/><shut-off-valve id="H2"/>)"),
              sound);
}

TEST(TrappedVolume, ChecksAndSpools) {
    // Behind a check, before a hand valve; the other way round it gets out over the filter.
    EXPECT_EQ(between(R"(<check-valve id="H1"/><shut-off-valve id="H2"/>)"),
              "trapped-volume G4 fail warning\n");
    EXPECT_EQ(between(R"(<shut-off-valve id="H1"/><check-valve id="H2"/>)"), sound);
    EXPECT_EQ(between(R"(<directional-valve id="H1"><port id="A"/><port id="B"/>
                      <position id="o" rest="yes"/><position id="i"><path from="A" to="B"/>
                      </position></directional-valve><shut-off-valve id="H2"/>)"),
              sound);
}

TEST(TrappedVolume, WitnessNamesWhatShutsItIn) {
    const Circuit circuit = with(
        {{R"(joins="F1.B C1.A C2.A")", R"(joins="F1.B C1.A C2.A H1.A")"},
         added(R"(<shut-off-valve id="H1"/><brake id="B1"/><line id="Z1" joins="H1.B B1.Z"/>)")});
    EXPECT_EQ(verdicts_of(circuit, "trapped-volume"), "trapped-volume Z1 fail warning\n");
    EXPECT_EQ(witness_of(circuit, "trapped-volume", "Z1"), "set: Z1 H1.B B1.Z");
}

TEST(TrappedVolume, NothingToAskWithoutLines) {
    EXPECT_EQ(verdicts_of(circuit_from(R"(<circuit format="1"><engine id="E1"/></circuit>)"),
                          "trapped-volume"),
              "trapped-volume circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
