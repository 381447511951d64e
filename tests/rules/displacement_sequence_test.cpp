// The sound drive with a command of two stages. What is expected follows by hand from the design's
// words: the pump reaches full stroke before the motor is reduced.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const std::string& stages) {
    return verdicts_of(with({added("<command id=\"Z1\">" + stages + "</command>")}),
                       "displacement-sequence");
}

const std::string pump = R"(<stage of="P1" from="5 %" to="60 %"/>)";

TEST(DisplacementSequence, OneBehindTheOther) {
    EXPECT_EQ(rule(pump + R"(<stage of="M1" from="60 %" to="100 %"/>)"),
              "displacement-sequence M1 pass\n");
}

TEST(DisplacementSequence, Overlapping) {
    EXPECT_EQ(rule(pump + R"(<stage of="M1" from="55 %" to="100 %"/>)"),
              "displacement-sequence M1 fail warning\n");
    EXPECT_EQ(rule(pump + R"(<stage of="M1" from="55 %" to="100 %" overlap="yes"/>)"),
              "displacement-sequence M1 fail note\n");
    const std::string stages =
        "<command id=\"Z1\">" + pump + R"(<stage of="M1" from="55 %" to="100 %"/></command>)";
    EXPECT_EQ(witness_of(with({added(stages)}), "displacement-sequence", "M1"), "set: P1 M1");
}

TEST(DisplacementSequence, InTheSameDirection) {
    EXPECT_EQ(rule(R"(<stage of="P1" from="0 %" to="60 %" direction="forward"/>
                      <stage of="P1" from="0 %" to="100 %" direction="reverse"/>
                      <stage of="M1" from="60 %" to="100 %" direction="forward"/>)"),
              "displacement-sequence M1 pass\n");
    EXPECT_EQ(rule(R"(<stage of="P1" from="0 %" to="60 %" direction="forward"/>
                      <stage of="P1" from="0 %" to="100 %" direction="reverse"/>
                      <stage of="M1" from="60 %" to="100 %"/>)"),
              "displacement-sequence M1 fail warning\n");
}

TEST(DisplacementSequence, NotAskedOfOneStage) {
    EXPECT_EQ(rule(pump), "displacement-sequence circuit not-applicable\n");
    EXPECT_EQ(verdicts_of(with({}), "displacement-sequence"),
              "displacement-sequence circuit not-applicable\n");
}

// At full travel the motor is at half its displacement: 60 N.m ask for 94 bar there. A pump that is
// held at 80 bar can only give that with the motor less reduced.
TEST(DisplacementSequence, APumpThatIsHeldBackBeforeAReducedMotor) {
    const auto at_work = [](const std::string& limiter, const std::string& travel,
                            const std::string& overlap = "") {
        return testing::judged_at_work(
            {{R"(<pump id="P1")", R"(<pump id="P1" )" + limiter},
             {R"(displacement="80 cm3/rev")",
              R"(displacement="80 cm3/rev" min-displacement="40 cm3/rev" variable="yes")"},
             {R"(to="100 %"/></command>)",
              R"(to="50 %")" + overlap + R"(/><stage of="M1" from="50 %" to="100 %"/></command>)"},
             {R"(travel="100 %" torque="200 N.m")", "travel=\"" + travel + R"(" torque="60 N.m")"}},
            "displacement-sequence");
    };
    EXPECT_EQ(at_work("", "100 %"), "displacement-sequence M1 pass\n");
    const std::string limiter = R"(torque-limiter="80 N.m")";
    EXPECT_EQ(at_work(limiter, "100 %"), "displacement-sequence M1 fail warning at work\n");
    // With the whole motor, 47 bar, the limiter does not act.
    EXPECT_EQ(at_work(limiter, "50 %"), "displacement-sequence M1 pass\n");
    EXPECT_EQ(at_work(limiter, "40 %"), "displacement-sequence M1 pass\n");
    EXPECT_EQ(at_work(limiter, "100 %", R"( overlap="yes")"),
              "displacement-sequence M1 fail warning at work\n");
}

// A pump that its stages never take beyond four fifths is at its full stroke there.
TEST(DisplacementSequence, FullStrokeIsWhatTheStagesEndAt) {
    EXPECT_EQ(testing::judged_at_work(
                  {{R"(displacement="80 cm3/rev")",
                    R"(displacement="80 cm3/rev" min-displacement="40 cm3/rev" variable="yes")"},
                   {R"(to="100 %"/></command>)",
                    R"(to="50 %" end="80 %"/><stage of="M1" from="50 %" to="100 %"/></command>)"},
                   {R"( torque="200 N.m")", R"( torque="60 N.m")"}},
                  "displacement-sequence"),
              "displacement-sequence M1 pass\n");
}

}  // namespace
}  // namespace loopwright
