// Sizes of a drive: closed forms by hand and by worked examples, and how they follow the duty.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/sizing.h>

namespace loopwright::hydraulics::testing {
namespace {

constexpr double cm3 = 1e-6 / (2.0 * std::numbers::pi);
constexpr double rpm = std::numbers::pi / 30.0;

Fluid vg_46() { return *Fluid::of({.grade = "VG 46", .viscosity_index = 105.0}); }

SizingDuty heavy_and_fast() {
    return {.points = {{.id = "heavy",
                        .torque = Torque(300.0),
                        .speed = Speed(400 * rpm),
                        .mover = Speed(2000 * rpm),
                        .oil = Temperature(323.15)},
                       {.id = "fast",
                        .torque = Torque(60.0),
                        .speed = Speed(1600 * rpm),
                        .mover = Speed(2000 * rpm),
                        .oil = Temperature(323.15)}},
            .power = Power(40e3),
            .rated_speed = Speed(2000 * rpm),
            .working_pressure = Pressure(250e5)};
}

bool tells(const std::vector<std::string>& all, std::string_view piece) {
    for (const std::string& one : all)
        if (one.find(piece) != std::string::npos) return true;
    return false;
}

TEST(Sizing, MotorByTorqueAndPumpByFlow) {
    const Sizing sized = size_drive(heavy_and_fast(), vg_46());
    EXPECT_TRUE(sized.unmet.empty());
    // 2 pi x 300 N.m/(250 bar x 0.96) = 78.54 cm3/rev
    EXPECT_NEAR(sized.sizes.motor.si() / cm3, 79.0, 1e-9);
    // Fast: at least 15.7 cm3/rev for its torque, a third of 79 is more: 26.33 cm3/rev x 1600/2000
    // over 0.97 x 0.98 = 22.16. Heavy: 78.54 x 400/2000 over the same: 16.5.
    EXPECT_NEAR(sized.sizes.pump.si() / cm3, 23.0, 1e-9);
    EXPECT_TRUE(sized.sizes.is_variable());
    // 23 x 2000/1600 x 0.97 x 0.98 = 27.33, 5 % less: 25.96
    EXPECT_NEAR(sized.sizes.least_motor.si() / cm3, 25.0, 1e-9);
}

TEST(Sizing, BoreAsInTheWorkedExample) {
    // A. Esposito, ex. 10-2: 0.002 m3/s at 6.1 m/s takes 20.4317 mm. Here at 5 m/s, next whole one.
    const Sizing sized = size_drive(heavy_and_fast(), vg_46());
    const double flow = 23.0 * cm3 * 2000 * rpm;
    EXPECT_NEAR(sized.sizes.loop_flow.si(), flow, 1e-12);
    EXPECT_NEAR(sized.sizes.working_bore.si() * 1e3,
                std::ceil(20.4317 * std::sqrt(flow / 0.002 * 6.1 / 5.0)), 1e-9);
}

TEST(Sizing, TankWallsAsThoseOfAPublishedTank) {
    // B. Casey gives 1.7 m2 for a 200 L tank without its base; a cube has as much.
    const Sizing sized = size_drive(heavy_and_fast(), vg_46());
    const double walls = 1.7 * std::pow(sized.sizes.reservoir.si() / 0.2, 2.0 / 3.0);
    EXPECT_NEAR(sized.sizes.reservoir_walls.si(), walls, 0.02 * walls);
}

TEST(Sizing, AFixedMotorWhereThePumpHardlyGrows) {
    SizingDuty duty = heavy_and_fast();
    duty.points[1].speed = Speed(450 * rpm);
    const Sizing sized = size_drive(duty, vg_46());
    EXPECT_FALSE(sized.sizes.is_variable());
    // 79 x 450/2000 over 0.97 x 0.98 = 18.7
    EXPECT_NEAR(sized.sizes.pump.si() / cm3, 19.0, 1e-9);
}

TEST(Sizing, AGearboxTakesTorqueOverRatio) {
    SizingDuty duty = heavy_and_fast();
    for (SizingPoint& point : duty.points) {
        point.torque = point.torque * (20.0 * 0.9);
        point.speed = point.speed * (1.0 / 20.0);
    }
    duty.gear = Gear{.ratio = 20.0, .efficiency = 0.9};
    const Sizing sized = size_drive(duty, vg_46());
    EXPECT_NEAR(sized.sizes.motor.si() / cm3, 79.0, 1e-9);
    EXPECT_NEAR(sized.sizes.pump.si() / cm3, 23.0, 1e-9);
}

TEST(Sizing, FollowsPressureAndReserve) {
    SizingDuty duty = heavy_and_fast();
    const Sizing sized = size_drive(duty, vg_46());
    duty.working_pressure = Pressure(350e5);
    const Sizing higher = size_drive(duty, vg_46());
    EXPECT_LT(higher.sizes.motor, sized.sizes.motor);
    EXPECT_GT(higher.sizes.relief, sized.sizes.relief);
    const Sizing more = size_drive(heavy_and_fast(), vg_46(), {.pump = 1.1, .motor = 1.1});
    EXPECT_NEAR(more.sizes.motor.si() / cm3, 87.0, 1e-9);  // 86.4
    EXPECT_GT(more.sizes.pump, sized.sizes.pump);
}

TEST(Sizing, RefusesWhatNoDriveGives) {
    SizingDuty duty = heavy_and_fast();
    duty.power = Power(12e3);  // heavy takes 12.57 kW
    EXPECT_TRUE(tells(size_drive(duty, vg_46()).unmet, "point heavy asks for 12.57 kW"));
    duty = heavy_and_fast();
    duty.points[1].speed = Speed(9000 * rpm);
    duty.points[1].torque = Torque(10.0);
    EXPECT_TRUE(tells(size_drive(duty, vg_46()).unmet, "a gearbox of lower ratio"));
    duty = heavy_and_fast();
    duty.points[0].torque = Torque(5000.0);
    EXPECT_TRUE(tells(size_drive(duty, vg_46()).unmet, "of one motor"));
}

TEST(Sizing, BrakeHoldsTheLoadOverTheGearbox) {
    SizingDuty duty = heavy_and_fast();
    EXPECT_FALSE(size_drive(duty, vg_46()).sizes.brake);
    duty.holding = Torque(3000.0);
    duty.gear = Gear{.ratio = 10.0, .efficiency = 0.9};
    EXPECT_DOUBLE_EQ(size_drive(duty, vg_46()).sizes.brake->si(), 450.0);  // 1.5 x 3000/10
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
