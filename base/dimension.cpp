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
