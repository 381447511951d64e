// T = V p / 2 pi without losses: P1 takes 177.5 N.m (200 N.m x 71/80), the charge pump behind it
// some 5.3 N.m (18 cm3/rev at some 18.6 bar).
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

constexpr const char* rated = R"( max-torque="500 N.m" through-drive-torque="200 N.m")";
constexpr const char* others = "shaft-torque P2 pass at work\nshaft-torque M1 pass at work\n";

std::string rated_at(const std::string& ratings) {
    return judged_at_work({{rated, ratings}}, "shaft-torque");
}

TEST(ShaftTorque, OfTheShaftEndAllBehindItCounted) {
    EXPECT_EQ(rated_at(R"( max-torque="180 N.m" through-drive-torque="200 N.m")"),
              std::string("shaft-torque P1 fail error at work\n") + others);
    // It drives nothing through itself.
    EXPECT_EQ(rated_at(R"( max-torque="180 N.m")"),
              std::string("shaft-torque P1 pass at work\n") + others);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "shaft-torque", "P1"), "set: P1 P2");
}

TEST(ShaftTorque, OfTheThroughDrive) {
    EXPECT_EQ(rated_at(R"( max-torque="500 N.m" through-drive-torque="5 N.m")"),
              std::string("shaft-torque P1 fail error at work\n") + others);
    EXPECT_EQ(rated_at(R"( max-torque="500 N.m" through-drive-torque="6 N.m")"),
              std::string("shaft-torque P1 pass at work\n") + others);
}

TEST(ShaftTorque, OfTheMotor) {
    EXPECT_NEAR(figures_at_work({}, "shaft-torque", "M1").measured.si, 200.0, 1e-6);
    const auto motor = [](const std::string& most) {
        return judged_at_work({{R"(max-speed="4500 rpm" max-torque="500 N.m")",
                                R"(max-speed="4500 rpm" max-torque=")" + most + "\""}},
                              "shaft-torque");
    };
    const std::string pumps = "shaft-torque P1 pass at work\nshaft-torque P2 pass at work\n";
    EXPECT_EQ(motor("201 N.m"), pumps + "shaft-torque M1 pass at work\n");
    EXPECT_EQ(motor("199 N.m"), pumps + "shaft-torque M1 fail error at work\n");
}

TEST(ShaftTorque, Missing) {
    EXPECT_EQ(rated_at(R"( through-drive-torque="200 N.m")"),
              std::string("shaft-torque P1 inconclusive at work needs P1.max-torque\n") + others);
}

}  // namespace
}  // namespace loopwright
