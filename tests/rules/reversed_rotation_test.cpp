// The sound drive with senses of rotation. What is expected follows by hand from the design's
// words: seen at each one's own shaft end, and the ends face each other.
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

const Edit engine_left{R"(<engine id="E1")", R"(<engine id="E1" rotation="counter-clockwise")"};
const Edit engine_right{R"(<engine id="E1")", R"(<engine id="E1" rotation="clockwise")"};
const Edit pump_right{R"(<pump id="P2")", R"(<pump id="P2" rotation="clockwise")"};
const Edit behind_x1{"joins=\"E1 P1 P2\"", "joins=\"X1.out P1 P2\""};

std::string rule(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "reversed-rotation");
}
Edit gearbox(const std::string& attributes) {
    return added("<gearbox id=\"X1\" " + attributes + R"(/><shaft id="W3" joins="E1 X1.in"/>)");
}

TEST(ReversedRotation, TheEndsFaceEachOther) {
    EXPECT_EQ(rule({engine_left, pump_right}), "reversed-rotation P2 pass\n");
    EXPECT_EQ(rule({engine_right, pump_right}), "reversed-rotation P2 fail error\n");
    EXPECT_EQ(witness_of(with({engine_right, pump_right}), "reversed-rotation", "P2"),
              "set: E1 P2");
}

TEST(ReversedRotation, BehindGears) {
    EXPECT_EQ(rule({engine_left, pump_right, behind_x1, gearbox("sense=\"same\"")}),
              "reversed-rotation P2 pass\n");
    EXPECT_EQ(rule({engine_left, pump_right, behind_x1, gearbox("sense=\"opposite\"")}),
              "reversed-rotation P2 fail error\n");
    EXPECT_EQ(rule({engine_right, pump_right, behind_x1, gearbox("sense=\"opposite\"")}),
              "reversed-rotation P2 pass\n");
    EXPECT_EQ(rule({engine_left, pump_right, behind_x1, gearbox("")}),
              "reversed-rotation P2 inconclusive needs X1.sense\n");
}

TEST(ReversedRotation, APrimeMoverThatReverses) {
    const Edit motor{"<engine id=\"E1\"",
                     R"(<electric-motor id="E1" rotation="counter-clockwise" reversing="yes")"};
    EXPECT_EQ(rule({motor, pump_right}), "reversed-rotation P2 fail error\n");
}

TEST(ReversedRotation, NotAskedOfTwoWayPumpsNorWithoutBothWords) {
    const std::string none = "reversed-rotation circuit not-applicable\n";
    EXPECT_EQ(rule({engine_left}), none);
    EXPECT_EQ(rule({pump_right}), none);
    EXPECT_EQ(rule({engine_right, {"<pump id=\"P1\"", "<pump id=\"P1\" rotation=\"clockwise\""}}),
              none);
    // Nothing turns it.
    EXPECT_EQ(rule({engine_right, pump_right, {"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}), none);
}

}  // namespace
}  // namespace loopwright
