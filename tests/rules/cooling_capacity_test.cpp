// The drive at work loses nothing in its machines. Its charge pump gives 43.2 L/min at 24 bar,
// 1.73 kW at most, and the lines of the loop add some tenths. At the 80 degC that the reservoir
// may have, 55 K over the air, the wall of 1 m2 gives off 12 W/K (B. Casey, "A great lie about
// hydraulic tanks", published-values T-12), and the cooler 12 kW a 30 K.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

std::string judged(const std::vector<Edit>& edits) {
    return judged_at_work(edits, "cooling-capacity");
}

TEST(CoolingCapacity, CoolerAndWall) {
    EXPECT_EQ(judged({}), "cooling-capacity circuit pass\n");
    const Figures figures = figures_at_work({}, "cooling-capacity", "circuit");
    EXPECT_GT(figures.measured.si, 1000.0);
    EXPECT_LT(figures.measured.si, 3000.0);
    // 43.2 L/min bring more than the cooler carries off: 1.2 kW/K against 0.4.
    EXPECT_NEAR(figures.required->si, 55.0 * (12000.0 / 30.0 + 12.0), 1e-6);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "cooling-capacity", "circuit"),
              "set: K1 T1");
}

TEST(CoolingCapacity, ACoolerTooSmall) {
    EXPECT_EQ(judged({{R"(capacity="12 kW")", R"(capacity="100 W")"}}),
              "cooling-capacity circuit fail error\n");
}

// In neutral the flushing valve is shut, and all charge oil goes over the charge relief. Half of
// the time at work and half in neutral give the mean of both, and so does the share that points
// leave.
TEST(CoolingCapacity, TheMeanOverTheShares) {
    const auto heat = [](const std::vector<Edit>& edits) {
        return figures_at_work(edits, "cooling-capacity", "circuit").measured.si;
    };
    const std::string still = R"(<point id="still" speed="2400 rpm" travel="0 %" torque="0 N.m")";
    const double work = heat({});
    const double neutral =
        heat({{R"( share="100 %")", ""}, {"</duty>", still + R"( share="100 %"/></duty>)"}});
    const double half = heat({{R"(share="100 %")", R"(share="50 %")"},
                              {"</duty>", still + R"( share="50 %"/></duty>)"}});
    EXPECT_NEAR(half, (work + neutral) / 2.0, 1e-6 * work);
    EXPECT_NEAR(heat({{R"(share="100 %")", R"(share="50 %")"}}), half, 1e-6 * work);
    EXPECT_NEAR(neutral, 18e-6 * 40.0 * 24e5, 1.0);
}

TEST(CoolingCapacity, Missing) {
    EXPECT_EQ(judged({{R"( max-temperature="80 degC")", ""}}),
              "cooling-capacity circuit inconclusive needs T1.max-temperature\n");
    EXPECT_EQ(judged({{R"( ambient="25 degC")", ""}}),
              "cooling-capacity circuit inconclusive needs duty.ambient\n");
    EXPECT_EQ(judged({{R"( share="100 %")", ""}}),
              "cooling-capacity circuit inconclusive needs work.share\n");
    EXPECT_EQ(judged({{R"( capacity="12 kW" temperature-difference="30 K")", ""},
                      {R"( cooling-area="1 m2")", ""}}),
              "cooling-capacity circuit inconclusive needs K1.capacity needs "
              "K1.temperature-difference needs T1.cooling-area\n");
}

// A wall that is not known can only help; losses that are not known only add.
TEST(CoolingCapacity, WhatIsNotKnownLeavesOpenWhatItMayChange) {
    const Edit no_wall{R"( cooling-area="1 m2")", ""};
    EXPECT_EQ(judged({no_wall}), "cooling-capacity circuit pass\n");
    EXPECT_EQ(judged({no_wall, {R"(capacity="12 kW")", R"(capacity="100 W")"}}),
              "cooling-capacity circuit inconclusive needs T1.cooling-area\n");
    const Edit unknown{
        R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0")",
        R"(max-speed="4500 rpm" max-torque="500 N.m")"};
    EXPECT_EQ(judged({unknown}),
              "cooling-capacity circuit inconclusive needs M1.volumetric-efficiency needs "
              "M1.torque-efficiency\n");
    EXPECT_EQ(judged({unknown, {R"(capacity="12 kW")", R"(capacity="100 W")"}}),
              "cooling-capacity circuit fail error\n");
}

TEST(CoolingCapacity, WithoutADutyOrASolution) {
    EXPECT_EQ(judged({{R"(<duty altitude="500 m" ambient="25 degC" cold-start="0 degC">
<point id="work" speed="2400 rpm" travel="100 %" torque="200 N.m" oil="50 degC" share="100 %"/>
</duty>)",
                       ""}}),
              "cooling-capacity circuit inconclusive needs duty\n");
    EXPECT_EQ(
        judged({{R"(<relief-valve id="R1" setting="24 bar"/>)", R"(<relief-valve id="R1"/>)"}}),
        "cooling-capacity circuit inconclusive needs R1.setting\n");
}

TEST(CoolingCapacity, NothingToAskWithoutMachines) {
    EXPECT_EQ(testing::verdicts_of(
                  testing::circuit_with(R"(<reservoir id="T1"><port id="S"/></reservoir>)"),
                  "cooling-capacity"),
              "cooling-capacity circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
