#include <loopwright/hydraulics/friction.h>

#include <cmath>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

namespace {

constexpr double laminar = 64.0;

Dual<1> colebrook(double reynolds, double relative_roughness) {
    const double rough = relative_roughness / 3.7;
    const double smooth = 2.51 / reynolds;
    const double two_over_ln10 = 2.0 / std::log(10.0);
    // Haaland's formula is within 2 %; each step of Newton's more than doubles the digits.
    double x = -1.8 * std::log10(std::pow(rough, 1.11) + 6.9 / reynolds);  // 1/sqrt(f)
    double slope = 1.0;
    for (int step = 0; step < 3; ++step) {
        const double inside = rough + smooth * x;
        slope = 1.0 + two_over_ln10 * smooth / inside;
        x -= (x + two_over_ln10 * std::log(inside)) / slope;
    }
    const double over_reynolds =
        two_over_ln10 * smooth * x / (reynolds * (rough + smooth * x)) / slope;
    Dual<1> f(1.0 / (x * x));
    f.slope[0] = -2.0 * f.value / x * over_reynolds;
    return f;
}

}  // namespace

Dual<1> poiseuille_number(double reynolds, double relative_roughness) {
    if (reynolds <= laminar_until) return laminar;
    const Dual<1> re = Dual<1>::variable(0, reynolds);
    const Dual<1> turbulent = colebrook(reynolds, relative_roughness) * re;
    if (reynolds >= turbulent_from) return turbulent;
    const Dual<1> weight = soft_step((re - laminar_until) / (turbulent_from - laminar_until));
    return laminar + weight * (turbulent - laminar);
}

Dual<1> friction_factor(double reynolds, double relative_roughness) {
    return poiseuille_number(reynolds, relative_roughness) / Dual<1>::variable(0, reynolds);
}

}  // namespace loopwright::hydraulics
