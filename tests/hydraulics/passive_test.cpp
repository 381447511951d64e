// Pipes, orifices, elements, flow controls: slopes, limits, one way only.
#include <random>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/element.h>
#include <loopwright/hydraulics/flow_control.h>
#include <loopwright/hydraulics/friction.h>
#include <loopwright/hydraulics/orifice.h>
#include <loopwright/hydraulics/pipe.h>
#include <loopwright/tests/hydraulics/figures.h>
#include <loopwright/tests/hydraulics/slopes.h>

namespace loopwright::hydraulics::testing {
namespace {

class Lot {
  public:
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(engine_);
    }
    /// As likely in each decade.
    double over_decades(double low, double high) {
        return std::pow(10.0, between(std::log10(low), std::log10(high)));
    }
    Pipe pipe() {
        const double bore = between(0.004, 0.06);
        return {Length(bore), Length(between(0, 20)), Length(bore * between(0, 0.05)),
                between(0, 10)};
    }

  private:
    std::mt19937 engine_{20261130};
};

Oil oil(double viscosity) { return {Density(870), KinematicViscosity(viscosity)}; }

// drop(flow, viscosity) of a part.
template <class Part>
auto law_of(const Part& part) {
    return [part](const std::array<double, 2>& x) { return drop(part, x[0], oil(x[1])); };
}

TEST(Friction, SlopeIsThatOfTheValue) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const double roughness = lot.between(0, 0.05);
        const double reynolds = lot.over_decades(1, 1e7);
        expect_slopes<1>([&](const auto& x) { return friction_factor(x[0], roughness); },
                         {reynolds}, {0.1 * reynolds}, 1e-5);
    }
}

TEST(Friction, JoinsLaminarAndTurbulentWithoutAStep) {
    for (const double roughness : {0.0, 1e-4, 0.05})
        for (const double edge : {laminar_until, turbulent_from}) {
            const Dual<1> below = friction_factor(edge * (1 - 1e-9), roughness);
            const Dual<1> above = friction_factor(edge * (1 + 1e-9), roughness);
            EXPECT_NEAR(below.value, above.value, 1e-9);
            EXPECT_NEAR(below.slope[0] * edge, above.slope[0] * edge, 1e-6);
        }
    EXPECT_DOUBLE_EQ(friction_factor(laminar_until, 0.01).value, 64 / laminar_until);
    EXPECT_DOUBLE_EQ(poiseuille_number(0.0, 0.01).value, 64.0);
}

TEST(Pipe, SlopesAreThoseOfTheDrop) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const Pipe pipe = lot.pipe();
        const double viscosity = lot.over_decades(2e-6, 1e-3);
        const double flow =
            lot.over_decades(0.1, 1e5) * viscosity * pipe.bore.si() * (n % 2 == 0 ? 1 : -1);
        expect_slopes<2>(law_of(pipe), {flow, viscosity}, {0.1 * std::abs(flow), 0.1 * viscosity},
                         1e-5);
    }
}

TEST(Pipe, DropIsOddAndRises) {
    Lot lot;
    for (int n = 0; n < 50; ++n) {
        const Pipe pipe = lot.pipe();
        const Oil liquid = oil(lot.over_decades(2e-6, 1e-3));
        double last = 0.0;
        for (double reynolds = 1; reynolds < 1e6; reynolds *= 1.02) {
            const double flow =
                reynolds * liquid.viscosity.si() * pipe.bore.si() * std::numbers::pi / 4;
            const double lost = drop(pipe, flow, liquid).value;
            EXPECT_GT(lost, last);
            EXPECT_DOUBLE_EQ(drop(pipe, -flow, liquid).value, -lost);
            last = lost;
        }
    }
}

// Hagen and Poiseuille: 128 mu L q / (pi d^4), down to no flow and its slope there.
TEST(Pipe, IsLaminarAtNoFlow) {
    const Pipe pipe{Length(0.01), Length(2), Length(1e-5), 3.0};
    const auto still = drop(pipe, 0.0, oil(1e-4));
    EXPECT_EQ(still.value, 0.0);
    EXPECT_NEAR(still.slope[ThroughFlow::flow], 128 * 870 * 1e-4 * 2 / (std::numbers::pi * 1e-8),
                1e-3);
    EXPECT_EQ(still.slope[ThroughFlow::viscosity], 0.0);
}

TEST(Orifice, DropAndFlowAreOneLaw) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const Orifice orifice = Orifice::of(Length(lot.over_decades(5e-4, 2e-2)), 0.61);
        const Oil liquid = oil(lot.over_decades(2e-6, 1e-3));
        const double passed = (n % 2 == 0 ? 1 : -1) * lot.over_decades(1e-9, 1e-2);
        const auto lost = drop(orifice, passed, liquid);
        const auto back = flow(orifice, lost.value, liquid);
        EXPECT_TRUE(within(1e-12, back.value, passed));
        EXPECT_TRUE(within(1e-9, back.slope[0] * lost.slope[0], 1.0));
        EXPECT_GT(lost.slope[0], 0.0);
    }
}

TEST(Orifice, SlopesAreThoseOfTheValues) {
    Lot lot;
    for (int n = 0; n < 1000; ++n) {
        const Orifice orifice = Orifice::of(Length(lot.over_decades(5e-4, 2e-2)), 0.61);
        const double viscosity = lot.over_decades(2e-6, 1e-3);
        const double passed = (n % 2 == 0 ? 1 : -1) * lot.over_decades(1e-9, 1e-2);
        expect_slopes<2>(law_of(orifice), {passed, viscosity},
                         {0.1 * std::abs(passed), 0.1 * viscosity}, 1e-5);
        const double lost = drop(orifice, passed, oil(viscosity)).value;
        expect_slopes<2>([&](const auto& x) { return flow(orifice, x[0], oil(x[1])); },
                         {lost, viscosity}, {0.1 * std::abs(lost), 0.1 * viscosity}, 1e-5);
    }
}

// Far below the limit, flow goes with the drop and against the viscosity; at none it has a slope.
TEST(Orifice, IsLaminarAtNoFlow) {
    const Orifice orifice = Orifice::of(Length(0.001), 0.61);
    const double at_none = flow(orifice, 0.0, oil(1e-4)).slope[0];
    EXPECT_GT(at_none, 0.0);
    EXPECT_TRUE(within(1e-3, flow(orifice, 1.0, oil(1e-4)).value, at_none));
    EXPECT_TRUE(within(1e-9, flow(orifice, 0.0, oil(2e-4)).slope[0], at_none / 2));
}

// At the limit's Reynolds number, flow times bore over area and viscosity, the laminar and the
// turbulent law are equal, and the two in one square root of 2 times as much.
TEST(Orifice, LawsMeetAtTheLimit) {
    const double bore = 0.002;
    const double area = std::numbers::pi / 4 * bore * bore;
    const Orifice orifice = Orifice::of(Length(bore), 0.61);
    const double limit = orifice_laminar_until * 46e-6 / bore * area;
    const double speed = limit / (0.61 * area);
    EXPECT_TRUE(within(1e-12, drop(orifice, limit, oil(46e-6)).value,
                       std::sqrt(2) * 870 / 2 * speed * speed));
}

TEST(Orifice, RatedPassesItsFlow) {
    const Orifice orifice = Orifice::rated(Flow(3e-4), Pressure(20 * bar), Density(870));
    EXPECT_TRUE(within(1e-6, drop(orifice, 3e-4, oil(1e-7)).value, 20 * bar));
}

TEST(Element, DropGoesWithFlowAndViscosity) {
    const Element element{Flow(1e-3), Pressure(0.3 * bar), KinematicViscosity(30e-6)};
    EXPECT_DOUBLE_EQ(drop(element, 1e-3, oil(30e-6)).value, 0.3 * bar);
    EXPECT_DOUBLE_EQ(drop(element, -5e-4, oil(60e-6)).value, -0.3 * bar);
    expect_slopes<2>(law_of(element), {7e-4, 46e-6}, {1e-4, 1e-5});
}

TEST(FlowControl, KeepsItsFlow) {
    const FlowControl control{Flow(2e-4), Pressure(8 * bar)};
    EXPECT_DOUBLE_EQ(flow(control, 8 * bar).value, 2e-4);
    EXPECT_DOUBLE_EQ(flow(control, 300 * bar).value, 2e-4);
    EXPECT_DOUBLE_EQ(flow(control, 2 * bar).value, 1e-4);
    EXPECT_EQ(flow(control, 0.0).value, 0.0);
    EXPECT_EQ(flow(control, -5 * bar).value, 0.0);
}

TEST(FlowControl, RisesSmoothly) {
    const FlowControl control{Flow(2e-4), Pressure(8 * bar)};
    double last = 0.0;
    for (double share = 0.0005; share < 1.0; share += 0.001) {
        const double drop = share * 8 * bar;
        EXPECT_GT(flow(control, drop).value, last);
        last = flow(control, drop).value;
        expect_slopes<1>([&](const auto& x) { return flow(control, x[0]); }, {drop},
                         {0.01 * share * 8 * bar}, 1e-5);
    }
    for (const double edge : {root_from, regulating_from, 1.0})
        EXPECT_NEAR(flow(control, (edge - 1e-10) * 8 * bar).slope[0],
                    flow(control, (edge + 1e-10) * 8 * bar).slope[0], 1e-15);
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
