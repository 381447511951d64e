#include <loopwright/hydraulics/orifice.h>

#include <cmath>
#include <numbers>

#include <loopwright/hydraulics/assumed.h>

namespace loopwright::hydraulics {

namespace {

using Figure = ThroughFlow::Figure;

double resistance(const Orifice& orifice, const Oil& oil) {
    const double effective = orifice.discharge_coefficient * orifice.area.si();
    return oil.density.si() / (2.0 * effective * effective);
}

// Reynolds number 4 q / (pi d viscosity), with d = sqrt(4 area / pi).
Figure laminar_limit(const Orifice& orifice, const Oil& oil) {
    return Figure::variable(ThroughFlow::viscosity, oil.viscosity.si()) *
           (orifice_laminar_until * std::sqrt(std::numbers::pi * orifice.area.si() / 4.0));
}

}  // namespace

Orifice Orifice::of(Length bore, double discharge_coefficient) {
    return {Area(std::numbers::pi / 4.0 * bore.si() * bore.si()), discharge_coefficient};
}

Orifice Orifice::rated(Flow flow, Pressure drop, Density density) {
    const double coefficient = assumed::discharge_coefficient.figure.si();
    return {Area(flow.si() / coefficient * std::sqrt(density.si() / (2.0 * drop.si()))),
            coefficient};
}

Figure drop(const Orifice& orifice, double flow, const Oil& oil) {
    const Figure q = Figure::variable(ThroughFlow::flow, flow);
    const Figure limit = laminar_limit(orifice, oil);
    return resistance(orifice, oil) * q * sqrt(q * q + limit * limit);
}

Figure flow(const Orifice& orifice, double drop, const Oil& oil) {
    const Figure square = Figure::variable(ThroughFlow::drop, drop) / resistance(orifice, oil);
    const Figure limit = laminar_limit(orifice, oil);
    // q^2 = (sqrt(l^4 + 4 s^2) - l^2)/2, written without the difference, which cancels near 0.
    const Figure half = limit * limit / 2.0;
    return square / sqrt(half + sqrt(half * half + square * square));
}

}  // namespace loopwright::hydraulics
