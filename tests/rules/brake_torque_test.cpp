// The brake on the motor's shaft, the load behind a gearbox: T / ratio (the definition). m g sin a
// of 5000 kg on 30 %: 14 089.6 N (sin(atan 0.30) = 0.287348, published-values V-06).
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::verdicts_of;
using testing::with;

struct Drive {
    std::string brake = R"(torque="430 N.m")";
    std::string load = R"(torque="12 kN.m" overrunning="yes")";
    std::string gearbox = R"(ratio="28")";
    std::string duty = "";
    std::string more_on_shaft = "";
};

Circuit built(const Drive& drive) {
    return with(
        {{R"(<load id="D1"/>)", "<load id=\"D1\" " + drive.load + "/><gearbox id=\"X1\" " +
                                    drive.gearbox + "/><brake id=\"B1\" " + drive.brake + "/>"},
         {R"(joins="M1 D1")", R"(joins="M1 B1 X1.in)" + drive.more_on_shaft + R"("/>
                     <shaft id="W3" joins="X1.out D1")"},
         testing::added(drive.duty)});
}

std::string judged(const Drive& drive) { return verdicts_of(built(drive), "brake-torque"); }

double load_at_brake(const Drive& drive) {
    const Circuit circuit = built(drive);
    const Rule* const only[] = {find_rule("brake-torque")};
    const CheckResult result = check(circuit, only);
    EXPECT_NE(result.verdicts.front().figures, nullptr);
    return result.verdicts.front().figures == nullptr
               ? 0.0
               : result.verdicts.front().figures->required->si;
}

// 12 000 / 28 is 428.6 N.m.
TEST(BrakeTorque, AHoistBehindAGearbox) {
    EXPECT_EQ(judged({}), "brake-torque B1 pass\n");
    EXPECT_EQ(judged({.brake = R"(torque="428 N.m")"}), "brake-torque B1 fail error\n");
    EXPECT_NEAR(load_at_brake({}), 12000.0 / 28.0, 1e-6);
    EXPECT_EQ(testing::witness_of(built({}), "brake-torque", "B1"), "set: B1 D1");
}

TEST(BrakeTorque, TheWeightOnADrum) {
    EXPECT_NEAR(load_at_brake({.load = R"(mass="1000 kg" wheel-radius="0.2 m" overrunning="yes")"}),
                1000.0 * 9.80665 * 0.2 / 28.0, 1e-6);
}

TEST(BrakeTorque, AVehicleOnAGrade) {
    const std::string vehicle = R"(vehicle="yes" mass="5000 kg" wheel-radius="0.4 m")";
    EXPECT_NEAR(load_at_brake({.load = vehicle + R"( grade="30 %")"}),
                5000.0 * 9.80665 * 0.287348 * 0.4 / 28.0, 1e-3);
    EXPECT_EQ(judged({.load = vehicle}), "brake-torque B1 inconclusive needs D1.grade\n");
}

// The steepest point decides, downhill or up.
TEST(BrakeTorque, TheWorstDutyPoint) {
    const Drive drive{.load = R"(vehicle="yes" mass="5000 kg" wheel-radius="0.4 m")",
                      .duty = R"(<duty><point id="a" grade="10 %"/><point id="b" grade="-30 %"/>
                                 <point id="c" grade="20 %"/></duty>)"};
    EXPECT_NEAR(load_at_brake(drive), 5000.0 * 9.80665 * 0.287348 * 0.4 / 28.0, 1e-3);
    EXPECT_EQ(judged(drive), "brake-torque B1 pass at b\n");
}

TEST(BrakeTorque, TwoBrakesHoldTogether) {
    const Drive weak{.brake = R"(torque="220 N.m")"};
    EXPECT_EQ(judged(weak), "brake-torque B1 fail error\n");
    EXPECT_EQ(judged({.brake = R"(torque="220 N.m"/><brake id="B2" torque="220 N.m")",
                      .more_on_shaft = " B2"}),
              "brake-torque B1 pass\nbrake-torque B2 pass\n");
}

TEST(BrakeTorque, Missing) {
    EXPECT_EQ(judged({.brake = ""}), "brake-torque B1 inconclusive needs B1.torque\n");
    EXPECT_EQ(judged({.load = R"(overrunning="yes")"}),
              "brake-torque B1 inconclusive needs D1.torque\n");
    EXPECT_EQ(judged({.gearbox = ""}), "brake-torque B1 inconclusive needs X1.ratio\n");
}

TEST(BrakeTorque, NotAskedOfAServiceBrakeNorWhereTheLoadOnlyResists) {
    EXPECT_EQ(judged({.brake = R"(torque="1 N.m" use="service")"}),
              "brake-torque circuit not-applicable\n");
    EXPECT_EQ(judged({.load = R"(torque="12 kN.m")"}), "brake-torque circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
