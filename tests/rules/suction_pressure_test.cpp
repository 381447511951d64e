// Air at 500 m: 95461.3 Pa (python3-fluids 1.0.22, ATMOSPHERE_1976(500).P). Laminar, the line loses
// 128 mu L Q / (pi d^4) (Hagen and Poiseuille).
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

std::string drawing_by(const std::string& line) {
    return judged_at_work({{R"( bore="38 mm" length="0.8 m")", line}}, "suction-pressure");
}

// VG 46 is so thick at 0 degC that the cold start decides; by the network's own friction, tested
// against python3-fluids, the loss there is some 0.06 bar.
TEST(SuctionPressure, AtTheColdStart) {
    EXPECT_EQ(judged_at_work({}, "suction-pressure"), "suction-pressure P2 pass at cold-start\n");
    const double inlet = figures_at_work({}, "suction-pressure", "P2").measured.si;
    EXPECT_LT(inlet, 95461.3);
    EXPECT_GT(inlet, 95461.3 - 0.1e5);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "suction-pressure", "P2"), "set: P2>S");
}

TEST(SuctionPressure, StarvedAtTheColdStart) {
    EXPECT_EQ(drawing_by(R"( bore="38 mm" length="4 m")"),
              "suction-pressure P2 fail error at cold-start\n");
}

// The loss at the cold start in proportion to the length: without turbulence there is nothing else.
TEST(SuctionPressure, TheLossIsThatOfALaminarPipe) {
    const auto lost = [](const std::string& length) {
        return 95461.3 - figures_at_work({{R"(length="0.8 m")", "length=\"" + length + "\""}},
                                         "suction-pressure", "P2")
                             .measured.si;
    };
    EXPECT_NEAR(lost("1.6 m") / lost("0.8 m"), 2.0, 1e-3);
}

// At 3000 m the air has 70121 Pa (published-values C-24, US Standard Atmosphere 1976), less than
// the 0.8 bar asked for.
TEST(SuctionPressure, HighUpTheAirIsThin) {
    EXPECT_EQ(judged_at_work({{R"(altitude="500 m")", R"(altitude="3000 m")"}}, "suction-pressure"),
              "suction-pressure P2 fail error at cold-start\n");
    const Edit sea_level{R"(altitude="500 m" )", ""};
    EXPECT_EQ(judged_at_work({sea_level}, "suction-pressure"),
              "suction-pressure P2 pass at cold-start\n");
}

TEST(SuctionPressure, Missing) {
    EXPECT_EQ(drawing_by(R"( bore="38 mm")"),
              "suction-pressure P2 inconclusive at work needs S1.length\n");
    EXPECT_EQ(judged_at_work({{R"( inlet-pressure="0.8 bar abs")", ""}}, "suction-pressure"),
              "suction-pressure P2 inconclusive at work needs P2.inlet-pressure\n");
}

}  // namespace
}  // namespace loopwright
