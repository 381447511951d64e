// Loads, gearboxes, brakes, cylinders, dividers, tilt laws, heat: limits and slopes.
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/brake.h>
#include <loopwright/hydraulics/cylinder.h>
#include <loopwright/hydraulics/displacement.h>
#include <loopwright/hydraulics/flow_divider.h>
#include <loopwright/hydraulics/gear.h>
#include <loopwright/hydraulics/heat.h>
#include <loopwright/hydraulics/loads.h>
#include <loopwright/tests/hydraulics/figures.h>
#include <loopwright/tests/hydraulics/slopes.h>

namespace loopwright::hydraulics::testing {
namespace {

TEST(Load, VehicleDrivesDownhill) {
    const Vehicle down{Mass(4000), Length(0.4), Grade(-0.2), 0.02};
    const double weight = 4000 * 9.80665;
    EXPECT_NEAR(load_torque(down, 5.0).value, weight * 0.4 * (-0.2 + 0.02) / std::sqrt(1.04), 1e-9);
    // Backwards up the same slope, rolling adds to it.
    EXPECT_NEAR(load_torque(down, -5.0).value, weight * 0.4 * (-0.2 - 0.02) / std::sqrt(1.04),
                1e-9);
    EXPECT_NEAR(load_torque(down, 0.0).value, weight * 0.4 * -0.2 / std::sqrt(1.04), 1e-9);
    for (const double speed : {-0.05, 0.01, 0.09, 3.0})
        expect_slopes<1>([&](const auto& x) { return load_torque(down, x[0]); }, {speed}, {0.01});
}

TEST(Load, HoistPullsOneWay) {
    EXPECT_DOUBLE_EQ(load_torque(Hoist{Mass(800), Length(0.15)}).si(), 800 * 9.80665 * 0.15);
}

TEST(Load, OpposesWhicheverWay) {
    EXPECT_EQ(opposing_torque(Torque(50), 1.0).value, 50);
    EXPECT_EQ(opposing_torque(Torque(50), -1.0).value, -50);
    EXPECT_EQ(opposing_torque(Torque(50), 0.0).value, 0);
}

TEST(Gear, LosesOnTheSideThatIsDriven) {
    const Gear gear{25, 0.9};
    EXPECT_DOUBLE_EQ(speed_out(gear, 250), 10);
    EXPECT_DOUBLE_EQ(torque_out(gear, {100, 250}).value, 25 * 100 * 0.9);
    EXPECT_NEAR(torque_out(gear, {-100, 250}).value, -25 * 100 / 0.9, 1e-9);
    EXPECT_NEAR(torque_out(gear, {100, -250}).value, 25 * 100 / 0.9, 1e-9);
    EXPECT_DOUBLE_EQ(torque_out(gear, {-100, -250}).value, -25 * 100 * 0.9);
    EXPECT_DOUBLE_EQ(torque_out(Gear{-2}, {100, 250}).value, -200);
}

TEST(Gear, GainsNoPowerAndHasSlopes) {
    const Gear gear{25, 0.8};
    for (double torque = -0.25; torque < 0.3; torque += 0.05)
        for (double speed = -1.05; speed < 1.1; speed += 0.1) {
            const double out = torque_out(gear, {torque, speed}).value * speed_out(gear, speed);
            EXPECT_LE(out, torque * speed + 1e-15);
            expect_slopes<2>(
                [&](const auto& x) {
                    return torque_out(gear, {x[0], x[1]});
                },
                {torque + 0.013, speed + 0.013}, {0.01, 0.01});
        }
    for (const double torque : {-50.0, 50.0})
        for (const double speed : {-20.0, 20.0})
            EXPECT_LT(torque_out(gear, {torque, speed}).value * speed_out(gear, speed),
                      torque * speed);
}

TEST(Brake, GivesWayToPressureOrGripsByIt) {
    const Brake parking{true, Torque(400), Pressure(10 * bar), Pressure(16 * bar)};
    EXPECT_EQ(holding_torque(parking, 0).value, 400);
    EXPECT_EQ(holding_torque(parking, 10 * bar).value, 400);
    EXPECT_DOUBLE_EQ(holding_torque(parking, 13 * bar).value, 200);
    EXPECT_EQ(holding_torque(parking, 30 * bar).value, 0);
    const Brake service{false, Torque(400), Pressure(0), Pressure(40 * bar)};
    EXPECT_EQ(holding_torque(service, 0).value, 0);
    EXPECT_DOUBLE_EQ(holding_torque(service, 10 * bar).value, 100);
    EXPECT_EQ(holding_torque(service, 50 * bar).value, 400);
    expect_slopes<1>([&](const auto& x) { return holding_torque(parking, x[0]); }, {12 * bar},
                     {bar});
}

TEST(Cylinder, MovesByItsAreas) {
    Cylinder cylinder = Cylinder::of(Length(0.1), Length(0.06), 1);
    const double piston = std::numbers::pi / 4 * 0.01;
    const double ring = std::numbers::pi / 4 * (0.01 - 0.0036);
    cylinder.force_efficiency = 0.9;
    const CylinderLaw out = cylinder_law(cylinder, {200 * bar, 20 * bar, 0.1});
    EXPECT_DOUBLE_EQ(out.flow_a.value, -0.1 * piston);
    EXPECT_DOUBLE_EQ(out.flow_b.value, 0.1 * ring);
    EXPECT_NEAR(out.force.value, 0.9 * (200 * piston - 20 * ring) * bar, 1e-6);
    // Pushed in by the load, which has friction to overcome as well.
    EXPECT_NEAR(cylinder_law(cylinder, {200 * bar, 20 * bar, -0.1}).force.value,
                (200 * piston - 20 * ring) * bar / 0.9, 1e-6);
    const Cylinder through = Cylinder::of(Length(0.1), Length(0.06), 2);
    EXPECT_DOUBLE_EQ(through.cap.si(), ring);
    EXPECT_DOUBLE_EQ(through.rod_side.si(), ring);
}

TEST(Cylinder, LeaksAndHasSlopes) {
    const Cylinder cylinder{Area(8e-3), Area(5e-3), Leakage(1e-12), 0.9};
    const CylinderLaw still = cylinder_law(cylinder, {200 * bar, 20 * bar, 0.0});
    EXPECT_DOUBLE_EQ(still.flow_b.value, 1e-12 * 180 * bar);
    EXPECT_DOUBLE_EQ(still.flow_a.value, -still.flow_b.value);
    for (const double velocity : {-0.2, 3e-5, 0.1})
        for (const auto figure : {&CylinderLaw::flow_a, &CylinderLaw::flow_b, &CylinderLaw::force})
            expect_slopes<CylinderState::count>(
                [&](const auto& x) {
                    return cylinder_law(cylinder, {x[0], x[1], x[2]}).*figure;
                },
                {150 * bar, 30 * bar, velocity}, {bar, bar, 1e-5});
}

// An article on flow dividers in Hydraulics & Pneumatics (O-20 of the published figures): with all
// legs but one unloaded, coupled machines raise that one's pressure to as many times the inlet's as
// there are legs.
TEST(FlowDivider, CoupledMachinesRaiseThePressure) {
    for (const std::size_t legs : {2U, 4U}) {
        const auto n = static_cast<double>(legs);
        const std::vector<double> shares(legs, 1 / n);
        std::vector<double> pressures(legs, 0.0);
        pressures[1] = n * 100 * bar;
        std::vector<double> slopes(legs);
        EXPECT_DOUBLE_EQ(rotary_divider(100 * bar, shares, pressures, slopes), 0.0);
        EXPECT_DOUBLE_EQ(slopes[0], -1 / n);
    }
}

TEST(FlowDivider, ASpoolThrottlesToTheHardestGoingOutAndToTheSoftestComingBack) {
    const std::vector<double> legs{40 * bar, 90 * bar, 60 * bar};
    std::vector<double> slopes(3);
    const auto holds = [&](double flow, double common) {
        return std::abs(spool_divider(flow, common, legs, slopes).law) < 1e-12;
    };
    EXPECT_TRUE(holds(1e-3, 90 * bar));
    EXPECT_FALSE(holds(1e-3, 60 * bar));
    EXPECT_FALSE(holds(1e-3, 40 * bar));
    EXPECT_TRUE(holds(-1e-3, 40 * bar));
    EXPECT_FALSE(holds(-1e-3, 90 * bar));
    EXPECT_TRUE(holds(0.0, 70 * bar));
    EXPECT_FALSE(holds(0.0, 95 * bar));
    EXPECT_FALSE(holds(0.0, 35 * bar));
}

// Against central differences.
TEST(FlowDivider, ItsSlopesAreExact) {
    std::vector<double> at{2e-4, 75 * bar, 40 * bar, 90 * bar, 60 * bar};
    const auto law = [&](const std::vector<double>& x, std::vector<double>& slopes) {
        return spool_divider(x[0], x[1], std::span(x).subspan(2), slopes);
    };
    std::vector<double> slopes(3);
    std::vector<double> unused(3);
    const SpoolDivider here = law(at, slopes);
    const std::vector<double> exact{here.over_flow, here.over_common, slopes[0], slopes[1],
                                    slopes[2]};
    for (std::size_t i = 0; i < at.size(); ++i) {
        const double step = i == 0 ? 1e-9 : 10.0;
        std::vector<double> one = at;
        std::vector<double> other = at;
        one[i] += step;
        other[i] -= step;
        const double measured = (law(one, unused).law - law(other, unused).law) / (2.0 * step);
        EXPECT_NEAR(exact[i], measured, 1e-6 * std::abs(measured)) << i;
    }
}

TEST(Tilt, LawsAndTheirInverses) {
    const Angle largest(18 * std::numbers::pi / 180);
    for (const TiltLaw law : {TiltLaw::swashplate, TiltLaw::bent_axis}) {
        EXPECT_DOUBLE_EQ(relative_displacement(law, largest, largest), 1.0);
        EXPECT_DOUBLE_EQ(relative_displacement(law, Angle(0), largest), 0.0);
        for (double share = -1.0; share <= 1.0; share += 0.125)
            EXPECT_NEAR(relative_displacement(law, angle_for(law, share, largest), largest), share,
                        1e-15);
    }
    // Half the angle gives less than half by the tangent, more by the sine.
    const Angle half(largest.si() / 2);
    EXPECT_LT(relative_displacement(TiltLaw::swashplate, half, largest), 0.5);
    EXPECT_GT(relative_displacement(TiltLaw::bent_axis, half, largest), 0.5);
}

TEST(Heat, BalancesWhereWhatComesInGoesOut) {
    const Temperature air(kelvin(25));
    const ThermalConductance both = wall_conductance(Area(1.2), HeatTransfer(12)) +
                                    cooler_conductance(Power(6000), TemperatureDifference(40));
    const Temperature oil = balance_temperature(Power(5000), both, air);
    EXPECT_NEAR(heat_through(both, oil, air).si(), 5000, 1e-9);
    EXPECT_EQ(balance_temperature(Power(0), both, air), air);
    EXPECT_LT(heat_through(both, Temperature(kelvin(10)), air).si(), 0.0);
}

// What a pressure drop heats, the stream carries out.
TEST(Heat, StreamCarriesItsRise) {
    const Density density(870);
    const SpecificHeat heat(1900);
    const TemperatureDifference rise = temperature_rise(Pressure(100 * bar), density, heat);
    const Temperature cold(kelvin(50));
    EXPECT_NEAR(
        heat_carried(Flow(1e-3), density, heat, Temperature(cold.si() + rise.si()), cold).si(),
        lost_power(Flow(1e-3), Pressure(100 * bar)).si(), 1e-6);
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
