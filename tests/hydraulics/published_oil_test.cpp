// Published figures of oil, heat and vehicles. ESPO: A. Esposito, Fluid Power with Applications;
// SULL: J. Sullivan, Fluid Power: Theory and Applications, both in companion notebooks; others
// named in full.
#include <gtest/gtest.h>

#include <loopwright/hydraulics/heat.h>
#include <loopwright/hydraulics/loads.h>
#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/viscosity.h>
#include <loopwright/hydraulics/viscosity_grade.h>
#include <loopwright/tests/hydraulics/figures.h>

namespace loopwright::hydraulics::testing {
namespace {

KinematicViscosity centistokes(double value) { return KinematicViscosity(value * cst); }

ViscosityCurve curve(double at_40, double at_100, double zero_celsius = 273.15) {
    return ViscosityCurve::through({Temperature(40 + zero_celsius), centistokes(at_40)},
                                   {Temperature(100 + zero_celsius), centistokes(at_100)})
        .value();
}
double viscosity_at(const ViscosityCurve& oil, double celsius) {
    return oil.at(Temperature(kelvin(celsius))).value().si() / cst;
}

// ISO 3448, read on two reference pages for VG 10 to 1500; the thinner midpoints read as well.
TEST(ProofPublishedOil, X01ViscosityGrades) {
    struct Row {
        const char* grade;
        double midpoint;
    };
    for (const Row& row : {Row{"VG 2", 2.2},
                           {"VG 3", 3.2},
                           {"VG 5", 4.6},
                           {"VG 7", 6.8},
                           {"VG 10", 10},
                           {"VG 15", 15},
                           {"VG 22", 22},
                           {"VG 32", 32},
                           {"VG 46", 46},
                           {"VG 68", 68},
                           {"VG 100", 100},
                           {"VG 150", 150},
                           {"VG 220", 220},
                           {"VG 320", 320},
                           {"VG 460", 460},
                           {"VG 680", 680},
                           {"VG 1000", 1000},
                           {"VG 1500", 1500}})
        EXPECT_DOUBLE_EQ(grade_viscosity(row.grade).value().si() / cst, row.midpoint) << row.grade;
    EXPECT_FALSE(grade_viscosity("VG 47").has_value());
}

// Worked sheet on ASTM D341, a public document; it takes 0 degC for 273 K.
TEST(ProofPublishedOil, X02AstmD341) {
    const ViscosityCurve oil = curve(32, 5.4, 273);
    EXPECT_NEAR(oil.a(), 9.5259, 0.0001);
    EXPECT_NEAR(oil.b(), 3.7449, 0.0001);
    EXPECT_NEAR(oil.at(Temperature(80 + 273.0)).value().si() / cst, 8.5, 0.05);
}

// The same with 273.15 K, worked out independently with Python.
TEST(ProofPublishedOil, X03AstmD341Temperatures) {
    const ViscosityCurve oil = curve(32, 5.4);
    EXPECT_NEAR(oil.a(), 9.530815, 1e-6);
    EXPECT_NEAR(oil.b(), 3.746578, 1e-6);
    struct Row {
        double celsius, viscosity;
    };
    for (const Row& row :
         {Row{-20, 2291.47}, {0, 336.00}, {20, 86.278}, {60, 15.1859}, {80, 8.5332}, {120, 3.7239}})
        EXPECT_TRUE(within(2e-5, viscosity_at(oil, row.celsius), row.viscosity)) << row.celsius;
}

// ASTM D2270 (ISO 2909), examples of clauses 5 and 6, on a page that reproduces them. The standard
// looks L and H up; the polynomials are apart from its tables by what the tolerances say.
TEST(ProofPublishedOil, X04ToX06ViscosityIndex) {
    const auto index = [](double at_40, double at_100) {
        return viscosity_index(centistokes(at_40), centistokes(at_100)).value();
    };
    EXPECT_NEAR(index(73.30, 8.86), 92.43, 0.02);
    EXPECT_NEAR(index(22.83, 5.05), 156.37, 0.1);
    EXPECT_NEAR(index(53.47, 7.80), 111, 0.5);
}

// Reference oils of ASTM D2270, table 1, from memory: L is of index 0, H of index 100. The
// polynomials are up to 0.1 mm2/s from the table.
TEST(ProofPublishedOil, X07ReferenceOils) {
    struct Row {
        double at_100, l, h;
    };
    for (const Row& row : {Row{2, 7.994, 6.394},
                           {4, 25.32, 19.56},
                           {7, 78.00, 48.57},
                           {10, 147.7, 82.87},
                           {15, 296.5, 149.7}}) {
        const KinematicViscosity hot = centistokes(row.at_100);
        EXPECT_NEAR(viscosity_index(centistokes(row.l), hot).value(), 0, 0.2) << row.at_100;
        EXPECT_NEAR(viscosity_index(centistokes(row.h), hot).value(), 100, 0.2) << row.at_100;
    }
}

// The examples above, turned round.
TEST(ProofPublishedOil, X04ToX06ViscosityFromIndex) {
    const auto at_100 = [](double at_40, double index) {
        return viscosity_at_100(centistokes(at_40), index).value().si() / cst;
    };
    EXPECT_NEAR(at_100(73.30, 92.43), 8.86, 0.005);
    EXPECT_NEAR(at_100(22.83, 156.37), 5.05, 0.005);
    EXPECT_NEAR(at_100(53.47, 111.30), 7.80, 0.005);
}

// Oils of index 100, worked out independently with Python.
TEST(ProofPublishedOil, X08ToX11OilsOfIndex100) {
    struct Row {
        const char* grade;
        double at_100;
        double at[7];
    };
    constexpr double celsius[] = {-20, 0, 20, 50, 60, 80, 110};
    for (const Row& row :
         {Row{"VG 32", 5.3621, {2367, 341.3, 86.79, 21.454, 15.132, 8.485, 4.410}},
          Row{"VG 46", 6.7617, {4637, 584.7, 134.47, 29.925, 20.564, 11.052, 5.487}},
          Row{"VG 68", 8.7320, {9198, 1024.7, 214.10, 42.911, 28.712, 14.767, 6.986}}}) {
        const KinematicViscosity at_40 = grade_viscosity(row.grade).value();
        const double at_100 = viscosity_at_100(at_40, 100).value().si() / cst;
        EXPECT_NEAR(at_100, row.at_100, 0.0001);
        const ViscosityCurve oil = curve(at_40.si() / cst, at_100);
        for (std::size_t i = 0; i < std::size(celsius); ++i)
            EXPECT_TRUE(within(3e-4, viscosity_at(oil, celsius[i]), row.at[i])) << celsius[i];
    }
}

// ESPO ex 2-13, p. 62: 0.89 times 25 cSt is 22.3 cP.
TEST(ProofPublishedOil, X14DynamicViscosity) {
    const Oil oil{Density(890), centistokes(25)};
    EXPECT_NEAR(oil.dynamic_viscosity().si() * 1e3, 22.3, 0.0501);
}

// API MPMS 11.1 (ASTM D1250), lubricating oils: constants read on a public page; volume correction
// from 60 degF, which the standard rounds to five decimals.
TEST(ProofPublishedOil, X15DensityOverTemperature) {
    struct Row {
        double celsius, density;
    };
    const Temperature base(kelvin(28 / 1.8));
    for (const Row& row : {Row{40, 854.575}, {60, 841.847}, {100, 816.140}})
        EXPECT_TRUE(within(
            1e-6, density_at(Temperature(kelvin(row.celsius)), Density(870), base).value().si(),
            row.density));
}

// C. S. Cragoe, NBS Miscellaneous Publication 97 (1929), section VII.
TEST(ProofPublishedOil, X16SpecificHeat) {
    struct Row {
        double celsius, heat;
    };
    for (const Row& row : {Row{20, 1.8790}, {40, 1.9517}, {60, 2.0244}, {80, 2.0971}})
        EXPECT_TRUE(
            within(3e-5,
                   specific_heat_at(Temperature(kelvin(row.celsius)), Density(0.87 * 999.016))
                           .value()
                           .si() /
                       1e3,
                   row.heat));
}

// A handbook table that cites Cengel and Boles: unused engine oil, whose density it does not give;
// the formula is good for 4 %.
TEST(ProofPublishedOil, X17SpecificHeatOfEngineOil) {
    EXPECT_TRUE(
        within(0.04, specific_heat_at(Temperature(kelvin(20)), Density(888)).value().si(), 1880));
    EXPECT_TRUE(
        within(0.04, specific_heat_at(Temperature(kelvin(60)), Density(888)).value().si(), 2050));
}

// Share of its volume that oil loses.
double lost_volume(double pressure, double modulus) {
    return 1.0 - 1.0 / compressed(Density(1.0), Pressure(pressure), BulkModulus(modulus)).si();
}

// ESPO ex 2-11, p. 57; ex 2-17, p. 67; SULL ex 6-2, p. 115; trade formula sheets.
TEST(ProofPublishedOil, X20ToX23Compression) {
    EXPECT_NEAR(10 * lost_volume(1900 * psi, 250000 * psi), 0.076, 1e-9);
    EXPECT_NEAR(100 * lost_volume(13740e3 - 687e3, 1718e6), 0.76, 0.005);
    EXPECT_NEAR(lost_volume(1000 * psi, 350000 * psi), 0.0029, 0.00005);
    EXPECT_NEAR(100 * lost_volume(1000 * psi, 200000 * psi), 0.5, 1e-9);
}

// ESPO ex 11-2, p. 424: 120 to 127.9 degF; 7.42 lb/gal, 0.42 Btu/(lb.degF).
TEST(ProofPublishedOil, T01RiseOverARelief) {
    const Density density(7.42 * pound / gallon);
    const SpecificHeat heat(0.42 * btu / pound / fahrenheit);
    EXPECT_NEAR(temperature_rise(Pressure(1000 * psi), density, heat).si() / fahrenheit, 7.9, 0.05);
}

// ESPO ex 11-3, p. 424: 50 to 54.3 degC.
TEST(ProofPublishedOil, T02RiseOverAReliefSi) {
    EXPECT_NEAR(temperature_rise(Pressure(70 * bar), Density(895), SpecificHeat(1800)).si(), 4.35,
                0.05);
}

// SULL ex 12-2, p. 292. The book's water is 8.34 lb/gal.
TEST(ProofPublishedOil, T03Rise) {
    const Density density(0.85 * 8.34 * pound / gallon);
    const SpecificHeat heat(0.42 * btu / pound / fahrenheit);
    EXPECT_TRUE(within(
        0.001, temperature_rise(Pressure(1000 * psi), density, heat).si() / fahrenheit, 8.31));
}

// Exact by definition.
TEST(ProofPublishedOil, T04Rise) {
    EXPECT_NEAR(temperature_rise(Pressure(100 * bar), Density(870), SpecificHeat(1880)).si(), 6.114,
                0.0005);
}

// ESPO ex 11-4, p. 425 and 11-5, p. 426: pump of 85 %, relief half of the time, lines a tenth of
// it.
TEST(ProofPublishedOil, T05T06HeatExchanger) {
    const auto lost = [](double flow, double pressure) {
        const double relief = lost_power(Flow(flow), Pressure(pressure)).si();
        return relief * (1 / 0.85 - 1) + relief * 0.5 * 1.1;
    };
    EXPECT_TRUE(within(0.001, lost(20 * gpm, 1000 * psi) * 3600 / btu, 21565));
    EXPECT_TRUE(within(0.001, lost(0.00126, 70 * bar) / 1e3, 6.41));
}

// SULL's rule for a tank: a thousandth of a horsepower for a square foot and a degree Fahrenheit.
const HeatTransfer tank(0.001 * horsepower / (foot * foot) / fahrenheit);
ThermalConductance walls(double square_feet) {
    return wall_conductance(Area(square_feet * foot * foot), tank);
}

// SULL ex 14-5 to 14-7, pp. 390-392.
TEST(ProofPublishedOil, T08ToT11TankWalls) {
    EXPECT_NEAR(tank.si(), 14.448, 0.0005);
    const double lost = 0.25 * lost_power(Flow(10 * gpm), Pressure(1500 * psi)).si();
    const Temperature room(kelvin(75 * fahrenheit - 32 * fahrenheit));
    const Temperature oil = room + Temperature(75 * fahrenheit);
    EXPECT_TRUE(within(0.0002, heat_through(walls(29.17), oil, room).si(), lost));

    const Temperature balance = balance_temperature(Power(0.25 * 5 * horsepower), walls(15), room);
    EXPECT_NEAR((balance.si() - 273.15) / fahrenheit + 32, 158.33, 0.005);

    const Temperature warmer = room + Temperature(40 * fahrenheit);
    EXPECT_TRUE(within(0.0003, heat_through(walls(100), warmer, room).si() * 3600 / btu, 10180));
}

// B. Casey, "A great lie about hydraulic tanks": a tank of 200 L.
TEST(ProofPublishedOil, T13TankHeat) {
    const ThermalConductance conductance = wall_conductance(Area(1.7), HeatTransfer(12));
    EXPECT_NEAR(
        heat_through(conductance, Temperature(kelvin(85)), Temperature(kelvin(35))).si() / 1e3,
        1.02, 1e-9);
}

// F. Mannering et al., Principles of Highway Engineering and Traffic Analysis, an exercise:
// rolling 41.57 and grade 130 lbf of 2600 lb at 5 %. It takes the grade for the sine and 1 for the
// cosine: 0.125 % apart.
TEST(ProofPublishedOil, V01RollingAndGrade) {
    const Vehicle car{Mass(2600 * pound), Length(0.3), Grade(0.05), 0.01 * (1 + 88.0 / 147)};
    EXPECT_TRUE(within(0.0014, rolling_resistance(car).si() / pound_force, 41.57));
    EXPECT_TRUE(within(0.00126, grade_resistance(car).si() / pound_force, 130));
}

// Examination question: a tow of 720 kg moves 12 t up 2 % where the ground resists with 40 kg/t;
// for small angles.
TEST(ProofPublishedOil, V02TowTest) {
    const Vehicle truck{Mass(12000), Length(0.5), Grade(0.02), 0.040};
    EXPECT_TRUE(
        within(0.0003, (rolling_resistance(truck) + grade_resistance(truck)).si() / 9.80665, 720));
}

// Civil engineering handbook, earthwork: 20 lb for a short ton and 1 %; for small angles.
TEST(ProofPublishedOil, V04GradeResistance) {
    const Vehicle ton{Mass(2000 * pound), Length(0.5), Grade(0.01), 0.0};
    EXPECT_TRUE(within(0.0001, grade_resistance(ton).si() / pound_force, 20));
}

// Definitions, evaluated with Python: 5 t at 30 %.
TEST(ProofPublishedOil, V06V12TractiveEffort) {
    const Vehicle vehicle{Mass(5000), Length(0.40), Grade(0.30), 0.03};
    EXPECT_TRUE(within(2e-6, grade_resistance(vehicle).si() / (5000 * 9.80665), 0.287348));
    const double effort = (grade_resistance(vehicle) + rolling_resistance(vehicle)).si();
    EXPECT_NEAR(effort, 15498.561, 0.001);
    EXPECT_NEAR(load_torque(vehicle, 132.629 * rpm).value, 6199.424, 0.001);
    EXPECT_NEAR(load_torque(vehicle, 132.629 * rpm).value * 132.629 * rpm / 1e3, 86.103, 0.001);
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
