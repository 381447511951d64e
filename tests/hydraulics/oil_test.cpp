// What is out of range is said, not extrapolated; curves and slopes.
#include <gtest/gtest.h>

#include <loopwright/hydraulics/atmosphere.h>
#include <loopwright/hydraulics/fluid.h>
#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/viscosity.h>
#include <loopwright/hydraulics/viscosity_grade.h>
#include <loopwright/tests/hydraulics/figures.h>

namespace loopwright::hydraulics::testing {
namespace {

using Point = ViscosityCurve::Point;

Point at(double celsius, double centistokes) {
    return {Temperature(kelvin(celsius)), KinematicViscosity(centistokes * cst)};
}

TEST(Viscosity, CurveMeetsItsPoints) {
    const ViscosityCurve oil = ViscosityCurve::through(at(40, 46), at(100, 6.8)).value();
    EXPECT_TRUE(within(1e-12, oil.at(Temperature(kelvin(40))).value().si(), 46 * cst));
    EXPECT_TRUE(within(1e-12, oil.at(Temperature(kelvin(100))).value().si(), 6.8 * cst));
    const ViscosityCurve turned = ViscosityCurve::through(at(100, 6.8), at(40, 46)).value();
    EXPECT_DOUBLE_EQ(turned.b(), oil.b());
}

TEST(Viscosity, SlopeIsThatOfTheCurve) {
    const ViscosityCurve oil = ViscosityCurve::through(at(40, 46), at(100, 6.8)).value();
    for (double celsius = -20; celsius < 120; celsius += 7) {
        const auto value = [&](double t) { return oil.at(Temperature(kelvin(t))).value().si(); };
        EXPECT_TRUE(within(1e-6, oil.slope_at(Temperature(kelvin(celsius))),
                           (value(celsius + 0.01) - value(celsius - 0.01)) / 0.02));
        EXPECT_LT(oil.slope_at(Temperature(kelvin(celsius))), 0.0);
    }
}

TEST(Viscosity, OutOfRangeIsSaid) {
    const ViscosityCurve oil = ViscosityCurve::through(at(40, 46), at(100, 6.8)).value();
    EXPECT_NE(oil.at(Temperature(kelvin(400))).reason().find("370"), std::string::npos);
    EXPECT_NE(oil.at(Temperature(kelvin(250))).reason().find("2e7"), std::string::npos);
    EXPECT_FALSE(oil.at(Temperature(kelvin(-69))));  // thicker than 2e7 mm2/s
    EXPECT_FALSE(ViscosityCurve::through(at(40, 46), at(100, 1.5)));
    EXPECT_FALSE(ViscosityCurve::through(at(40, 46), at(40, 46)));
    EXPECT_FALSE(ViscosityCurve::through(at(40, 46), at(100, 50)));
    EXPECT_FALSE(ViscosityCurve::through(at(-80, 46), at(100, 6)));
    EXPECT_THROW(static_cast<void>(oil.at(Temperature(kelvin(400))).value()),
                 std::bad_optional_access);
}

TEST(ViscosityIndex, OutOfRangeIsSaid) {
    const auto index = [](double at_40, double at_100) {
        return viscosity_index(KinematicViscosity(at_40 * cst), KinematicViscosity(at_100 * cst));
    };
    EXPECT_NE(index(300, 25).reason().find("2 to 15"), std::string::npos);
    EXPECT_FALSE(index(5, 1.9));
    EXPECT_FALSE(index(8, 9));
    EXPECT_FALSE(viscosity_at_100(KinematicViscosity(460 * cst), 100));
    EXPECT_FALSE(viscosity_at_100(KinematicViscosity(46 * cst), 1e6));
}

TEST(ViscosityIndex, IsFoundAgain) {
    for (const double at_40 : {22.0, 32.0, 46.0, 68.0, 100.0})
        for (const double index : {50.0, 95.0, 100.0, 105.0, 150.0}) {
            const KinematicViscosity cold(at_40 * cst);
            const auto hot = viscosity_at_100(cold, index);
            ASSERT_TRUE(hot) << hot.reason();
            // Where the standard's polynomials meet, the index steps by up to a quarter.
            EXPECT_NEAR(viscosity_index(cold, hot.value()).value(), index, 0.25);
        }
}

TEST(Density, MeetsWhatIsKnownAndFallsWithHeat) {
    const Temperature base(kelvin(15));
    EXPECT_DOUBLE_EQ(density_at(base, Density(870), base).value().si(), 870);
    double last = 1e9;
    for (double celsius = -50; celsius <= 150; celsius += 10) {
        const double density = density_at(Temperature(kelvin(celsius)), Density(870), base)->si();
        EXPECT_LT(density, last);
        last = density;
    }
    EXPECT_NE(density_at(Temperature(kelvin(151)), Density(870), base).reason().find("150"),
              std::string::npos);
    EXPECT_FALSE(density_at(base, Density(700), base));
}

TEST(SpecificHeat, OutOfRangeIsSaid) {
    EXPECT_NE(specific_heat_at(Temperature(kelvin(-10)), Density(870)).reason().find("0 to 200"),
              std::string::npos);
    EXPECT_FALSE(specific_heat_at(Temperature(kelvin(40)), Density(1000)));
}

TEST(Density, RisesUnderPressure) {
    EXPECT_DOUBLE_EQ(compressed(Density(870), Pressure(0.0), BulkModulus(1.4e9)).si(), 870);
    // About 2 % at 400 bar of a usual oil.
    EXPECT_NEAR(compressed(Density(1), Pressure(400 * bar), BulkModulus(1.9e9)).si(), 1.02, 0.002);
}

TEST(Fluid, OfGradeAndIndexOrTwoPoints) {
    const Fluid by_index = Fluid::of({.grade = "VG 46", .viscosity_index = 100}).value();
    const Temperature warm(kelvin(60));
    // As X-10 of the published figures.
    EXPECT_TRUE(within(3e-4, by_index.at(warm)->viscosity.si(), 20.564 * cst));
    const Fluid by_points = Fluid::of({.grade = "VG 32",
                                       .viscosity_index = 150,
                                       .at_40 = KinematicViscosity(46 * cst),
                                       .at_100 = KinematicViscosity(6.7617 * cst)})
                                .value();
    EXPECT_TRUE(within(3e-4, by_points.at(warm)->viscosity.si(), 20.564 * cst));
}

TEST(Fluid, SaysWhatIsAssumedAndWhatIsMissing) {
    const Fluid bare = Fluid::of({.grade = "VG 46", .viscosity_index = 100}).value();
    ASSERT_EQ(bare.assumptions().size(), 2U);
    EXPECT_EQ(bare.assumptions()[0].of, "density");
    EXPECT_EQ(bare.assumptions()[0].si, 870);
    EXPECT_NE(bare.assumptions()[1].source, "");
    const Fluid full = Fluid::of({.grade = "VG 46",
                                  .viscosity_index = 100,
                                  .density = Density(880),
                                  .specific_heat = SpecificHeat(1950),
                                  .bulk_modulus = BulkModulus(1.6e9)})
                           .value();
    EXPECT_TRUE(full.assumptions().empty());
    EXPECT_EQ(full.specific_heat(Temperature(kelvin(-30))).value().si(), 1950);
    EXPECT_FALSE(bare.specific_heat(Temperature(kelvin(-30))));
    EXPECT_DOUBLE_EQ(full.at(Temperature(288.15))->density.si(), 880);
    EXPECT_FALSE(full.at(Temperature(kelvin(160))));

    EXPECT_NE(Fluid::of({.viscosity_index = 100}).reason().find("grade"), std::string::npos);
    EXPECT_NE(Fluid::of({.grade = "VG 46"}).reason().find("index"), std::string::npos);
    EXPECT_FALSE(Fluid::of({.grade = "VG 1500", .viscosity_index = 95}));
}

// US Standard Atmosphere 1976, computed with python3-fluids.
TEST(Atmosphere, ThinsWithHeight) {
    struct Row {
        double metres, kilopascals;
    };
    for (const Row& row : {Row{0, 101.325}, {1000, 89.876}, {2000, 79.501}, {3000, 70.121}})
        EXPECT_NEAR(atmospheric_pressure(Length(row.metres)).value().si() / 1e3, row.kilopascals,
                    0.001);
    EXPECT_NE(atmospheric_pressure(Length(12000)).reason().find("11000"), std::string::npos);
}

}  // namespace
}  // namespace loopwright::hydraulics::testing
