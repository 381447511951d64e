// A brake on the sound drive's charge line, behind a valve that the drive states open. In motion
// the flushing relief (18 bar), not the charge relief (24 bar), sets the pressure there: common
// practice, no source.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

constexpr const char* moving = " drive-forward drive-reverse overrun-forward overrun-reverse";

/// The drive with a brake of these attributes, its line as given behind the brake valve X1.
Circuit braked(const std::string& brake, const std::string& line = R"(joins="X1.A B1.Z")",
               const std::vector<Edit>& edits = {}, const std::string& more = "") {
    std::vector<Edit> all = {{R"(joins="F1.B C1.A C2.A")", R"(joins="F1.B C1.A C2.A X1.P")"},
                             {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                             {R"(joins="M1 D1")", R"(joins="M1 D1 B1")"},
                             added(R"(<brake id="B1" )" + brake + R"(/>
<directional-valve id="X1"><port id="P"/><port id="A"/><port id="T"/>
  <position id="on" rest="yes"><path from="A" to="T"/></position>
  <position id="off" in="drive-forward drive-reverse overrun-forward overrun-reverse">
    <path from="P" to="A"/></position></directional-valve>
<line id="Z2" joins="X1.T T1.E"/><line id="Z1" )" +
                                   line + "/>" + more)};
    all.insert(all.end(), edits.begin(), edits.end());
    return with(all);
}

std::string verdict(const std::string& outcome, const std::string& missing = "") {
    return "brake-release B1 " + outcome + moving + missing + '\n';
}

TEST(BrakeRelease, AgainstTheFlushingRelief) {
    const Circuit circuit = braked(R"(full-release-pressure="18 bar")");
    EXPECT_EQ(verdicts_of(circuit, "brake-release"), verdict("pass"));
    EXPECT_EQ(witness_of(circuit, "brake-release", "B1"), "path: P2>P G1 F1.A>B G2 X1.P>A Z1>B1.Z");
    EXPECT_EQ(verdicts_of(braked(R"(full-release-pressure="18.5 bar")"), "brake-release"),
              verdict("fail error"));
}

TEST(BrakeRelease, AgainstTheChargeReliefWhereNothingIsFlushed) {
    const std::vector<Edit> no_flushing = {{R"(<flushing-valve id="V1"/>)", ""},
                                           {" V1.A", ""},
                                           {" V1.B", ""},
                                           {R"(<line id="FL" joins="V1.F R4.P"/>)", ""}};
    const std::string line = R"(joins="X1.A B1.Z")";
    EXPECT_EQ(verdicts_of(braked(R"(full-release-pressure="24 bar")", line, no_flushing),
                          "brake-release"),
              verdict("pass"));
    EXPECT_EQ(verdicts_of(braked(R"(full-release-pressure="25 bar")", line, no_flushing),
                          "brake-release"),
              verdict("fail error"));
}

TEST(BrakeRelease, AReducingValveTakesItsPart) {
    const std::string line = R"(joins="X1.A X2.P")";
    const std::string reduced =
        R"(<reducing-valve id="X2" setting="12 bar"/><line id="Z3" joins="X2.A B1.Z"/>)";
    EXPECT_EQ(verdicts_of(braked(R"(full-release-pressure="12 bar")", line, {}, reduced),
                          "brake-release"),
              verdict("pass"));
    EXPECT_EQ(verdicts_of(braked(R"(full-release-pressure="13 bar")", line, {}, reduced),
                          "brake-release"),
              verdict("fail error"));
}

TEST(BrakeRelease, MissingData) {
    EXPECT_EQ(verdicts_of(braked(""), "brake-release"),
              verdict("inconclusive", " needs B1.full-release-pressure"));
    // The charge relief is known to be too low, whatever the flushing relief.
    const Edit unknown{R"( setting="18 bar")", ""};
    const std::string line = R"(joins="X1.A B1.Z")";
    EXPECT_EQ(
        verdicts_of(braked(R"(full-release-pressure="20 bar")", line, {unknown}), "brake-release"),
        verdict("inconclusive", " needs R4.setting"));
    EXPECT_EQ(
        verdicts_of(braked(R"(full-release-pressure="25 bar")", line, {unknown}), "brake-release"),
        verdict("fail error"));
}

TEST(BrakeRelease, NotAskedOfOthers) {
    EXPECT_EQ(verdicts_of(with({}), "brake-release"), "brake-release circuit not-applicable\n");
    EXPECT_EQ(verdicts_of(braked(R"(applied="pressure" full-release-pressure="18 bar")"),
                          "brake-release"),
              "brake-release circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
