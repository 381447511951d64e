#include <loopwright/base/dimension.h>

#include <array>
#include <stdexcept>

namespace loopwright {
namespace {

struct Words {
    Dimension dimension = Dimension::ratio;
    std::string_view name = {};
    std::string_view phrase = {};
    std::string_view si_unit = {};
};

constexpr std::array<Words, dimension_count> words{{
    {Dimension::ratio, "ratio", "a ratio", "1"},
    {Dimension::pressure, "pressure", "a pressure", "Pa"},
    {Dimension::absolute_pressure, "absolute pressure", "an absolute pressure", "Pa"},
    {Dimension::displacement, "displacement", "a displacement", "m3/rad"},
    {Dimension::flow, "flow", "a flow", "m3/s"},
    {Dimension::volume, "volume", "a volume", "m3"},
    {Dimension::length, "length", "a length", "m"},
    {Dimension::speed, "speed of rotation", "a speed of rotation", "rad/s"},
    {Dimension::velocity, "velocity", "a velocity", "m/s"},
    {Dimension::torque, "torque", "a torque", "N.m"},
    {Dimension::power, "power", "a power", "W"},
    {Dimension::angle, "angle", "an angle", "rad"},
    {Dimension::temperature, "temperature", "a temperature", "K"},
    {Dimension::temperature_difference, "difference of temperatures",
     "a difference of temperatures", "K"},
    {Dimension::kinematic_viscosity, "kinematic viscosity", "a kinematic viscosity", "m2/s"},
    {Dimension::density, "density", "a density", "kg/m3"},
    {Dimension::mass, "mass", "a mass", "kg"},
    {Dimension::area, "area", "an area", "m2"},
    {Dimension::force, "force", "a force", "N"},
    {Dimension::inertia, "moment of inertia", "a moment of inertia", "kg.m2"},
    {Dimension::time, "time", "a time", "s"},
    {Dimension::grade, "grade", "a grade", "1"},
    {Dimension::specific_heat, "specific heat", "a specific heat", "J/(kg.K)"},
    {Dimension::dynamic_viscosity, "dynamic viscosity", "a dynamic viscosity", "Pa.s"},
    {Dimension::bulk_modulus, "bulk modulus", "a bulk modulus", "Pa"},
    {Dimension::stiffness, "stiffness", "a stiffness", "N/m"},
    {Dimension::torsional_stiffness, "torsional stiffness", "a torsional stiffness", "N.m/rad"},
    {Dimension::thermal_conductance, "thermal conductance", "a thermal conductance", "W/K"},
    {Dimension::heat_transfer, "heat transfer coefficient", "a heat transfer coefficient",
     "W/(m2.K)"},
    {Dimension::thermal_conductivity, "thermal conductivity", "a thermal conductivity", "W/(m.K)"},
    {Dimension::thermal_expansion, "coefficient of thermal expansion",
     "a coefficient of thermal expansion", "1/K"},
    {Dimension::leakage, "leakage coefficient", "a leakage coefficient", "m3/(s.Pa)"},
    {Dimension::energy, "energy", "an energy", "J"},
    {Dimension::current, "electric current", "an electric current", "A"},
    {Dimension::voltage, "voltage", "a voltage", "V"},
    {Dimension::frequency, "frequency", "a frequency", "Hz"},
    {Dimension::acceleration, "acceleration", "an acceleration", "m/s2"},
}};

constexpr bool in_order() {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (static_cast<std::size_t>(words[i].dimension) != i) {
            return false;
        }
    }
    return true;
}
static_assert(in_order(), "the words are looked up by the enumerator");

const Words& words_of(Dimension dimension) {
    const auto index = static_cast<std::size_t>(dimension);
    if (index >= words.size()) {
        throw std::logic_error("no such dimension");
    }
    return words[index];
}

}  // namespace

std::string_view name(Dimension dimension) { return words_of(dimension).name; }

std::string_view phrase(Dimension dimension) { return words_of(dimension).phrase; }

std::string_view si_unit(Dimension dimension) { return words_of(dimension).si_unit; }

}  // namespace loopwright
