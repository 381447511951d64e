// Worked examples of pumps, motors and transmissions. ESPO: A. Esposito, Fluid Power with
// Applications; SULL: J. Sullivan, Fluid Power: Theory and Applications, 4th ed.; both read in
// companion notebooks that work the numbered examples. Tolerances are those of the printed digits,
// or of the short constants that a book uses (63 000 for 63 025, 3.06 for 3.0637), where a comment
// says so.
#include <gtest/gtest.h>

#include <loopwright/hydraulics/displacement.h>
#include <loopwright/hydraulics/heat.h>
#include <loopwright/hydraulics/pipe.h>
#include <loopwright/tests/hydraulics/figures.h>
#include <loopwright/tests/hydraulics/running.h>

namespace loopwright::hydraulics::testing {
namespace {

constexpr double pi = std::numbers::pi;

// ESPO ex 5-1, p. 167: gear pump, do 3 in, di 2 in, 1 in wide.
TEST(ProofPublishedMachines, P08GearPumpVolumetricEfficiency) {
    const double volume = pi / 4.0 * (9.0 - 4.0) * cubic_inch;
    const Efficiencies pump =
        measured_pump({volume / turn, 100 * bar, 1800 * rpm}, {28 * gpm, 1e9});
    EXPECT_NEAR(100 * pump.volumetric, 91.5, 0.05);
}

// ESPO ex 5-2, p. 167; its 55.3 is rounded up.
TEST(ProofPublishedMachines, P09GearPumpFlow) {
    const double volume = pi / 4.0 * (75.0 * 75.0 - 50.0 * 50.0) * 25.0 * 1e-9;
    const AtWork pump = run_pump({volume / turn, 100 * bar, 1000 * rpm, 0.90});
    EXPECT_TRUE(within(0.002, pump.flow / litre_per_minute, 55.3));
}

// ESPO ex 5-5, p. 178.
TEST(ProofPublishedMachines, P10PowerSavedByPressureCompensation) {
    const Pressure pressure(1200 * psi);
    const Power saved =
        lost_power(Flow(20 * gpm), pressure) - lost_power(Flow(0.7 * gpm), pressure);
    EXPECT_NEAR(saved.si() / horsepower, 13.5, 0.05);
}

// Swept by the pistons at a right angle's half, whose tangent is 1.
double axial_piston_volume(int pistons, double piston, double circle) {
    return pistons * pi / 4.0 * piston * piston * circle;
}

// ESPO ex 5-6, p. 182.
TEST(ProofPublishedMachines, P11SwashplateAngle) {
    const double volume = axial_piston_volume(9, 0.5 * inch, 5 * inch);
    const double needed = 16 * gpm / 0.95 / (3000 * rpm) * turn;
    const Angle angle = angle_for(TiltLaw::swashplate, needed / volume, Angle(pi / 4.0));
    EXPECT_NEAR(std::tan(angle.si()), 0.147, 0.0005);
}

// ESPO ex 5-7, p. 183.
TEST(ProofPublishedMachines, P12AxialPistonPumpFlow) {
    const double largest = axial_piston_volume(9, 0.015, 0.125);
    const double set =
        relative_displacement(TiltLaw::swashplate, Angle(pi / 18.0), Angle(pi / 4.0));
    const AtWork pump = run_pump({largest * set / turn, 100 * bar, 1000 * rpm, 0.94});
    EXPECT_NEAR(pump.flow * 1e3, 0.55, 0.005);
}

// ESPO ex 5-8, p. 190; the book rounds the ideal flow to 21.6 gpm.
TEST(ProofPublishedMachines, P13PumpEfficiency) {
    const Stated ideal{5 * cubic_inch / turn, 1000 * psi, 1000 * rpm};
    const Efficiencies pump = measured_pump(ideal, {20 * gpm, 900 * lbf_in});
    EXPECT_TRUE(within(0.003, 100 * pump.total(), 81.6));
    EXPECT_TRUE(within(0.005, run_pump(ideal).torque / lbf_in, 793));
}

// ESPO ex 5-9 and 5-10, pp. 201-203.
TEST(ProofPublishedMachines, P14PumpEfficiencySi) {
    const Efficiencies pump =
        measured_pump({100 * cm3 / turn, 70 * bar, 1000 * rpm}, {0.0015, 120});
    EXPECT_NEAR(100 * pump.total(), 83.5, 0.1);
}

// ESPO ex 7-2, p. 259; the book cuts 795.77 to 795.
TEST(ProofPublishedMachines, P15IdealMotor) {
    const Stated stated{5 * cubic_inch / turn, 1000 * psi, 462 * rpm};
    const Machine motor = machine_with(Work::motor, stated);
    const double speed = motor_speed(motor, stated.pressure, 10 * gpm);
    const AtWork at_speed = run(motor, motoring(stated.pressure, speed));
    EXPECT_TRUE(within(0.001, speed / rpm, 462));
    EXPECT_TRUE(within(0.001, at_speed.torque / lbf_in, 795));
    EXPECT_TRUE(within(0.001, at_speed.torque * speed / horsepower, 5.83));
}

// ESPO ex 7-3, p. 262; the book cuts 85.89 to 85.8.
TEST(ProofPublishedMachines, P16MotorEfficiencies) {
    const Stated ideal{10 * cubic_inch / turn, 1000 * psi, 2000 * rpm};
    const Efficiencies motor = measured_motor(ideal, {95 * gpm, 1500 * lbf_in});
    EXPECT_NEAR(100 * motor.volumetric, 91.1, 0.1);
    EXPECT_NEAR(100 * motor.hydro_mechanical, 94.25, 0.1);
    EXPECT_NEAR(100 * motor.total(), 85.8, 0.1);
}

// ESPO ex 7-4, p. 264, with the short constant 63 000.
TEST(ProofPublishedMachines, P17TransmissionUsUnits) {
    const AtWork pump = run_pump({5 * cubic_inch / turn, 1000 * psi, 500 * rpm, 0.82, 0.88});
    const AtWork motor = run_motor({4.71 * cubic_inch / turn, 1000 * psi, 400 * rpm, 0.92, 0.90});
    EXPECT_TRUE(within(0.01 / 4.71, motor.flow, pump.flow));
    EXPECT_TRUE(within(0.003, motor.torque / lbf_in, 674));
}

// ESPO ex 7-5, p. 267.
TEST(ProofPublishedMachines, P18IdealMotorSi) {
    const Stated stated{82 * cm3 / turn, 70 * bar, 439 * rpm};
    const Machine motor = machine_with(Work::motor, stated);
    const double speed = motor_speed(motor, stated.pressure, 0.0006);
    const double torque = run(motor, motoring(stated.pressure, speed)).torque;
    EXPECT_TRUE(within(0.002, speed / rpm, 439));
    EXPECT_TRUE(within(0.002, torque, 91.4));
    EXPECT_TRUE(within(0.002, torque * speed, 4200));
}

// ESPO ex 7-6, p. 267.
TEST(ProofPublishedMachines, P19MotorEfficienciesSi) {
    const Stated ideal{164 * cm3 / turn, 70 * bar, 2000 * rpm};
    const Efficiencies motor = measured_motor(ideal, {0.006, 170});
    EXPECT_NEAR(100 * motor.volumetric, 91.2, 0.1);
    EXPECT_NEAR(100 * motor.hydro_mechanical, 93.0, 0.1);
    EXPECT_NEAR(100 * motor.total(), 84.8, 0.1);
}

// ESPO ex 7-7, p. 268; power balance from its efficiencies (0.82 x 0.88 x 0.92 x 0.90).
TEST(ProofPublishedMachines, P20P21TransmissionSi) {
    const AtWork pump = run_pump({82 * cm3 / turn, 70 * bar, 500 * rpm, 0.82, 0.88});
    const AtWork motor = run_motor({77.3 * cm3 / turn, 70 * bar, 400 * rpm, 0.92, 0.90});
    EXPECT_TRUE(within(0.001, motor.flow, pump.flow));
    EXPECT_TRUE(within(0.001, motor.torque, 77.5));
    EXPECT_TRUE(within(1e-6, pump.torque * 500 * rpm, 5435.606));
    EXPECT_TRUE(within(0.001, pump.efficiencies.total() * motor.efficiencies.total(), 0.5974848));
}

// ESPO ex 9-5, p. 352: pump, line with two elbows and a check, lift, motor.
TEST(ProofPublishedMachines, P22PumpLineMotor) {
    const Oil oil{Density(0.9 * water), KinematicViscosity(125 * cst)};
    const double pump_difference = (569 + 4) * psi;
    const AtWork pump = run_pump({10 * cubic_inch / turn, pump_difference, 1000 * rpm, 0.94, 0.92});
    EXPECT_TRUE(within(0.001, pump.flow / gpm, 40.7));
    EXPECT_TRUE(within(0.002, pump.torque * 1000 * rpm / horsepower, 15.7));

    const Pipe line{Length(1.040 * inch), Length(50 * foot), Length(0.0), 2 * 0.75 + 4.0};
    EXPECT_TRUE(within(0.001, reynolds_number(line, Flow(pump.flow), oil.viscosity), 989.3));
    const double outlet =
        500 * psi + drop(line, pump.flow, oil).value + head(oil.density, Length(20 * foot)).si();
    EXPECT_TRUE(within(0.001, outlet / psi, 569));
    EXPECT_TRUE(within(2e-6, outlet / psi, 569.0295));  // exact in SI

    // The book rounds the motor's power up to 11.8 hp.
    const AtWork motor =
        run_motor({8 * cubic_inch / turn, (500 - 5) * psi, 1057 * rpm, 0.90, 0.92});
    EXPECT_TRUE(within(0.001, motor.flow, pump.flow));
    EXPECT_TRUE(within(0.005, motor.torque / lbf_in, 582));
}

// SULL ex 9-2, p. 194, in both units.
TEST(ProofPublishedMachines, P24MotorSpeed) {
    const Stated stated{2 * cubic_inch / turn, 100 * bar, 866 * rpm};
    EXPECT_NEAR(motor_speed(machine_with(Work::motor, stated), 100 * bar, 7.5 * gpm) / rpm, 866.25,
                0.005);
    const Stated si{0.03281e-3 / turn, 100 * bar, 866 * rpm};
    EXPECT_NEAR(
        motor_speed(machine_with(Work::motor, si), 100 * bar, 28.39 * litre_per_minute) / rpm,
        865.285, 0.005);
}

// SULL ex 9-3, p. 195.
TEST(ProofPublishedMachines, P25MotorFlow) {
    EXPECT_NEAR(run_motor({0.55 * cubic_inch / turn, 100 * bar, 3400 * rpm}).flow / gpm, 8.095,
                0.0005);
}

// SULL ex 9-4, p. 195; short constant. Displacement cancels out of the total.
TEST(ProofPublishedMachines, P26MotorTotalEfficiency) {
    const Stated ideal{1 * cubic_inch / turn, 2000 * psi, 1200 * rpm};
    EXPECT_TRUE(
        within(0.0015, 100 * measured_motor(ideal, {7.5 * gpm, 32 * lbf_ft}).total(), 83.66));
}

// SULL ex 9-5, p. 196: half of the leakage to the case.
TEST(ProofPublishedMachines, P27CaseDrainSplit) {
    const Stated ideal{0.6 * cubic_inch / turn, 2000 * psi, 2400 * rpm};
    const double efficiency = measured_motor(ideal, {6.5 * gpm, 1.0}).volumetric;
    EXPECT_NEAR(100 * efficiency, 95.90, 0.005);

    Stated stated = ideal;
    stated.volumetric = efficiency;
    Machine motor = machine_with(Work::motor, stated);
    motor.case_share = 0.5;
    const AtWork at_point = run(motor, motoring(stated.pressure, stated.speed));
    const double ideal_flow = stated.displacement * stated.speed;
    EXPECT_NEAR((at_point.flow - ideal_flow) / gpm, 0.27, 0.005);
    EXPECT_NEAR(at_point.law.flow_case.value / gpm, 0.13, 0.005);
}

// SULL ex 9-6, p. 197: 88 % in total, 97 % volumetric.
TEST(ProofPublishedMachines, P28HydroMechanicalFromTotal) {
    const AtWork motor = run_motor({1e-5, 100 * bar, 100, 0.97, 0.90722});
    EXPECT_NEAR(100 * motor.efficiencies.total(), 88, 0.0005);
}

// SULL ex 14-1, p. 386; its short constant 0.013 is 2.0 % low.
TEST(ProofPublishedMachines, P29BreakawayTorque) {
    const Torque torque =
        starting_torque(Displacement(1.5 * cubic_inch / turn), Pressure(1800 * psi), 1.0);
    EXPECT_TRUE(within(0.021, torque.si() / lbf_ft, 35.10));
    EXPECT_TRUE(within(2e-5, torque.si() / lbf_ft, 35.810));
}

// SULL ex 14-2, p. 386; as above.
TEST(ProofPublishedMachines, P30BreakawayPressure) {
    const Pressure pressure =
        breakaway_pressure(Displacement(3.5 * cubic_inch / turn), Torque(80 * lbf_ft), 0.75);
    EXPECT_TRUE(within(0.021, pressure.si() / psi, 2344.3));
    EXPECT_TRUE(within(2e-6, pressure.si() / psi, 2297.85));
}

// SULL ex 14-3, p. 389: what the loop leaks is taken for the pump's leakage.
TEST(ProofPublishedMachines, P31PumpToMotorWithLeakage) {
    const double pressure = 100 * bar;
    Machine pump = machine_with(Work::pump, {0.75 * cubic_inch / turn, pressure, 1200 * rpm});
    EXPECT_NEAR(run(pump, pumping(pressure, 1200 * rpm)).flow / gpm, 3.896, 0.0005);
    pump.leakage = Leakage(0.50 * gpm / pressure);
    const AtWork leaking = run(pump, pumping(pressure, 1200 * rpm));
    EXPECT_NEAR(leaking.flow / gpm, 3.40, 0.005);
    EXPECT_NEAR(100 * leaking.efficiencies.volumetric, 87.17, 0.005);

    const Machine motor =
        machine_with(Work::motor, {0.57 * cubic_inch / turn, pressure, 1376 * rpm});
    EXPECT_NEAR(motor_speed(motor, pressure, leaking.flow) / rpm, 1376.3, 0.05);
    EXPECT_NEAR(motor_speed(motor, pressure, leaking.flow + 0.50 * gpm) / rpm, 1578.9, 0.05);
}

// Worksheet QH3 of a university's hydraulics course, question 7: data read, answers computed.
TEST(ProofPublishedMachines, P32P33MotorOfAWorksheet) {
    const AtWork motor = run_motor({45 * cm3 / turn, 207.138 * bar, 847.33 * rpm, 0.93, 0.91});
    EXPECT_TRUE(within(1e-5, motor.flow / litre_per_minute, 41));
    EXPECT_TRUE(within(1e-5, motor.torque, 135));
}

// University notebook "Displacement Pump Performance".
TEST(ProofPublishedMachines, P34PumpDisplacement) {
    const AtWork pump = run_pump({0.0302e-3 / turn, 100 * bar, 1000 * rpm, 0.96});
    EXPECT_TRUE(within(0.00005 / 0.0302, pump.flow / litre_per_minute, 29));
}

// The same notebook.
TEST(ProofPublishedMachines, P35PumpEfficiencies) {
    const Efficiencies pump =
        measured_pump({100 * cm3 / turn, 70 * bar, 1000 * rpm}, {0.00152, 124.3});
    EXPECT_NEAR(pump.total(), 0.817, 0.0005);
    EXPECT_NEAR(pump.volumetric, 0.912, 0.0005);
    EXPECT_NEAR(pump.hydro_mechanical, 0.896, 0.0005);
}

// Textbook companion, ch. 13 "Hydraulic Power Transmission", ex 13.1, p. 512: pump and motor of 88
// %, 1/(1 + 1.75) of the pressure lost in the line.
TEST(ProofPublishedMachines, P36LineLossForMostPower) {
    const double lost = 1.0 / 2.75;
    const double pressure = 3000 * psi;
    const double flow = 75 * horsepower / 0.88 / (pressure * (1.0 - lost));
    const double volume = 1e-4 / turn;
    const double speed = flow / volume;
    const AtWork pump = run_pump({volume, pressure, speed, 1.0, 0.88});
    const AtWork motor = run_motor({volume, pressure * (1.0 - lost), speed, 1.0, 0.88});
    EXPECT_TRUE(within(0.005, motor.torque * speed / horsepower, 75));
    EXPECT_TRUE(within(0.005, pump.torque * speed / horsepower, 152));
    EXPECT_TRUE(within(0.005, motor.torque / pump.torque, 0.493));
    const double viscosity = 1.05e-4 * pound_force / (foot * foot);
    const double density = 54.5 * pound / (foot * foot * foot);
    const Pipe line{Length(0.5 * inch), Length(1.0), Length(0.0)};
    EXPECT_TRUE(within(
        0.005, reynolds_number(line, Flow(flow), KinematicViscosity(viscosity / density)), 8.4e4));
}

// Wilson's model with typical coefficients of a piston machine (from memory, credited to W. Ernst,
// Oil Hydraulic Power), evaluated independently with Python.
constexpr WilsonCoefficients piston{0.15e-7, 16.8e4, 0.045};
const Machine hundred{.displacement = Displacement(100 * cm3 / turn), .losses = piston};

TEST(ProofPublishedMachines, L09ToL12WilsonPump) {
    struct Row {
        double pressure, volumetric, hydro_mechanical, total;
    };
    for (const Row& row : {Row{50, 0.984085, 0.831023, 0.817797},
                           {100, 0.968169, 0.889547, 0.861232},
                           {200, 0.936338, 0.922012, 0.863315},
                           {350, 0.888592, 0.936663, 0.832311}}) {
        const Efficiencies pump =
            run(hundred, pumping(row.pressure * bar, 1500 * rpm)).efficiencies;
        EXPECT_NEAR(pump.volumetric, row.volumetric, 1e-6);
        EXPECT_NEAR(pump.hydro_mechanical, row.hydro_mechanical, 1e-6);
        EXPECT_NEAR(pump.total(), row.total, 1e-6);
    }
}

TEST(ProofPublishedMachines, L13L19LossesAtAnyStroke) {
    struct Row {
        double stroke, volumetric, hydro_mechanical;
    };
    for (const Row& row :
         {Row{1.0, 0.936338, 0.922012}, {0.5, 0.872676, 0.855309}, {0.2, 0.681690, 0.702780}}) {
        const AtWork pump = run(hundred, pumping(200 * bar, 1500 * rpm, row.stroke));
        EXPECT_NEAR(pump.law.flow_case.value / litre_per_minute, 9.549297, 1e-6);
        EXPECT_NEAR(pump.efficiencies.volumetric, row.volumetric, 1e-6);
        EXPECT_NEAR(pump.efficiencies.hydro_mechanical, row.hydro_mechanical, 1e-6);
    }
    const MachineState neutral = pumping(200 * bar, 1500 * rpm, 0.0);
    const MachineLaw law = machine_law(hundred, neutral);
    EXPECT_NEAR(law.torque.value, 26.923945, 1e-6);  // drag 12.600 000, friction 14.323 945
    EXPECT_NEAR(law.torque.value, 12.6 + 14.323945, 1e-6);
    EXPECT_FALSE(efficiencies(hundred, neutral, law).has_value());
}

// The best pressure of that pump at its speed, from the closed form of the optimum of S.
TEST(ProofPublishedMachines, L04BestTotalEfficiency) {
    const double best = 3.208244e-7;
    const auto total_at = [](double sommerfeld) {
        return run(hundred, pumping(some_viscosity * 1500 * rpm / sommerfeld, 1500 * rpm))
            .efficiencies.total();
    };
    EXPECT_NEAR(total_at(best), 0.867455, 1e-6);
    EXPECT_LT(total_at(0.99 * best), total_at(best));
    EXPECT_LT(total_at(1.01 * best), total_at(best));
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
