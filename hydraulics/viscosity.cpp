#include <loopwright/hydraulics/viscosity.h>

#include <cmath>
#include <string>

#include <fmt/core.h>

namespace loopwright::hydraulics {

namespace {

constexpr double mm2_per_s = 1e-6;
constexpr double zero_celsius = 273.15;
constexpr double thinnest = 2.0;  // mm2/s
constexpr double thickest = 2e7;
constexpr double coldest = 203.15;  // K
constexpr double hottest = 643.15;
constexpr double shift = 0.7;

// What `thinnest` itself comes back as after two logarithms must not fail.
constexpr double rounding = 1e-9;

std::string out_of_range(double kelvin) {
    if (kelvin >= coldest && kelvin <= hottest) return {};
    return fmt::format("{:.4g} degC is outside -70 to 370 degC, the range of ASTM D341",
                       kelvin - zero_celsius);
}
std::string out_of_range(double viscosity, double kelvin) {
    if (viscosity >= thinnest * (1.0 - rounding) && viscosity <= thickest * (1.0 + rounding))
        return {};
    return fmt::format(
        "{:.4g} mm2/s at {:.4g} degC is outside 2 to 2e7 mm2/s, the range of ASTM D341", viscosity,
        kelvin - zero_celsius);
}

double height(double viscosity) { return std::log10(std::log10(viscosity + shift)); }

}  // namespace

Answer<ViscosityCurve> ViscosityCurve::through(const Point& one, const Point& other) {
    using None = Answer<ViscosityCurve>;
    for (const Point& point : {one, other}) {
        const double kelvin = point.temperature.si();
        if (std::string why = out_of_range(kelvin); !why.empty()) return None::none(std::move(why));
        if (std::string why = out_of_range(point.viscosity.si() / mm2_per_s, kelvin); !why.empty())
            return None::none(std::move(why));
    }
    const double run = std::log10(other.temperature.si()) - std::log10(one.temperature.si());
    if (run == 0.0) return None::none("the two viscosities are given at one temperature");
    const double b =
        (height(one.viscosity.si() / mm2_per_s) - height(other.viscosity.si() / mm2_per_s)) / run;
    if (!(b > 0.0)) return None::none("the oil must be thinner at the higher temperature");
    return ViscosityCurve(
        height(one.viscosity.si() / mm2_per_s) + b * std::log10(one.temperature.si()), b);
}

Answer<KinematicViscosity> ViscosityCurve::at(Temperature temperature) const {
    using None = Answer<KinematicViscosity>;
    const double kelvin = temperature.si();
    if (std::string why = out_of_range(kelvin); !why.empty()) return None::none(std::move(why));
    const double viscosity = std::pow(10.0, std::pow(10.0, a_ - b_ * std::log10(kelvin))) - shift;
    if (std::string why = out_of_range(viscosity, kelvin); !why.empty())
        return None::none(std::move(why));
    return KinematicViscosity(viscosity * mm2_per_s);
}

double ViscosityCurve::slope_at(Temperature temperature) const {
    const double exponent = std::pow(10.0, a_ - b_ * std::log10(temperature.si()));
    // d(10^w)/dT = 10^w ln 10 dw/dT with w = 10^(A - B lg T), dw/dT = -w B / T.
    return -std::pow(10.0, exponent) * std::log(10.0) * exponent * b_ / temperature.si() *
           mm2_per_s;
}

}  // namespace loopwright::hydraulics
