// The pump's 71 cm3/rev at 2400 rpm are 170.4 L/min, at full travel or not.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

constexpr double litre_a_minute = 1e-3 / 60.0;

std::string with_r2(const std::string& flow) {
    return judged_at_work(
        {{R"(R2" setting="380 bar" full-flow-pressure="410 bar" full-flow="200 L/min")",
          R"(R2" setting="380 bar" full-flow-pressure="410 bar")" + flow}},
        "relief-capacity");
}

TEST(ReliefCapacity, AgainstTheWholeFlow) {
    EXPECT_EQ(with_r2(R"( full-flow="171 L/min")"),
              "relief-capacity R2 pass at work\nrelief-capacity R3 pass at work\n");
    EXPECT_EQ(with_r2(R"( full-flow="170 L/min")"),
              "relief-capacity R2 fail error at work\nrelief-capacity R3 pass at work\n");
    EXPECT_NEAR(figures_at_work({}, "relief-capacity", "R2").measured.si / litre_a_minute, 170.4,
                1e-6);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "relief-capacity", "R2"), "set: P1 R2.P");
}

TEST(ReliefCapacity, TheTravelMayBeAny) {
    EXPECT_NEAR(
        figures_at_work({{R"(travel="100 %")", R"(travel="40 %")"}}, "relief-capacity", "R2")
                .measured.si /
            litre_a_minute,
        170.4, 1e-6);
}

TEST(ReliefCapacity, ASecondOneBesideItHelps) {
    const Edit beside[] = {
        {"</circuit>",
         R"(<relief-valve id="R5" setting="380 bar" full-flow-pressure="410 bar" full-flow="100 L/min"/></circuit>)"},
        {"P1.A M1.A R2.P", "P1.A M1.A R2.P R5.P"},
        {"P1.B M1.B R3.P R2.T", "P1.B M1.B R3.P R2.T R5.T"},
        {R"(R2" setting="380 bar" full-flow-pressure="410 bar" full-flow="200 L/min")",
         R"(R2" setting="380 bar" full-flow-pressure="410 bar" full-flow="100 L/min")"}};
    EXPECT_EQ(judged_at_work({std::begin(beside), std::end(beside)}, "relief-capacity"),
              "relief-capacity R2 pass at work\nrelief-capacity R3 pass at work\n"
              "relief-capacity R5 pass at work\n");
}

TEST(ReliefCapacity, Missing) {
    EXPECT_EQ(with_r2(""),
              "relief-capacity R2 inconclusive at work needs R2.full-flow\n"
              "relief-capacity R3 pass at work\n");
}

TEST(ReliefCapacity, NotAskedInNeutral) {
    EXPECT_EQ(
        judged_at_work({{R"(travel="100 %" torque="200 N.m")", R"(travel="0 %" torque="0 N.m")"}},
                       "relief-capacity"),
        "relief-capacity circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
