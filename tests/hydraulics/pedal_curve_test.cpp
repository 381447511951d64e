// The ice resurfacer's pedal from end to end, on level ground, against figures by hand. Pump to
// full stroke in the first third, motor reduced over the rest: common practice, no source.
#include <algorithm>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/sweep.h>
#include <loopwright/parser/reader.h>
#include <loopwright/tests/hydraulics/figures.h>

namespace loopwright::hydraulics::testing {
namespace {

struct Step {
    double travel;  // %
    double pump;    // cm3/rev
    double motor;
};
/// 71 cm3/rev at 33.3 % of the travel; from there 80 down to 50 cm3/rev at all of it.
constexpr Step steps[] = {
    {0.0, 0.0, 80.0},   {11.1, 23.67, 80.0}, {22.2, 47.33, 80.0}, {33.3, 71.0, 80.0},
    {55.5, 71.0, 70.0}, {66.7, 71.0, 65.0},  {77.8, 71.0, 60.0},  {100.0, 71.0, 50.0},
};

/// In rpm, as the page has it for transport: 2400 rpm; at about 69 bar pump and motor lose
/// 0.03 * 71 * 2.4 * 69 / 250 and 0.02 * 80 * 2.0 * 69 / 250 L/min.
double by_hand(const Step& step) {
    const double given = step.pump * 2.4 - 0.03 * 71 * 2.4 * 69 / 250;
    return std::max(0.0, given - 0.02 * 80 * 2.0 * 69 / 250) / step.motor * 1000.0;
}

/// Speeds of the motor in rpm at so many equal steps of travel.
std::vector<double> speeds(const Circuit& circuit, const std::string& travel) {
    std::string trouble;
    const auto axis = read_axis(circuit, "travel=" + travel, trouble);
    EXPECT_TRUE(axis) << trouble;
    if (!axis) return {};
    const Sweep swept(circuit, "transport", {*axis});
    std::size_t column = 0;
    while (column < swept.columns().size() &&
           (swept.columns()[column].id != "M1" || swept.columns()[column].quantity != "speed"))
        ++column;
    std::vector<double> found;
    swept.run([](const SweepRows&) { return std::string(); },
              [&](const SweepRows& rows, std::string_view) {
                  for (std::size_t row = 0; row < rows.size(); ++row) {
                      EXPECT_NE(rows.solved[row], 0) << rows.first + row;
                      found.push_back(rows.figure(row, column).value_or(0.0) / rpm);
                  }
              });
    return found;
}

class PedalCurve : public ::testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(read_.circuit);
        circuit_ = &*read_.circuit;
    }
    const ReadResult read_ = read_circuit(std::string(LOOPWRIGHT_SOURCE_FOLDER) +
                                          "/circuits/ice-resurfacer/ice-resurfacer.xml");
    const Circuit* circuit_ = nullptr;
};

TEST_F(PedalCurve, PumpFirstThenMotor) {
    for (const Step& step : steps) {
        std::string at = std::to_string(step.travel) + "%";
        at += ".." + at + ":1";
        const std::vector<double> found = speeds(*circuit_, at);
        ASSERT_EQ(found.size(), 1U);
        EXPECT_NEAR(found[0], by_hand(step), std::max(1.0, 0.02 * by_hand(step))) << step.travel;
    }
}

// The pedal never slows the machine down: faster with each step, either way alike.
TEST_F(PedalCurve, RisesAllTheWayAndBackwardsAlike) {
    const std::vector<double> ahead = speeds(*circuit_, "0%..100%:51");
    const std::vector<double> back = speeds(*circuit_, "0%..-100%:51");
    ASSERT_EQ(ahead.size(), 51U);
    ASSERT_EQ(back.size(), 51U);
    for (std::size_t i = 1; i < ahead.size(); ++i) {
        EXPECT_GT(ahead[i], ahead[i - 1]) << i;
        EXPECT_NEAR(back[i], -ahead[i], 1e-3 * ahead[i]) << i;
    }
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
