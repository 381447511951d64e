// VG 46 of index 100: 46 mm2/s at 40 degC, and by ASTM D2270 6.80 at 100 degC (published-values,
// X-T2); ASTM D341 between and beyond (oil_test.cpp).
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

constexpr double mm2_s = 1e-6;

/// A limit of the charge pump alone.
Edit charge_pump(const std::string& limits) {
    return {
        R"(max-torque="100 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s")",
        R"(max-torque="100 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0")" +
            limits};
}
std::string judged(const std::vector<Edit>& edits) {
    return judged_at_work(edits, "viscosity-window");
}
const std::string others_first = "viscosity-window P1 pass at cold-start\n";
const std::string others_last = "viscosity-window M1 pass at cold-start\n";

TEST(ViscosityWindow, InsideIt) {
    EXPECT_EQ(judged({}), others_first + "viscosity-window P2 pass at cold-start\n" + others_last);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "viscosity-window", "P2"), "set: P2");
}

TEST(ViscosityWindow, TooThinAtTheReservoirsTemperature) {
    const Edit narrow = charge_pump(
        R"( min-viscosity="46 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s")");
    EXPECT_EQ(judged({narrow}),
              others_first + "viscosity-window P2 fail error at work\n" + others_last);
    EXPECT_NEAR(figures_at_work({narrow, {R"(oil="50 degC")", R"(oil="40.01 degC")"}},
                                "viscosity-window", "P2")
                    .measured.si,
                46.0 * mm2_s, 0.05 * mm2_s);
}

TEST(ViscosityWindow, TooThick) {
    EXPECT_EQ(
        judged({charge_pump(
            R"( min-viscosity="10 mm2/s" max-viscosity="20 mm2/s" start-viscosity="1500 mm2/s")")}),
        others_first + "viscosity-window P2 fail error at work\n" + others_last);
}

TEST(ViscosityWindow, TooThickForAStart) {
    EXPECT_EQ(
        judged({charge_pump(
            R"( min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="300 mm2/s")")}),
        others_first + "viscosity-window P2 fail error at cold-start\n" + others_last);
}

// 170.4 L/min through 16 mm and 10 m warm the loop's oil by some 4 K over the charge pump's:
// some 26 mm2/s where that has 30.
TEST(ViscosityWindow, AMachineOfALoopHasItsOil) {
    const Edit thin{R"(C1.B V1.A" function="working" bore="25 mm" length="1 m")",
                    R"(C1.B V1.A" function="working" bore="16 mm" length="10 m")"};
    const auto least_behind = [](const std::string& end) {
        return Edit{
            end +
                R"(" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s")",
            end +
                R"(" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="28 mm2/s")"};
    };
    EXPECT_EQ(judged({thin, least_behind(R"(through-drive-torque="200 N.m)"),
                      least_behind(R"(max-torque="100 N.m)")}),
              "viscosity-window P1 fail error at work\n"
              "viscosity-window P2 pass at work\n" +
                  others_last);
}

TEST(ViscosityWindow, OutsideTheBestRangeIsANote) {
    EXPECT_EQ(
        judged({charge_pump(
            R"( min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" optimum-min-viscosity="16 mm2/s" optimum-max-viscosity="25 mm2/s")")}),
        others_first + "viscosity-window P2 fail note at work\n" + others_last);
    EXPECT_EQ(
        judged({charge_pump(
            R"( min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" optimum-min-viscosity="16 mm2/s" optimum-max-viscosity="36 mm2/s")")}),
        others_first + "viscosity-window P2 pass at cold-start\n" + others_last);
}

TEST(ViscosityWindow, Missing) {
    EXPECT_EQ(judged({charge_pump(R"( max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s")")}),
              others_first + "viscosity-window P2 inconclusive at work needs P2.min-viscosity\n" +
                  others_last);
    EXPECT_EQ(judged({charge_pump(R"( min-viscosity="10 mm2/s" max-viscosity="500 mm2/s")")}),
              others_first +
                  "viscosity-window P2 inconclusive at cold-start needs P2.start-viscosity\n" +
                  others_last);
    EXPECT_EQ(judged({{R"( cold-start="0 degC")", ""}}),
              "viscosity-window P1 inconclusive needs duty.cold-start\n"
              "viscosity-window P2 inconclusive needs duty.cold-start\n"
              "viscosity-window M1 inconclusive needs duty.cold-start\n");
    EXPECT_EQ(judged({{R"( ambient="25 degC")", ""}, {R"( oil="50 degC")", ""}}),
              "viscosity-window P1 inconclusive at work needs work.oil\n"
              "viscosity-window P2 inconclusive at work needs work.oil\n"
              "viscosity-window M1 inconclusive at work needs work.oil\n");
}

// A note must not stand for what is not known.
TEST(ViscosityWindow, ANoteWaitsForWhatIsMissing) {
    EXPECT_EQ(
        judged({charge_pump(
            R"( min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" optimum-max-viscosity="25 mm2/s")")}),
        others_first + "viscosity-window P2 inconclusive at cold-start needs P2.start-viscosity\n" +
            others_last);
}

TEST(ViscosityWindow, NothingToAskWithoutMachines) {
    EXPECT_EQ(testing::verdicts_of(
                  testing::circuit_with(R"(<reservoir id="T1"><port id="S"/></reservoir>)"),
                  "viscosity-window"),
              "viscosity-window circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
