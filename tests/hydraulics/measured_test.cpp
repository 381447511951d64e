// Measured tables: interpolated inside, said outside; a machine with tables in place of
// coefficients.
#include <random>
#include <stdexcept>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/measured_drop.h>
#include <loopwright/hydraulics/measured_machine.h>
#include <loopwright/tests/hydraulics/figures.h>
#include <loopwright/tests/hydraulics/running.h>
#include <loopwright/tests/hydraulics/slopes.h>

namespace loopwright::hydraulics::testing {
namespace {

using Axes = std::vector<std::vector<double>>;

/// Figures of f over the axes, the last changing fastest.
template <class F>
Grid grid_of(const Axes& axes, const F& f) {
    std::vector<double> figures;
    for (const double x : axes[0])
        for (const double y : axes[1])
            for (const double z : axes[2]) figures.push_back(f(x, y, z));
    return {axes, figures};
}

TEST(Grid, IsExactForWhatIsLinearInEachAxis) {
    const auto f = [](double x, double y, double z) {
        return 3 + 2 * x - y + 0.5 * x * y - z * x + 2 * x * y * z;
    };
    const Grid grid = grid_of({{0, 1, 4}, {-2, 3}, {1, 2, 5, 6}}, f);
    std::mt19937 engine(20261130);
    std::uniform_real_distribution<double> share(0, 1);
    for (int n = 0; n < 200; ++n) {
        const std::array<double, 3> at{4 * share(engine), -2 + 5 * share(engine),
                                       1 + 5 * share(engine)};
        EXPECT_FALSE(grid.outside(at).has_value());
        EXPECT_NEAR(grid.at(at).value, f(at[0], at[1], at[2]), 1e-12);
        expect_slopes<3>([&](const auto& x) { return grid.at(x); }, at, {1e-3, 1e-3, 1e-3});
    }
    for (const double x : {0.0, 1.0, 4.0})  // on the edges
        EXPECT_DOUBLE_EQ(grid.at(std::array{x, 3.0, 6.0}).value, f(x, 3, 6));
    const Grid bent(Axes{{0, 1, 2}}, {0, 1, 5});  // on an inner edge, the slope of the cell above
    EXPECT_DOUBLE_EQ(bent.at(std::array{1.0}).slope[0], 4.0);
    EXPECT_DOUBLE_EQ(bent.at(std::array{2.0}).slope[0], 4.0);
}

TEST(Grid, SaysWhatItLeaves) {
    const Grid grid(Axes{{0, 1, 4}, {10}}, {1, 2, 3});
    EXPECT_FALSE(grid.outside(std::array{4.0, 10.0}).has_value());
    const auto beyond = grid.outside(std::array{4.5, 10.0});
    ASSERT_TRUE(beyond.has_value());
    EXPECT_EQ(beyond->axis, 0U);
    EXPECT_EQ(beyond->most, 4.0);
    EXPECT_EQ(grid.outside(std::array{2.0, 11.0})->axis, 1U);
    EXPECT_TRUE(grid.outside(std::array{std::nan(""), 10.0}).has_value());
    EXPECT_DOUBLE_EQ(grid.at(std::array{5.5, 10.0}).value, 3.5);  // the last cell goes on
}

TEST(Grid, AnEmptyAxisIsNone) {
    const Grid grid(Axes{{0, 2}, {}, {0, 1}}, {1, 2, 3, 4});
    EXPECT_FALSE(grid.outside(std::array{1.0, 1e9, 0.5}).has_value());
    EXPECT_DOUBLE_EQ(grid.at(std::array{1.0, 1e9, 0.5}).value, 2.5);
    EXPECT_DOUBLE_EQ(grid.at(std::array{1.0, 1e9, 0.5}).slope[1], 0.0);
}

TEST(Grid, RefusesWhatIsNoGrid) {
    EXPECT_THROW(Grid(Axes{{0, 0}}, {1, 2}), std::invalid_argument);
    EXPECT_THROW(Grid(Axes{{0, 1}}, {1, 2, 3}), std::invalid_argument);
    EXPECT_THROW(Grid(Axes{}, {}), std::invalid_argument);
}

// Tables taken from the law itself. Flow is linear in pressure, speed and stroke, torque is not in
// friction only: between grid points outside its bands they give the law again.
const Machine wilson{.displacement = Displacement(100 * cm3 / turn),
                     .losses = {.slip = 1.5e-8, .drag = 1.68e5, .friction = 0.045},
                     .case_share = 0.7};
const Axes axes{{10 * bar, 200 * bar, 400 * bar}, {10, 150, 300}, {0, 0.5, 1}};

MachineState working(Work work, double pressure, double speed, double stroke = 1.0) {
    return work == Work::pump ? pumping(pressure, speed, stroke)
                              : motoring(pressure, speed, stroke);
}

// At the largest displacement.
MeasuredMachine efficiencies_measured(Work work) {
    const Axes used{{100 * bar, 200 * bar, 400 * bar}, {50, 150, 300}, {1}};
    const auto at = [work](double pressure, double speed) {
        return run(wilson, working(work, pressure, speed)).efficiencies;
    };
    MeasuredMachine machine{work, {wilson.displacement, {}, {}, wilson.case_share, {}}, {}, {}};
    machine.flow = MeasuredColumn{
        grid_of(used, [&](double p, double n, double) { return at(p, n).volumetric; }), true};
    machine.torque = MeasuredColumn{
        grid_of(used, [&](double p, double n, double) { return at(p, n).hydro_mechanical; }), true};
    return machine;
}

MeasuredMachine pump_measured() {
    MeasuredMachine machine{
        Work::pump, {wilson.displacement, {}, {}, wilson.case_share, {}}, {}, {}};
    const auto law = [](double pressure, double speed, double stroke) {
        return machine_law(wilson, pumping(pressure, speed, stroke));
    };
    machine.flow = MeasuredColumn{
        grid_of(axes, [&](double p, double n, double x) { return law(p, n, x).flow_a.value; })};
    machine.torque = MeasuredColumn{
        grid_of(axes, [&](double p, double n, double x) { return law(p, n, x).torque.value; })};
    return machine;
}

TEST(MeasuredMachine, GivesBackTheLawThatItWasMeasuredOn) {
    const MeasuredMachine pump = pump_measured();
    for (const double pressure : {50 * bar, 333 * bar})
        for (const double speed : {25.0, -222.0})
            for (const double stroke : {0.1, -0.8}) {
                MachineState s = pumping(pressure, speed, stroke);
                if (speed * stroke < 0.0) std::swap(s.pressure_a, s.pressure_b);
                EXPECT_FALSE(outside(pump, s).has_value());
                const MachineLaw law = machine_law(wilson, s);
                const MachineLaw table = machine_law(pump, s);
                EXPECT_NEAR(table.flow_a.value, law.flow_a.value, 1e-15);
                EXPECT_NEAR(table.torque.value, law.torque.value, 1e-9);
                EXPECT_NEAR(table.flow_a.value + table.flow_b.value + table.flow_case.value, 0.0,
                            1e-15);
                // The law leaks to the housing by one port's pressure; so do the tables.
                EXPECT_NEAR(table.flow_case.value, law.flow_case.value, 1e-15);
            }
}

TEST(MeasuredMachine, MotorTakesInWhatWasMeasured) {
    MeasuredMachine motor{
        Work::motor, {wilson.displacement, {}, {}, wilson.case_share, {}}, {}, {}};
    const auto law_at = [](double pressure, double speed, double stroke) {
        return machine_law(wilson, motoring(pressure, speed, stroke));
    };
    motor.flow = MeasuredColumn{
        grid_of(axes, [&](double p, double n, double x) { return -law_at(p, n, x).flow_b.value; })};
    motor.torque = MeasuredColumn{
        grid_of(axes, [&](double p, double n, double x) { return -law_at(p, n, x).torque.value; })};
    const MachineState s = motoring(250 * bar, 111, 0.6);
    const MachineLaw law = machine_law(wilson, s);
    const MachineLaw table = machine_law(motor, s);
    EXPECT_NEAR(table.flow_b.value, law.flow_b.value, 1e-15);
    EXPECT_NEAR(table.flow_a.value, law.flow_a.value, 1e-15);
    EXPECT_NEAR(table.torque.value, law.torque.value, 1e-9);
}

TEST(MeasuredMachine, TakesEfficienciesAtTheirPoints) {
    for (const Work work : {Work::pump, Work::motor}) {
        const MeasuredMachine machine = efficiencies_measured(work);
        const MachineState s = working(work, 200 * bar, 150);
        const MachineLaw law = machine_law(machine, s);
        EXPECT_NEAR(law.flow_a.value, machine_law(wilson, s).flow_a.value, 1e-15);
        EXPECT_NEAR(law.torque.value, machine_law(wilson, s).torque.value, 1e-9);
        EXPECT_EQ(outside(machine, working(work, 200 * bar, 150, 0.5))->axis, 2U);
    }
}

TEST(MeasuredMachine, SaysWhatWasNotMeasured) {
    const MeasuredMachine pump = pump_measured();
    EXPECT_EQ(outside(pump, pumping(450 * bar, 150))->axis, 0U);
    EXPECT_EQ(outside(pump, pumping(200 * bar, 301))->axis, 1U);
    // Overrunning: pressure the other way.
    EXPECT_EQ(outside(pump, motoring(200 * bar, 150))->axis, 0U);
}

TEST(MeasuredMachine, HasTheSlopesOfItsTables) {
    const MeasuredMachine pump = pump_measured();
    for (const double speed : {77.0, -77.0})
        for (const auto figure : {&MachineLaw::flow_a, &MachineLaw::flow_b, &MachineLaw::flow_case,
                                  &MachineLaw::torque})
            expect_slopes<MachineState::count>(
                [&](const auto& x) {
                    return machine_law(pump, {x[0], x[1], x[2], x[3], x[4], x[5]}).*figure;
                },
                {250 * bar, 10 * bar, 0, speed, speed > 0 ? 0.3 : -0.3, 0.03},
                {bar, bar, bar, 1, 0.01, 0.001});
}

TEST(MeasuredDrop, IsTheSameBothWays) {
    const MeasuredDrop part{
        Grid(Axes{{0, 1e-3, 2e-3}, {20e-6, 60e-6}}, {0, 0, 1 * bar, 2 * bar, 3 * bar, 5 * bar})};
    const Oil oil{Density(870), KinematicViscosity(40e-6)};
    EXPECT_NEAR(drop(part, 1e-3, oil).value, 1.5 * bar, 1e-6);
    EXPECT_NEAR(drop(part, -1.5e-3, oil).value, -2.75 * bar, 1e-6);
    EXPECT_EQ(outside(part, -2.5e-3, oil)->axis, 0U);
    for (const double flow : {0.7e-3, -1.7e-3})
        expect_slopes<2>(
            [&](const auto& x) {
                return drop(part, x[0], {Density(870), KinematicViscosity(x[1])});
            },
            {flow, 40e-6}, {1e-5, 1e-6});
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
