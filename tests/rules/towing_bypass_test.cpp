// The sound drive as a vehicle's, with and without what it is towed by. What is expected follows by
// hand from the design's words: a stated way to move it, brake release included.
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

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "towing-bypass"); }

const std::string passes = "towing-bypass loop:P1 pass towing\n";
const std::string fails = "towing-bypass loop:P1 fail warning towing\n";
const Edit vehicle{R"(<load id="D1")", R"(<load vehicle="yes" id="D1")"};
const Edit on_a{"C1.B V1.A\"", "C1.B V1.A V3.A\""};
const Edit on_b{"C2.B V1.B\"", "C2.B V1.B V3.B\""};
const Edit braked{"joins=\"M1 D1\"", "joins=\"M1 B1 D1\""};

Circuit with_valve(const std::string& parts) {
    return with({vehicle, on_a, on_b, added(parts + "<bypass-valve id=\"V3\"/>")});
}
Circuit with_brake(const std::string& brake, const std::string& parts = "") {
    return with({vehicle, on_a, on_b, braked,
                 added("<brake id=\"B1\" " + brake + "/><bypass-valve id=\"V3\"/>" + parts)});
}

TEST(TowingBypass, AValveBetweenTheSides) {
    EXPECT_EQ(rule(with_valve("")), passes);
    EXPECT_EQ(rule(with({vehicle})), fails);
    // A shut-off valve is not opened for towing unless it is drawn so.
    EXPECT_EQ(
        rule(with({vehicle, on_a, on_b, added(R"(<shut-off-valve id="V3" position="closed"/>)")})),
        fails);
}

// What a check lets through one way only lets the motor turn one way only.
TEST(TowingBypass, AWayThatIsOneWay) {
    EXPECT_EQ(rule(with({vehicle, on_a, on_b, added("<check-valve id=\"V3\"/>")})), fails);
    EXPECT_EQ(rule(with({vehicle, on_a, on_b, added("<throttle id=\"V3\"/>")})), passes);
}

TEST(TowingBypass, AClutchAtTheMotor) {
    EXPECT_EQ(rule(with({vehicle,
                         {"joins=\"M1 D1\"", "joins=\"M1 X1.in\""},
                         added(R"(<clutch id="X1"/><shaft id="W3" joins="X1.out D1"/>)")})),
              passes);
}

TEST(TowingBypass, TheBrakeHasToComeOff) {
    EXPECT_EQ(rule(with_brake("")), fails);
    EXPECT_EQ(witness_of(with_brake(""), "towing-bypass", "loop:P1").substr(0, 4), "set:");
    EXPECT_EQ(rule(with_brake("released-by-hand=\"yes\"")), passes);
    EXPECT_EQ(rule(with_brake("applied=\"pressure\"")), passes);
}

TEST(TowingBypass, ByAHandPump) {
    const std::string pump = R"(<hand-pump id="P9"/><reservoir id="T9"><port id="S"/></reservoir>
        <line id="S9" joins="T9.S P9.S"/>)";
    EXPECT_EQ(rule(with_brake("", pump + R"(<line id="B9" joins="P9.P B1.Z"/>)")), passes);
    EXPECT_EQ(rule(with_brake("", pump)), fails);
}

TEST(TowingBypass, NotAskedOfWhatDrivesNoVehicle) {
    EXPECT_EQ(rule(with({})), "towing-bypass circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
