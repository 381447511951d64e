// The drive at work loses nothing in its machines, so that its heat is that of reliefs and lines.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

const Edit as_it_balances{R"( oil="50 degC")", ""};

TEST(OilTemperature, AsThePointHasIt) {
    EXPECT_EQ(judged_at_work({}, "oil-temperature"), "oil-temperature T1 pass at work\n");
    const Figures figures = figures_at_work({}, "oil-temperature", "T1");
    EXPECT_DOUBLE_EQ(figures.measured.si, 323.15);
    EXPECT_DOUBLE_EQ(figures.required->si, 353.15);
    EXPECT_DOUBLE_EQ(figures.margin->si, 30.0);
    EXPECT_EQ(figures.margin->dimension, Dimension::temperature_difference);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "oil-temperature", "T1"), "set: T1");
}

TEST(OilTemperature, WarmerThanItMayBe) {
    EXPECT_EQ(judged_at_work({{R"(oil="50 degC")", R"(oil="81 degC")"}}, "oil-temperature"),
              "oil-temperature T1 fail error at work\n");
}

// 43.2 L/min of charge oil at 24 bar, of which the flushing relief holds 18, are 1.73 kW at most,
// and the lines of the loop add some tenths; the cooler gives 400 W/K and the wall 12 (B. Casey,
// "A great lie about hydraulic tanks", published-values T-12): some 5 K over the air.
TEST(OilTemperature, WhereTheHeatBalances) {
    EXPECT_EQ(judged_at_work({as_it_balances}, "oil-temperature"),
              "oil-temperature T1 pass at work\n");
    const double rise =
        figures_at_work({as_it_balances}, "oil-temperature", "T1").measured.si - 298.15;
    EXPECT_GT(rise, 3.0);
    EXPECT_LT(rise, 8.0);
}

// The wall alone: 100 K and more over the air.
TEST(OilTemperature, TooLittleCoolsIt) {
    EXPECT_EQ(judged_at_work({as_it_balances, {R"(capacity="12 kW")", R"(capacity="100 W")"}},
                             "oil-temperature"),
              "oil-temperature T1 fail error at work\n");
}

TEST(OilTemperature, Missing) {
    EXPECT_EQ(judged_at_work({{R"( max-temperature="80 degC")", ""}}, "oil-temperature"),
              "oil-temperature T1 inconclusive at work needs T1.max-temperature\n");
    EXPECT_EQ(judged_at_work({as_it_balances, {R"( ambient="25 degC")", ""}}, "oil-temperature"),
              "oil-temperature T1 inconclusive at work needs work.oil\n");
}

// What a machine loses is heat: it may be warmer where that is not known, but not cooler.
TEST(OilTemperature, ALossThatIsNotKnownLeavesAPassOpen) {
    const Edit unknown{
        R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0")",
        R"(max-speed="4500 rpm" max-torque="500 N.m")"};
    EXPECT_EQ(judged_at_work({as_it_balances, unknown}, "oil-temperature"),
              "oil-temperature T1 inconclusive at work needs M1.volumetric-efficiency "
              "needs M1.torque-efficiency\n");
    EXPECT_EQ(judged_at_work({unknown}, "oil-temperature"), "oil-temperature T1 pass at work\n");
    EXPECT_EQ(
        judged_at_work({as_it_balances, unknown, {R"(capacity="12 kW")", R"(capacity="100 W")"}},
                       "oil-temperature"),
        "oil-temperature T1 fail error at work\n");
}

TEST(OilTemperature, NothingToAskWithoutMachines) {
    EXPECT_EQ(testing::verdicts_of(
                  testing::circuit_with(R"(<reservoir id="T1"><port id="S"/></reservoir>)"),
                  "oil-temperature"),
              "oil-temperature circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
