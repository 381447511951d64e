#include <loopwright/hydraulics/fluid.h>

#include <loopwright/hydraulics/assumed.h>
#include <loopwright/hydraulics/viscosity_grade.h>

namespace loopwright::hydraulics {

namespace {

constexpr Temperature at_15_celsius{288.15};
constexpr Temperature at_40_celsius{313.15};
constexpr Temperature at_100_celsius{373.15};

Answer<KinematicViscosity> cold_viscosity(const FluidFigures& figures) {
    if (figures.at_40) return *figures.at_40;
    if (const auto midpoint = grade_viscosity(figures.grade)) return *midpoint;
    return Answer<KinematicViscosity>::none(
        "the oil's viscosity is not known: give its grade, or its viscosity at 40 degC");
}

Answer<KinematicViscosity> hot_viscosity(const FluidFigures& figures, KinematicViscosity at_40) {
    if (figures.at_100) return *figures.at_100;
    if (figures.viscosity_index) return viscosity_at_100(at_40, *figures.viscosity_index);
    return Answer<KinematicViscosity>::none(
        "how the oil thins with heat is not known: give its viscosity index, or its viscosity at "
        "100 degC");
}

}  // namespace

Answer<Fluid> Fluid::of(const FluidFigures& figures) {
    const auto at_40 = cold_viscosity(figures);
    if (!at_40) return Answer<Fluid>::none(at_40.reason());
    const auto at_100 = hot_viscosity(figures, *at_40);
    if (!at_100) return Answer<Fluid>::none(at_100.reason());
    const auto curve = ViscosityCurve::through({at_40_celsius, *at_40}, {at_100_celsius, *at_100});
    if (!curve) return Answer<Fluid>::none(curve.reason());

    Fluid fluid(*curve);
    const auto taken = [&fluid](const auto& given, const auto& otherwise, std::string_view of) {
        if (given) return *given;
        fluid.assumptions_.push_back({of, otherwise.figure.si(), otherwise.source});
        return otherwise.figure;
    };
    fluid.density_ = taken(figures.density, assumed::density, "density");
    fluid.bulk_modulus_ = taken(figures.bulk_modulus, assumed::bulk_modulus, "bulk-modulus");
    fluid.specific_heat_ = figures.specific_heat;
    return fluid;
}

Answer<Oil> Fluid::at(Temperature temperature) const {
    const auto viscosity = viscosity_.at(temperature);
    if (!viscosity) return Answer<Oil>::none(viscosity.reason());
    const auto density = density_at(temperature, density_, at_15_celsius);
    if (!density) return Answer<Oil>::none(density.reason());
    return Oil{*density, *viscosity};
}

Answer<SpecificHeat> Fluid::specific_heat(Temperature temperature) const {
    if (specific_heat_) return *specific_heat_;
    return specific_heat_at(temperature, density_);
}

}  // namespace loopwright::hydraulics
