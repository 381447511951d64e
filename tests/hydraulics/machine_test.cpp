// The law of a machine: its slopes, its limits, and what must never happen.
#include <random>

#include <gtest/gtest.h>

#include <loopwright/tests/hydraulics/figures.h>
#include <loopwright/tests/hydraulics/running.h>
#include <loopwright/tests/hydraulics/slopes.h>

namespace loopwright::hydraulics::testing {
namespace {

class Lot {
  public:
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(engine_);
    }
    Machine machine() {
        return {.displacement = Displacement(between(5, 250) * cm3 / turn),
                .losses = {.slip = between(0, 1e-7),
                           .drag = between(0, 3e5),
                           .friction = between(0, 0.2)},
                .leakage = Leakage(between(0, 1e-12)),
                .case_share = between(0, 1),
                .constant_friction = Torque(between(0, 5))};
    }
    MachineState state() {
        return {between(0, 420) * bar,      between(0, 420) * bar, between(0, 3) * bar,
                between(-3000, 3000) * rpm, between(-1, 1),        between(0.005, 0.5)};
    }

  private:
    std::mt19937 engine_{20261130};
};

MachineState state_of(const std::array<double, MachineState::count>& x) {
    return {x[0], x[1], x[2], x[3], x[4], x[5]};
}

TEST(MachineLaw, SlopesAreThoseOfTheValues) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const Machine machine = lot.machine();
        MachineState s = lot.state();
        if (n % 4 == 0) s.shaft_speed = lot.between(-1, 1) * creep.si();
        if (n % 5 == 0) s.pressure_b = s.pressure_a + lot.between(-0.9, 0.9) * bar;
        const std::array<double, MachineState::count> at{s.pressure_a,
                                                         s.pressure_b,
                                                         s.pressure_case,
                                                         s.shaft_speed,
                                                         s.relative_displacement,
                                                         s.dynamic_viscosity};
        const std::array<double, MachineState::count> scale{0.1 * bar, 0.1 * bar, 0.1 * bar,
                                                            0.01,      0.1,       1e-3};
        for (const auto figure : {&MachineLaw::flow_a, &MachineLaw::flow_b, &MachineLaw::flow_case,
                                  &MachineLaw::torque})
            expect_slopes<MachineState::count>(
                [&](const auto& x) { return machine_law(machine, state_of(x)).*figure; }, at,
                scale);
    }
}

TEST(MachineLaw, LosesNoOil) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const MachineLaw law = machine_law(lot.machine(), lot.state());
        EXPECT_NEAR(law.flow_a.value + law.flow_b.value + law.flow_case.value, 0.0, 1e-15);
    }
}

// Power in at the shaft less power out at the ports is what is lost, never less than nothing.
TEST(MachineLaw, GainsNoPower) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const MachineState s = lot.state();
        const MachineLaw law = machine_law(lot.machine(), s);
        const double shaft = law.torque.value * s.shaft_speed;
        const double ports = law.flow_a.value * s.pressure_a + law.flow_b.value * s.pressure_b +
                             law.flow_case.value * s.pressure_case;
        EXPECT_GE(shaft - ports, -1e-9 * std::abs(shaft));
    }
}

// Turned round, with its ports exchanged, it is the same machine.
TEST(MachineLaw, IsTheSameTheOtherWayRound) {
    Lot lot;
    for (int n = 0; n < 100; ++n) {
        const Machine machine = lot.machine();
        const MachineState s = lot.state();
        const MachineLaw law = machine_law(machine, s);
        MachineState turned = s;
        std::swap(turned.pressure_a, turned.pressure_b);
        turned.shaft_speed = -s.shaft_speed;
        const MachineLaw back = machine_law(machine, turned);
        EXPECT_DOUBLE_EQ(back.flow_a.value, law.flow_b.value);
        EXPECT_DOUBLE_EQ(back.torque.value, -law.torque.value);
        turned.shaft_speed = s.shaft_speed;
        turned.relative_displacement = -s.relative_displacement;
        const MachineLaw over_centre = machine_law(machine, turned);
        EXPECT_DOUBLE_EQ(over_centre.flow_b.value, law.flow_a.value);
        EXPECT_DOUBLE_EQ(over_centre.torque.value, law.torque.value);
    }
}

TEST(MachineLaw, WithoutLossesIsIdeal) {
    Lot lot;
    for (int n = 0; n < 100; ++n) {
        const Machine ideal{.displacement = Displacement(1e-5)};
        const MachineState s = lot.state();
        const MachineLaw law = machine_law(ideal, s);
        EXPECT_DOUBLE_EQ(law.flow_a.value, 1e-5 * s.relative_displacement * s.shaft_speed);
        EXPECT_DOUBLE_EQ(law.flow_case.value, 0.0);
        EXPECT_DOUBLE_EQ(law.torque.value,
                         1e-5 * s.relative_displacement * (s.pressure_a - s.pressure_b));
        const auto all = efficiencies(ideal, s, law);
        ASSERT_TRUE(all.has_value());
        EXPECT_NEAR(all->total(), 1.0, 1e-12);
    }
}

// At no stroke both sides leak into the housing, each by its own pressure; drag and friction stay.
TEST(MachineLaw, LeaksAndDragsAtNoStroke) {
    const Machine machine{.displacement = Displacement(2e-5),
                          .losses = {.slip = 1e-8, .drag = 1e5, .friction = 0.05}};
    const MachineLaw law = machine_law(machine, {200 * bar, 20 * bar, 2 * bar, 100, 0.0, 0.02});
    EXPECT_DOUBLE_EQ(law.flow_a.value, -1e-8 * 2e-5 / 0.02 * 198 * bar);
    EXPECT_DOUBLE_EQ(law.flow_b.value, -1e-8 * 2e-5 / 0.02 * 18 * bar);
    EXPECT_DOUBLE_EQ(law.torque.value, 1e5 * 2e-5 * 0.02 * 100 + 0.05 * 2e-5 * 180 * bar);
}

// Held fast, a motor takes in what leaks and gives its ideal torque: at standstill friction has no
// way to point.
TEST(MachineLaw, StalledTakesInWhatLeaks) {
    const Machine machine{.displacement = Displacement(2e-5),
                          .losses = {.slip = 1e-8, .drag = 1e5, .friction = 0.05},
                          .case_share = 0.0};
    const MachineLaw law = machine_law(machine, motoring(200 * bar, 0.0));
    EXPECT_DOUBLE_EQ(-law.flow_b.value, 1e-8 * 2e-5 / some_viscosity * 200 * bar);
    EXPECT_DOUBLE_EQ(law.flow_a.value, -law.flow_b.value);
    EXPECT_DOUBLE_EQ(law.flow_case.value, 0.0);
    EXPECT_DOUBLE_EQ(-law.torque.value, 2e-5 * 200 * bar);
    EXPECT_FALSE(efficiencies(machine, motoring(200 * bar, 0.0), law).has_value());
}

TEST(MachineLaw, FrictionIsWholeOutsideItsBand) {
    const Machine machine{.displacement = Displacement(2e-5), .losses = {.friction = 0.05}};
    const double whole = 0.05 * 2e-5 * 200 * bar;
    for (const double speed : {0.5, 1.0, 300.0}) {
        EXPECT_DOUBLE_EQ(machine_law(machine, pumping(200 * bar, speed, 0.0)).torque.value, whole);
        EXPECT_DOUBLE_EQ(machine_law(machine, pumping(200 * bar, -speed, 0.0)).torque.value,
                         -whole);
    }
    double last = -1.0;
    for (double speed = 0.0; speed < 0.5; speed += 0.01) {
        const double torque = machine_law(machine, pumping(200 * bar, speed, 0.0)).torque.value;
        EXPECT_GT(torque, last);
        last = torque;
    }
}

TEST(MachineLaw, ConstantFrictionNeedsNoPressure) {
    const Machine machine{.displacement = Displacement(2e-5), .constant_friction = Torque(3)};
    EXPECT_DOUBLE_EQ(machine_law(machine, pumping(0.0, 100)).torque.value, 3.0);
    EXPECT_DOUBLE_EQ(machine_law(machine, pumping(0.0, -100)).torque.value, -3.0);
}

TEST(MachineLaw, ThinnerOilNeverLowersLeakage) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const Machine machine = lot.machine();
        const MachineState s = lot.state();
        MachineState thinner = s;
        thinner.dynamic_viscosity *= lot.between(0.1, 1.0);
        const double leak = machine_law(machine, s).flow_case.value;
        const double more = machine_law(machine, thinner).flow_case.value;
        if (leak > 0.0) {
            EXPECT_GE(more, leak);
        }
        const MachineLaw law = machine_law(machine, s);
        EXPECT_LE(law.flow_a.slope[MachineState::a], 0.0);
        EXPECT_GE(law.flow_case.slope[MachineState::a], 0.0);
        EXPECT_GE(law.torque.slope[MachineState::speed], 0.0);
    }
}

// A driven pump that overruns is a motor, with a motor's efficiencies.
TEST(MachineEfficiency, FollowsTheWayOfThePower) {
    const Machine machine{.displacement = Displacement(2e-5),
                          .losses = {.slip = 1e-8, .drag = 1e5, .friction = 0.05}};
    for (const double stroke : {1.0, -1.0})
        for (const double pressure : {200 * bar, -200 * bar}) {
            MachineState s{pressure, 0.0, 0.0, 150, stroke, 0.03};
            if (pressure < 0.0) s = {0.0, -pressure, 0.0, 150, stroke, 0.03};
            const auto all = efficiencies(machine, s, machine_law(machine, s));
            ASSERT_TRUE(all.has_value());
            EXPECT_EQ(all->work, stroke * pressure > 0.0 ? Work::pump : Work::motor);
            EXPECT_LT(all->volumetric, 1.0);
            EXPECT_LT(all->hydro_mechanical, 1.0);
            EXPECT_GT(all->total(), 0.7);
        }
}

TEST(MachineEfficiency, IsNotKnownWhereAllIsLost) {
    const Machine leaky{.displacement = Displacement(2e-5), .losses = {.slip = 1e-6}};
    const MachineState s = pumping(400 * bar, 10);
    EXPECT_FALSE(efficiencies(leaky, s, machine_law(leaky, s)).has_value());
    const Machine stiff{.displacement = Displacement(2e-5), .losses = {.friction = 1.5}};
    const MachineState m = motoring(400 * bar, 10);
    EXPECT_FALSE(efficiencies(stiff, m, machine_law(stiff, m)).has_value());
}

const RatedPoint point{Pressure(250 * bar), Speed(1800 * rpm), DynamicViscosity(0.026)};

TEST(Wilson, IdentifiedCoefficientsGiveTheEfficienciesBack) {
    Lot lot;
    for (const Work work : {Work::pump, Work::motor})
        for (int n = 0; n < 100; ++n) {
            const double volumetric = lot.between(0.5, 1.0);
            const double mechanical = lot.between(0.5, 1.0);
            const double share = lot.between(0.0, 1.0);
            const auto torque = torque_losses_from(work, mechanical, share, point).value();
            const Machine machine{.displacement = Displacement(1e-5),
                                  .losses = {.slip = slip_from(work, volumetric, point).value(),
                                             .drag = torque.drag,
                                             .friction = torque.friction},
                                  .case_share = lot.between(0, 1)};
            MachineState s = work == Work::pump ? pumping(250 * bar, 1800 * rpm)
                                                : motoring(250 * bar, 1800 * rpm);
            s.dynamic_viscosity = 0.026;
            const AtWork at = run(machine, s);
            EXPECT_EQ(at.efficiencies.work, work);
            EXPECT_NEAR(at.efficiencies.volumetric, volumetric, 1e-12);
            EXPECT_NEAR(at.efficiencies.hydro_mechanical, mechanical, 1e-12);
        }
}

TEST(Wilson, TwoPointsTellDragFromFriction) {
    const RatedPoint slow{Pressure(250 * bar), Speed(600 * rpm), DynamicViscosity(0.026)};
    const double drag = 1.2e5;
    const double friction = 0.03;
    const auto pump = [&](const RatedPoint& p) {
        return 1.0 / (1.0 + friction + drag * p.sommerfeld());
    };
    const auto found = torque_losses_from(Work::pump, pump(point), point, pump(slow), slow).value();
    EXPECT_NEAR(found.drag, drag, 1e-6 * drag);
    EXPECT_NEAR(found.friction, friction, 1e-9);
    EXPECT_FALSE(torque_losses_from(Work::pump, 0.9, point, 0.8, point));
    EXPECT_FALSE(torque_losses_from(Work::pump, 0.9, point, 0.8, slow));
}

TEST(Wilson, CaseFlowTellsItsShare) {
    const double slip = slip_from(Work::motor, 0.95, point).value();
    const Displacement displacement(1e-5);
    Machine motor{.displacement = displacement, .losses = {.slip = slip}};
    motor.case_share = case_share_from(Flow(3e-5), slip, displacement, point).value();
    MachineState s = motoring(250 * bar, 1800 * rpm);
    s.dynamic_viscosity = 0.026;
    EXPECT_TRUE(within(1e-12, machine_law(motor, s).flow_case.value, 3e-5));
    EXPECT_FALSE(case_share_from(Flow(1e-3), slip, displacement, point));
}

TEST(Wilson, SaysWhatIsOutOfRange) {
    EXPECT_NE(slip_from(Work::pump, 1.2, point).reason().find("1.2"), std::string::npos);
    EXPECT_FALSE(slip_from(Work::motor, 0.0, point));
    EXPECT_FALSE(torque_losses_from(Work::pump, 0.9, 1.1, point));
    EXPECT_FALSE(slip_from(Work::pump, 0.9, {Pressure(0.0), Speed(1), DynamicViscosity(1)}));
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
