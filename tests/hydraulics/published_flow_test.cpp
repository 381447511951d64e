// Worked examples of pipes, fittings, orifices and valves. ESPO: A. Esposito, Fluid Power with
// Applications, in a companion notebook; CENG: Y. Cengel, J. Cimbala, Fluid Mechanics; QH3:
// worksheet of a university's hydraulics course, data read and answers computed. FLUIDS: computed
// with python3-fluids 1.0.22.
#include <gtest/gtest.h>

#include <loopwright/hydraulics/friction.h>
#include <loopwright/hydraulics/heat.h>
#include <loopwright/hydraulics/orifice.h>
#include <loopwright/hydraulics/pipe.h>
#include <loopwright/hydraulics/valves.h>
#include <loopwright/tests/hydraulics/figures.h>

namespace loopwright::hydraulics::testing {
namespace {

double area_of(double bore) { return std::numbers::pi / 4.0 * bore * bore; }
Pipe smooth(double bore, double length, double minor_losses = 0.0) {
    return {Length(bore), Length(length), Length(0.0), minor_losses};
}
Oil oil(double density, double centistokes) {
    return {Density(density), KinematicViscosity(centistokes * cst)};
}

const double inch_at_10 = 10 * foot * area_of(inch);  // 10 ft/s in a bore of 1 in
const double big_at_5 = 5.0 * area_of(0.05);

// ESPO ex 4-1 and 4-2, p. 132; the first with the short constant 7740.
TEST(ProofPublishedFlow, F01F02ReynoldsNumber) {
    EXPECT_TRUE(within(
        0.00026, reynolds_number(smooth(inch, 1), Flow(inch_at_10), KinematicViscosity(100 * cst)),
        774));
    EXPECT_TRUE(within(
        1e-9, reynolds_number(smooth(0.05, 1), Flow(big_at_5), KinematicViscosity(1000 * cst)),
        250));
}

// ESPO ex 4-3, p. 134.
TEST(ProofPublishedFlow, F03LaminarLoss) {
    EXPECT_TRUE(
        within(0.003, drop(smooth(inch, 100 * foot), inch_at_10, oil(0.9 * water, 100)).value / psi,
               60.0));
}

// ESPO ex 4-4, p. 132: 326 m of oil of 8800 N/m3, g 9.80; the companion calls the 28.7 bar kPa.
TEST(ProofPublishedFlow, F04LaminarLossSi) {
    const double lost = drop(smooth(0.05, 50), big_at_5, oil(8800 / 9.80, 1000)).value;
    EXPECT_TRUE(within(0.002, lost / 8800, 326));
    EXPECT_TRUE(within(0.002, lost / bar, 28.7));
}

// ESPO ex 4-5, p. 137: read off a chart.
TEST(ProofPublishedFlow, F05F06MoodyChart) {
    EXPECT_TRUE(within(0.016, friction_factor(1548, 0.0018).value, 0.042));
    EXPECT_TRUE(within(0.04, friction_factor(6192, 0.0018).value, 0.036));
}

// ESPO ex 4-6, p. 142; the book rounds the velocity to 12.2 ft/s.
TEST(ProofPublishedFlow, F07GlobeValve) {
    const double lost = drop(smooth(inch, 0, 10), 30 * gpm, oil(0.9 * water, 100)).value;
    EXPECT_TRUE(within(0.011, lost / psi, 9.0));
    EXPECT_TRUE(within(0.011, lost / (0.9 * water * 9.80665) / foot, 23.1));
}

// ESPO ex 4-7, p. 142.
TEST(ProofPublishedFlow, F08GateValve) {
    EXPECT_TRUE(
        within(0.005, drop(smooth(0.05, 0, 0.19), 0.02, oil(900, 100)).value / (900 * 9.80), 1.01));
}

// ESPO ex 4-8, p. 143: length of pipe that loses as much as the valve of ex 4-6; velocity rounded.
TEST(ProofPublishedFlow, F09EquivalentLength) {
    const Pipe valve = smooth(inch, 0, 10);
    const Pipe pipe = smooth(inch, 12.3 * foot);
    const Oil thick = oil(0.9 * water, 100);
    EXPECT_TRUE(
        within(0.005, drop(pipe, 30 * gpm, thick).value, drop(valve, 30 * gpm, thick).value));
}

// ESPO ex 4-9, p. 144: from the pump to the motor's inlet, whole numbers at each step. The kinetic
// head at the inlet is deducted: one more velocity head.
TEST(ProofPublishedFlow, F10PumpToMotor) {
    const Pipe line = smooth(inch, 21 * foot, 0.9 + 1.0);
    const Oil thick = oil(0.9 * water, 100);
    const double pump = 5 * horsepower / (30 * gpm);
    const double inlet =
        pump - drop(line, 30 * gpm, thick).value - head(thick.density, Length(20 * foot)).si();
    EXPECT_NEAR(inlet / psi, 260, 1.0);
}

// CENG ex 8-1: data and method read; 648 kPa over 40 m, level, 15 degrees up and down.
TEST(ProofPublishedFlow, F17HagenPoiseuille) {
    const Pipe pipe = smooth(0.05, 40);
    const Oil thick{Density(888), KinematicViscosity(0.8 / 888)};
    const double lift = head(thick.density, Length(40 * std::sin(std::numbers::pi / 12))).si();
    EXPECT_TRUE(within(0.002, drop(pipe, 0.00311, thick).value, 648e3));
    EXPECT_TRUE(within(0.002, drop(pipe, 0.00267, thick).value + lift, 648e3));
    EXPECT_TRUE(within(0.002, drop(pipe, 0.00354, thick).value - lift, 648e3));
    EXPECT_NEAR(reynolds_number(pipe, Flow(0.00354), thick.viscosity), 100, 0.5);
}

// CENG ex 8-3: water in a stainless pipe; method read, printed figures from memory.
TEST(ProofPublishedFlow, F18StainlessPipe) {
    const double density = 62.36 * pound / (foot * foot * foot);
    const Oil liquid{Density(density), KinematicViscosity(7.536e-4 * pound / foot / density)};
    const Pipe pipe{Length(2 * inch), Length(200 * foot), Length(7e-6 * foot)};
    const double flow = 0.2 * foot * foot * foot;
    const double lost = drop(pipe, flow, liquid).value;
    EXPECT_TRUE(within(0.003, lost / (pound_force / (foot * foot)), 1700));
    EXPECT_TRUE(within(0.003, lost / psi, 11.8));
    EXPECT_TRUE(within(0.003, lost_power(Flow(flow), Pressure(lost)).si(), 461));
}

// FLUIDS `Colebrook`.
TEST(ProofPublishedFlow, F19F20Colebrook) {
    struct Row {
        double reynolds, roughness, factor;
    };
    for (const Row& row : {Row{1e4, 0, 0.0308830},
                           {1e5, 0, 0.0179898},
                           {1e5, 1e-4, 0.0185139},
                           {1e6, 1e-4, 0.0134414},
                           {4000, 0.002, 0.0418909},
                           {5000, 1.5e-4, 0.0375603},
                           {6192, 0.0018, 0.0373362},
                           {126400, 4.2e-5, 0.0173976}})
        EXPECT_NEAR(friction_factor(row.reynolds, row.roughness).value, row.factor, 1e-7);
}

// Within what those formulas are apart from Colebrook's (Swamee and Jain 1976; Haaland 1983).
TEST(ProofPublishedFlow, F21F22OtherFormulas) {
    struct Row {
        double reynolds, roughness, swamee_jain, haaland;
    };
    for (const Row& row : {Row{1e4, 0, 0.030972, 0.030886},
                           {1e5, 0, 0.017863, 0.017825},
                           {1e5, 1e-4, 0.018452, 0.018265},
                           {1e6, 1e-4, 0.013508, 0.013326}}) {
        EXPECT_TRUE(
            within(0.008, friction_factor(row.reynolds, row.roughness).value, row.swamee_jain));
        EXPECT_TRUE(within(0.015, friction_factor(row.reynolds, row.roughness).value, row.haaland));
    }
}

// FLUIDS `one_phase_dP`, `friction_factor`.
TEST(ProofPublishedFlow, F26OilLine) {
    struct Row {
        double centistokes, reynolds, factor, drop;
    };
    const Pipe pipe{Length(0.02), Length(10), Length(1.5e-6)};
    const Flow flow(100 * litre_per_minute);
    EXPECT_TRUE(within(1e-6, velocity(pipe, flow).si(), 5.305165));
    for (const Row& row : {Row{15, 7073.55, 0.03401035, 2.081939},
                           {10, 10610.33, 0.03052295, 1.868459},
                           {8, 13262.91, 0.02882461, 1.764495}}) {
        const double reynolds =
            reynolds_number(pipe, flow, KinematicViscosity(row.centistokes * cst));
        EXPECT_TRUE(within(1e-6, reynolds, row.reynolds));
        EXPECT_TRUE(within(1e-6, friction_factor(reynolds, 1.5e-6 / 0.02).value, row.factor));
        EXPECT_TRUE(
            within(1e-6, drop(pipe, flow.si(), oil(870, row.centistokes)).value / bar, row.drop));
    }
}

// ESPO ex 10-1, p. 367 and ex 10-2, p. 368: bores for a velocity.
TEST(ProofPublishedFlow, F32F33LineSizing) {
    EXPECT_TRUE(within(0.002, velocity(smooth(0.783 * inch, 1), Flow(30 * gpm)).si() / foot, 20));
    EXPECT_TRUE(within(0.004, velocity(smooth(0.0204, 1), Flow(0.002)).si(), 6.1));
}

// The laminar limit is far away: these examples have no viscosity.
const double thin = 1.0;

// QH3, questions 1, 2 and 4.
TEST(ProofPublishedFlow, O01O02O04OrificeDrop) {
    const auto lost = [](double mm2, double coefficient, double lpm, double density) {
        return drop(Orifice{Area(mm2 * 1e-6), coefficient}, lpm * litre_per_minute,
                    oil(density, thin))
                   .value /
               bar;
    };
    EXPECT_TRUE(within(1e-7, lost(27, 0.89, 94, 871), 18.511168));
    EXPECT_TRUE(within(1e-7, lost(32, 0.65, 67, 883), 12.724805));
    EXPECT_TRUE(within(1e-6, lost(19, 0.71, 91, 871) + lost(44, 0.71, 91, 871), 65.31308));
}

// QH3, question 3: a spool at 8.4 of 10 mm.
TEST(ProofPublishedFlow, O03OrificeFlow) {
    EXPECT_TRUE(within(
        1e-7,
        flow(Orifice{Area(0.84 * 38e-6), 0.65}, 15 * bar, oil(868, thin)).value / litre_per_minute,
        73.186041));
}

// ESPO ex 8-4, p. 302; the book's constant 38.1 is 0.3 % high.
TEST(ProofPublishedFlow, O05SharpEdgedOrifice) {
    EXPECT_TRUE(within(
        0.0035,
        flow(Orifice::of(Length(inch), 0.80), 100 * psi, oil(0.9 * water, thin)).value / gpm, 252));
}

// ESPO ex 8-5, p. 304: flow of water at 1 psi, or at 1 kPa, of what passes the rated flow.
TEST(ProofPublishedFlow, O06O07FlowCoefficient) {
    const Orifice valve = Orifice::rated(Flow(25 * gpm), Pressure(100 * psi), Density(900));
    EXPECT_NEAR(flow(valve, psi, oil(1000, thin)).value / gpm, 2.37, 0.005);
    const Orifice si = Orifice::rated(Flow(94.8 * litre_per_minute), Pressure(687e3), Density(900));
    EXPECT_NEAR(flow(si, 1e3, oil(1000, thin)).value / litre_per_minute, 3.43, 0.005);
}

// ESPO ex 8-1, p. 293: poppet of 0.75 in2, 2500 lb/in, compressed 0.20 in, lifted 0.10 in.
TEST(ProofPublishedFlow, O11ReliefOpeningAndFullFlow) {
    const double opening = 2500 * 0.20 / 0.75 * psi;
    const double full = 2500 * 0.30 / 0.75 * psi;
    const Flow full_flow(20 * gpm);
    const SpringValve relief = relief_valve(Pressure(opening), Pressure(full), full_flow);
    const auto passed = [&](double pressure) {
        return opened_flow(relief, {0, pressure, 0, 0, 0}, full_flow).value / gpm;
    };
    EXPECT_EQ(passed(666.5 * psi), 0.0);
    EXPECT_GT(passed(667.5 * psi), 0.0);
    EXPECT_NEAR(passed(1000 * psi), 20, 1e-9);
    // Over that of its opening by half.
    EXPECT_NEAR(relief.override * full_flow.si() / opening, 0.5, 1e-12);
}

// ESPO ex 8-2 and 8-3, p. 299: power lost over a relief and over an unloading valve.
TEST(ProofPublishedFlow, O14O15PowerOverValves) {
    EXPECT_NEAR(lost_power(Flow(20 * gpm), Pressure(1000 * psi)).si() / horsepower, 11.7, 0.05);
    EXPECT_NEAR(lost_power(Flow(20 * gpm), Pressure(25 * psi)).si() / horsepower, 0.29, 0.005);
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
