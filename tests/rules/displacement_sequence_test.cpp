// The sound drive with a command of two stages. What is expected follows by hand from the design's
// words: the pump reaches full stroke before the motor is reduced.
#include <gtest/gtest.h>

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

}  // namespace
}  // namespace loopwright
