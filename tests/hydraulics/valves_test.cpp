// Valves on springs: when each opens, that nothing flows before, and what Newton's steps see.
#include <random>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/complementarity.h>
#include <loopwright/hydraulics/valves.h>
#include <loopwright/tests/hydraulics/figures.h>
#include <loopwright/tests/hydraulics/slopes.h>

namespace loopwright::hydraulics::testing {
namespace {

ValveState at(double inlet, double outlet, double chamber = 0.0, double pilot = 0.0,
              double flow = 0.0) {
    return {flow, inlet * bar, outlet * bar, chamber * bar, pilot * bar};
}
double held(const SpringValve& valve, const ValveState& state) {
    return holding(valve, state).value / bar;
}

TEST(Valves, CheckHoldsItsSpringAndTheOutlet) {
    EXPECT_DOUBLE_EQ(held(check_valve(Pressure(0.5 * bar)), at(20, 24)), 4.5);
    EXPECT_DOUBLE_EQ(held(check_valve(Pressure(0.0)), at(24, 24)), 0.0);
}

TEST(Valves, ReliefCountsItsSpringChamber) {
    const SpringValve relief = relief_valve(Pressure(350 * bar));
    EXPECT_DOUBLE_EQ(held(relief, at(360, 20, 20)), 10);  // chamber at the outlet
    EXPECT_DOUBLE_EQ(held(relief, at(350, 20, 0)), 0);    // drained
    EXPECT_DOUBLE_EQ(held(relief, at(400, 420, 0)), 20);  // never backwards
}

TEST(Valves, ReliefNeedsItsFullPressureForItsFullFlow) {
    const SpringValve relief = relief_valve(Pressure(24 * bar), Pressure(30 * bar), Flow(1e-3));
    EXPECT_NEAR(held(relief, at(30, 0, 0, 0, 1e-3)), 0.0, 1e-12);
    EXPECT_NEAR(held(relief, at(27, 0, 0, 0, 0.5e-3)), 0.0, 1e-12);
}

TEST(Valves, UnloadingValveAsksItsPilot) {
    const SpringValve valve = unloading_valve(Pressure(100 * bar));
    EXPECT_DOUBLE_EQ(held(valve, at(80, 0, 0, 90)), 10);
    EXPECT_DOUBLE_EQ(held(valve, at(80, 0, 0, 100)), 0);
    EXPECT_DOUBLE_EQ(held(valve, at(80, 0, 5, 100)), 5);
}

TEST(Valves, CounterbalanceOpensByLoadOrPilot) {
    const SpringValve valve = counterbalance_valve(Pressure(250 * bar), 3.0);
    EXPECT_DOUBLE_EQ(held(valve, at(190, 0)), 60);
    EXPECT_DOUBLE_EQ(held(valve, at(190, 0, 0, 20)), 0);
    EXPECT_DOUBLE_EQ(held(valve, at(250, 0)), 0);
    EXPECT_DOUBLE_EQ(held(valve, at(250, 10, 10)), 40);  // what stands behind it holds 1 + 3 times
}

TEST(Valves, ReducingValveShutsAtItsSetting) {
    const SpringValve valve = reducing_valve(Pressure(30 * bar));
    EXPECT_DOUBLE_EQ(held(valve, at(100, 30)), 0);
    EXPECT_DOUBLE_EQ(held(valve, at(100, 35)), 5);
    EXPECT_DOUBLE_EQ(held(valve, at(100, 35, 5)), 0);
    EXPECT_DOUBLE_EQ(held(valve, at(20, 20)), 0);  // open below: no drop
    EXPECT_DOUBLE_EQ(held(valve, at(20, 25)), 5);
}

TEST(Valves, SlopesAreThoseOfTheValues) {
    std::mt19937 engine(20261130);
    const auto between = [&engine](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(engine);
    };
    for (int n = 0; n < 1000; ++n) {
        const SpringValve valve{.spring = Pressure(between(0, 100) * bar),
                                .override = between(1e9, 1e11),
                                .inlet = between(0, 1),
                                .outlet = -between(0, 1),
                                .chamber = -between(0, 4),
                                .pilot = between(0, 4)};
        const std::array<double, ValveState::count> x{between(0, 1e-3), between(0, 400) * bar,
                                                      between(0, 50) * bar, between(0, 20) * bar,
                                                      between(0, 50) * bar};
        const std::array<double, ValveState::count> scale{1e-5, bar, bar, bar, bar};
        const auto state_of = [](const auto& v) {
            return ValveState{v[0], v[1], v[2], v[3], v[4]};
        };
        expect_slopes<ValveState::count>([&](const auto& v) { return holding(valve, state_of(v)); },
                                         x, scale);
        const Flow full(between(1e-4, 1e-2));
        expect_slopes<ValveState::count>(
            [&](const auto& v) { return opened_flow(valve, state_of(v), full); }, x, scale, 1e-5);
    }
}

TEST(Valves, NothingFlowsBeforeItOpensAndMoreAfter) {
    const Flow full(1e-3);
    const SpringValve relief = relief_valve(Pressure(24 * bar), Pressure(30 * bar), full);
    const auto passed = [&](double pressure) {
        return opened_flow(relief, at(pressure, 0), full).value;
    };
    for (double pressure = 0; pressure <= 24; pressure += 0.5) EXPECT_EQ(passed(pressure), 0.0);
    double last = 0.0;
    for (double pressure = 24.001; pressure < 31; pressure += 0.01) {
        EXPECT_GT(passed(pressure), last);
        last = passed(pressure);
    }
    EXPECT_NEAR(passed(24.06), 1e-5, 1e-17);  // the band's end
    EXPECT_NEAR(passed(27), 0.5e-3, 1e-15);
}

Dual<2> both(double a, double b, double rounding = 0.0) {
    return complementarity(Dual<2>::variable(0, a), Dual<2>::variable(1, b), rounding);
}

TEST(Complementarity, IsNothingWhereOneIsNothing) {
    for (const double x : {0.0, 1e-9, 0.3, 1.0, 1e6}) {
        EXPECT_NEAR(both(x, 0.0).value, 0.0, 1e-15 * x);
        EXPECT_NEAR(both(0.0, x).value, 0.0, 1e-15 * x);
    }
    EXPECT_GT(both(1.0, 1.0).value, 0.1);
    EXPECT_LT(both(-1.0, 1.0).value, -0.1);
    EXPECT_LT(both(-1e-3, 0.0).value, 0.0);
}

TEST(Complementarity, HasSlopesEverywhere) {
    for (const auto& [a, b] : {std::pair(0.0, 0.0), std::pair(0.0, 1.0), std::pair(1.0, 0.0),
                               std::pair(-1.0, 2.0), std::pair(1e-12, 1e-12)}) {
        const Dual<2> f = both(a, b);
        EXPECT_GE(f.slope[0], 0.0);
        EXPECT_GE(f.slope[1], 0.0);
        EXPECT_GT(f.slope[0] + f.slope[1], 0.5);
    }
    expect_slopes<2>([](const auto& x) { return both(x[0], x[1]); }, {0.7, -0.3}, {0.1, 0.1});
    expect_slopes<2>([](const auto& x) { return both(x[0], x[1], 0.1); }, {0.0, 0.0}, {0.1, 0.1});
}

TEST(Complementarity, RoundedItsRootIsAHyperbola) {
    EXPECT_NEAR(both(0.5, 0.02, 0.1).value, 0.0, 1e-15);
}

// A pump of constant flow, a leak, and a relief without override: the relief takes the rest at its
// setting, or none below it. Unknown: pressure and flow over the relief; the same start for both.
TEST(Complementarity, NewtonFindsWhetherTheReliefBlows) {
    const SpringValve relief = relief_valve(Pressure(200 * bar));
    for (const double leak : {1e-12, 1e-9}) {  // m3/(s.Pa): 0.02 L/s or all at 200 bar
        const double delivered = 1e-3;
        double pressure = 0.0;
        double over = 0.0;
        int steps = 0;
        for (; steps < 30; ++steps) {
            const auto hold = holding(relief, {over, pressure, 0, 0, 0});
            Dual<2> spring(hold.value / (200 * bar));
            spring.slope = {hold.slope[ValveState::inlet] / 200,
                            hold.slope[ValveState::flow] * delivered / (200 * bar)};
            const Dual<2> flow = Dual<2>::variable(1, over / delivered);
            // Pressure counts in bar, flow in shares of what is delivered.
            const Dual<2> valve = complementarity(flow, spring);
            const double lost = delivered - leak * pressure - over;
            const double a = -leak * bar / delivered;
            if (std::abs(lost) < 1e-15 && std::abs(valve.value) < 1e-12) break;
            const double determinant = a * valve.slope[1] + valve.slope[0];
            pressure += (-lost / delivered * valve.slope[1] - valve.value) / determinant * bar;
            over +=
                (-a * valve.value + valve.slope[0] * lost / delivered) / determinant * delivered;
        }
        EXPECT_LT(steps, 30);
        EXPECT_NEAR(pressure / bar, leak > 1e-10 ? 10 : 200, 1e-6);
        EXPECT_NEAR(over, leak > 1e-10 ? 0.0 : delivered - leak * 200 * bar, 1e-12);
    }
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
