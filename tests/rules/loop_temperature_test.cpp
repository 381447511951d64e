// The drive at work flushes all of the charge pump's 43.2 L/min, as nothing leaks; what its lines
// and valves throttle is all that warms it.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

/// A thin line on side A: 170.4 L/min through 16 mm and 10 m lose some 18 bar, 5 kW (Darcy and
/// Weisbach, with a friction factor of 0.033).
const Edit thin{R"(C1.B V1.A" function="working" bore="25 mm" length="1 m")",
                R"(C1.B V1.A" function="working" bore="16 mm" length="10 m")"};
const Edit no_flushing{R"(<line id="FL" joins="V1.F R4.P" bore="16 mm"/>)", ""};

std::string judged(const std::vector<Edit>& edits) {
    return judged_at_work(edits, "loop-temperature");
}

TEST(LoopTemperature, ItsOilIsExchanged) {
    EXPECT_EQ(judged({}), "loop-temperature loop:P1 pass at work\n");
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "loop-temperature", "loop:P1"),
              "set: P1 M1");
}

// The rise is in proportion to the heat over what is exchanged (heat_test.cpp holds it against the
// closed form): 5 kW over 43.2 L/min, 1.2 kW/K, are some 4 K over the reservoir's 50 degC.
TEST(LoopTemperature, AThinLineWarmsIt) {
    EXPECT_EQ(judged({thin}), "loop-temperature loop:P1 pass at work\n");
    const double rise = figures_at_work({thin}, "loop-temperature", "loop:P1").measured.si - 323.15;
    EXPECT_GT(rise, 4.0);
    EXPECT_LT(rise, 12.0);
}

TEST(LoopTemperature, AMachineBearsLess) {
    EXPECT_EQ(
        judged(
            {thin,
             {R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="95 degC")",
              R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="52 degC")"}}),
        "loop-temperature loop:P1 fail error at work\n");
}

TEST(LoopTemperature, NothingIsExchanged) {
    EXPECT_EQ(judged({no_flushing}), "loop-temperature loop:P1 fail error at work\n");
}

// In neutral nothing flows and nothing warms it.
TEST(LoopTemperature, NothingWarmsIt) {
    EXPECT_EQ(judged({no_flushing,
                      {R"(travel="100 %" torque="200 N.m")", R"(travel="0 %" torque="0 N.m")"}}),
              "loop-temperature loop:P1 pass at work\n");
}

TEST(LoopTemperature, Missing) {
    EXPECT_EQ(judged({{R"(C1.B V1.A" function="working" bore="25 mm" length="1 m")",
                       R"(C1.B V1.A" function="working" bore="25 mm")"}}),
              "loop-temperature loop:P1 inconclusive at work needs HA.length\n");
    EXPECT_EQ(
        judged(
            {{R"(through-drive-torque="200 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="95 degC")",
              R"(through-drive-torque="200 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s")"}}),
        "loop-temperature loop:P1 inconclusive at work needs P1.max-temperature\n");
    EXPECT_EQ(judged({{R"( ambient="25 degC")", ""}, {R"( oil="50 degC")", ""}}),
              "loop-temperature loop:P1 inconclusive at work needs work.oil\n");
    EXPECT_EQ(
        judged(
            {{R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0")",
              R"(max-speed="4500 rpm" max-torque="500 N.m")"}}),
        "loop-temperature loop:P1 inconclusive at work needs M1.volumetric-efficiency "
        "needs M1.torque-efficiency\n");
}

TEST(LoopTemperature, NothingToAskWithoutALoop) {
    EXPECT_EQ(testing::verdicts_of(
                  testing::circuit_with(R"(<reservoir id="T1"><port id="S"/></reservoir>)"),
                  "loop-temperature"),
              "loop-temperature circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
