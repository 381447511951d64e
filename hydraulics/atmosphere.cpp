#include <loopwright/hydraulics/atmosphere.h>

#include <cmath>

#include <fmt/core.h>

#include <loopwright/hydraulics/assumed.h>

namespace loopwright::hydraulics {

Answer<AbsolutePressure> atmospheric_pressure(Length altitude) {
    // The standard's own figures.
    constexpr double sea_level = 101325.0;  // Pa
    constexpr double warmth = 288.15;       // K at sea level
    constexpr double lapse = 0.0065;        // K/m
    constexpr double earth = 6356766.0;     // m, radius
    constexpr double air = 0.0289644;       // kg/mol
    constexpr double gas = 8.31432;         // J/(mol.K)
    const double height = altitude.si();
    if (!(height >= -1000.0 && height <= 11000.0))
        return Answer<AbsolutePressure>::none(fmt::format(
            "an altitude of {:.4g} m is outside -1000 to 11000 m, the range of the standard "
            "atmosphere's lowest layer",
            height));
    const double geopotential = earth * height / (earth + height);
    return AbsolutePressure(sea_level *
                            std::pow(1.0 - lapse * geopotential / warmth,
                                     assumed::gravity.figure.si() * air / (gas * lapse)));
}

}  // namespace loopwright::hydraulics
