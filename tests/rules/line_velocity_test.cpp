// v = 4 Q / (pi d2), the definition. 170.4 L/min through 25 mm run at 5.786 m/s, 43.2 L/min through
// 38 mm at 0.635 m/s.
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::at_work;
using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

double velocity(double litres_a_minute, double millimetres) {
    const double bore = 1e-3 * millimetres;
    return 4.0 * litres_a_minute * 1e-3 / 60.0 / (std::numbers::pi * bore * bore);
}

std::string line_in(const std::string& verdicts, const std::string& line) {
    const auto at = verdicts.find("line-velocity " + line + " ");
    return at == std::string::npos ? "" : verdicts.substr(at, verdicts.find('\n', at) - at);
}

std::string judged_line(const std::vector<Edit>& edits, const std::string& line) {
    return line_in(judged_at_work(edits, "line-velocity"), line);
}

Edit bore_of_a(const std::string& bore) {
    return {R"(C1.B V1.A" function="working" bore="25 mm")",
            R"(C1.B V1.A" function="working")" + bore};
}

TEST(LineVelocity, OfAWorkingLine) {
    EXPECT_EQ(judged_line({}, "HA"), "line-velocity HA pass at work");
    EXPECT_NEAR(figures_at_work({}, "line-velocity", "HA").measured.si, velocity(170.4, 25.0),
                1e-6);
    EXPECT_EQ(judged_line({bore_of_a(R"( bore="24 mm")")}, "HA"),
              "line-velocity HA fail warning at work");
    EXPECT_EQ(testing::witness_of(at_work({}), "line-velocity", "HA"), "path: P1.A>HA>M1.A");
}

TEST(LineVelocity, OfASuctionLine) {
    EXPECT_EQ(judged_line({}, "S1"), "line-velocity S1 pass at work");
    EXPECT_NEAR(figures_at_work({}, "line-velocity", "S1").measured.si, velocity(43.2, 38.0), 1e-6);
    const Edit narrow{R"(bore="38 mm")", R"(bore="27 mm")"};
    EXPECT_EQ(judged_line({narrow}, "S1"), "line-velocity S1 fail warning at work");
    // Not declared, its joins tell.
    const Edit silent{R"( function="suction")", ""};
    EXPECT_EQ(judged_line({narrow, silent}, "S1"), "line-velocity S1 fail warning at work");
}

// 43.2 L/min through 15 mm run at 4.07 m/s.
TEST(LineVelocity, OfAReturnLine) {
    const Edit narrow{R"(joins="K1.B T1.D" function="drain" bore="20 mm")",
                      R"(joins="K1.B T1.D" function="drain" bore="15 mm")"};
    EXPECT_EQ(judged_line({}, "L2"), "line-velocity L2 pass at work");
    EXPECT_EQ(judged_line({narrow}, "L2"), "line-velocity L2 fail warning at work");
    const Edit silent{R"(joins="K1.B T1.D" function="drain" bore="20 mm")",
                      R"(joins="K1.B T1.D" bore="15 mm")"};
    EXPECT_EQ(judged_line({silent}, "L2"), "line-velocity L2 fail warning at work");
    // What runs so fast under pressure is no finding.
    const Edit charge{R"(joins="F1.B C1.A C2.A" bore="16 mm")",
                      R"(joins="F1.B C1.A C2.A" bore="15 mm")"};
    EXPECT_EQ(judged_line({charge}, "G2"), "line-velocity G2 pass at work");
}

TEST(LineVelocity, Missing) {
    EXPECT_EQ(judged_line({bore_of_a("")}, "HA"),
              "line-velocity HA inconclusive at work needs HA.bore");
}

// In no line without a bore does nothing flow: G3 behind the charge relief, which stays shut.
TEST(LineVelocity, WhereNothingFlowsNoBoreIsMissed) {
    EXPECT_EQ(judged_line({{R"(joins="R1.T T1.R" bore="20 mm")", R"(joins="R1.T T1.R")"}}, "G3"),
              "");
}

}  // namespace
}  // namespace loopwright
