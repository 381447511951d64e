// Duties and shafts that ask for what cannot be: no state, but a message that names who asks.
#include <utility>

#include <fmt/format.h>

#include <loopwright/tests/hydraulics/drive.h>

namespace loopwright::hydraulics::testing {
namespace {

constexpr std::string_view motor_shaft = R"(<shaft id="W2" joins="M1 D1"/>)";

/// The drive with other shafts than that of its motor, at a point with more settings.
std::string drive_with(std::string_view shafts, std::string_view settings) {
    std::string xml = drive(R"(<point id="a" travel="33 %" torque="100 N.m" oil="50 degC">)" +
                            std::string(settings) + "</point>");
    return xml.replace(xml.find(motor_shaft), motor_shaft.size(), shafts);
}

/// The problem of its point; empty where that is solved.
std::string problem_of(std::string_view shafts, std::string_view settings) {
    const OperatingPoint point = only_point(drive_with(shafts, settings));
    EXPECT_EQ(point.solved, point.problem.empty());
    EXPECT_TRUE(point.missing.empty());
    return point.problem;
}

TEST(Contradiction, TwoPrimeMoversOfOneShaftHaveOneSpeed) {
    std::string shafts = R"(<engine id="E2"/> <clutch id="Q1" engaged="yes"/>)";
    shafts += motor_shaft;
    shafts += R"(<shaft id="W3" joins="E2 Q1.out"/>)";
    const auto at = [&](std::string_view speed) {
        std::string xml =
            drive_with(shafts, R"(<set of="E1" speed="2400 rpm"/><set of="E2" speed=")" +
                                   std::string(speed) + "\"/>");
        const std::string first = R"(joins="E1 P1 P2")";
        return only_point(xml.replace(xml.find(first), first.size(), R"(joins="E1 P1 P2 Q1.in")"));
    };
    EXPECT_TRUE(at("2400 rpm").solved);
    const OperatingPoint refused = at("1500 rpm");
    EXPECT_FALSE(refused.solved);
    EXPECT_EQ(refused.problem,
              "E1 turns W1 at 2400 rpm and E2 at 1500 rpm: give them one speed, or open a clutch "
              "between them");
}

TEST(Contradiction, GivenSpeedsFitTheGearboxesBetweenThem) {
    const auto at = [](std::string_view speed) {
        std::string xml = drive_with(
            R"(<engine id="E2"/> <gearbox id="X1" ratio="2"/> <shaft id="W2" joins="M1 D1"/>
               <shaft id="W3" joins="X1.out E2"/>)",
            R"(<set of="E1" speed="2400 rpm"/><set of="E2" speed=")" + std::string(speed) + "\"/>");
        const std::string first = R"(joins="E1 P1 P2")";
        return only_point(xml.replace(xml.find(first), first.size(), R"(joins="E1 P1 P2 X1.in")"));
    };
    for (const auto& [speed, why] :
         {std::pair("1200 rpm", "how they share the load is not known"),
          std::pair("2400 rpm", "their speeds are not those that the ratios ask for")}) {
        const OperatingPoint refused = at(speed);
        EXPECT_FALSE(refused.solved);
        EXPECT_EQ(refused.problem,
                  fmt::format("E1 turns W1 and E2 turns W3, and gearboxes join them: {}; give one "
                              "of them, or open a clutch between them",
                              why));
    }
}

TEST(Contradiction, TwoGearboxesBetweenTwoShaftsThatDoNotFitLockThem) {
    const std::string problem =
        problem_of(R"(<gearbox id="X1" ratio="2"/> <gearbox id="X2" ratio="3"/>
                      <shaft id="W2" joins="M1 X1.in X2.in"/>
                      <shaft id="W3" joins="X1.out X2.out D1"/>)",
                   R"(<set of="E1" speed="2400 rpm"/>)");
    EXPECT_NE(problem.find("the shafts lock"), std::string::npos) << problem;
    EXPECT_NE(problem.find("X2"), std::string::npos) << problem;
    EXPECT_NE(problem.find("W2 and W3"), std::string::npos) << problem;
}

// A pump that nothing turns is no contradiction: it stands on a shaft of its own, and it is said.
TEST(Contradiction, APumpWithoutDriveIsSaid) {
    std::string xml = drive_with(motor_shaft, R"(<set of="E1" speed="2400 rpm"/>)");
    const std::string first = R"(joins="E1 P1 P2")";
    xml.replace(xml.find(first), first.size(), R"(joins="E1 P1")");
    bool said = false;
    for (const Assumption& one : only_point(xml).assumptions)
        said = said || (one.of == "P2: drive" && one.text == "none");
    EXPECT_TRUE(said);
}

// What the point says of the load goes before the load's own torque.
TEST(Contradiction, AGradeOfThePointGoesBeforeTheLoadsOwnTorque) {
    const auto torque_at = [](std::string_view own) {
        std::string xml = drive(R"(<point id="a" speed="2400 rpm" travel="33 %" grade="10 %"/>)");
        const std::string load = R"(<load id="D1"/>)";
        const OperatingPoint point = only_point(
            xml.replace(xml.find(load), load.size(),
                        R"(<load id="D1" vehicle="yes" mass="2000 kg" wheel-radius="30 mm"
                     rolling-resistance="0")" +
                            std::string(own) + "/>"));
        EXPECT_TRUE(point.solved) << point.problem;
        return point.solved ? point.machines[2].torque : 0.0;
    };
    EXPECT_NEAR(torque_at(R"( torque="20 N.m")"), torque_at(""), 1e-6);
    EXPECT_GT(torque_at(""), 50.0);  // 2000 kg x 9.81 m/s2 x 0.0995 x 0.03 m = 58.5 N.m
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
