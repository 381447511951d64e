#include <loopwright/hydraulics/oil.h>

#include <cmath>

#include <fmt/core.h>

#include <loopwright/hydraulics/assumed.h>

namespace loopwright::hydraulics {

namespace {

constexpr double zero_celsius = 273.15;

}  // namespace

Answer<Density> density_at(Temperature temperature, Density known, Temperature known_at) {
    constexpr double k1 = 0.34878 * 1.8;  // per degF in the standard
    const double celsius = temperature.si() - zero_celsius;
    if (!(celsius >= -50.0 && celsius <= 150.0))
        return Answer<Density>::none(fmt::format(
            "{:.4g} degC is outside -50 to 150 degC, the range of ASTM D1250", celsius));
    if (!(known.si() >= 750.0 && known.si() <= 1164.0))
        return Answer<Density>::none(
            fmt::format("{:.4g} kg/m3 is outside 750 to 1164 kg/m3, the range of ASTM D1250 for "
                        "lubricating oils",
                        known.si()));
    const double expansion = k1 / known.si() * (temperature - known_at).si();
    return Density(known.si() * std::exp(-expansion * (1.0 + 0.8 * expansion)));
}

Answer<SpecificHeat> specific_heat_at(Temperature temperature, Density at_15) {
    constexpr double water = 999.016;         // kg/m3 at 60 degF
    constexpr double btu_per_pound = 4186.8;  // J/(kg.K) for Btu/(lb.degF), by definition
    const double celsius = temperature.si() - zero_celsius;
    const double gravity = at_15.si() / water;
    if (!(celsius >= 0.0 && celsius <= 200.0 && gravity >= 0.75 && gravity <= 0.96))
        return Answer<SpecificHeat>::none(
            fmt::format("{:.4g} degC and {:.4g} kg/m3 are outside 0 to 200 degC and 749 to 959 "
                        "kg/m3, the range "
                        "of the formula of NBS Miscellaneous Publication 97",
                        celsius, at_15.si()));
    const double fahrenheit = celsius * 1.8 + 32.0;
    return SpecificHeat(btu_per_pound * (0.388 + 0.00045 * fahrenheit) / std::sqrt(gravity));
}

Density compressed(Density at_atmosphere, Pressure pressure, BulkModulus modulus) {
    return Density(at_atmosphere.si() / (1.0 - pressure.si() / modulus.si()));
}

Pressure head(Density density, Length height) {
    return Pressure(density.si() * assumed::gravity.figure.si() * height.si());
}

}  // namespace loopwright::hydraulics
