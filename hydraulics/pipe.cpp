#include <loopwright/hydraulics/pipe.h>

#include <cmath>
#include <numbers>

#include <loopwright/hydraulics/friction.h>

namespace loopwright::hydraulics {

namespace {

double area(const Pipe& pipe) { return std::numbers::pi / 4.0 * pipe.bore.si() * pipe.bore.si(); }

}  // namespace

Velocity velocity(const Pipe& pipe, Flow flow) { return Velocity(flow.si() / area(pipe)); }

double reynolds_number(const Pipe& pipe, Flow flow, KinematicViscosity viscosity) {
    return std::abs(velocity(pipe, flow).si()) * pipe.bore.si() / viscosity.si();
}

ThroughFlow::Figure drop(const Pipe& pipe, double flow, const Oil& oil) {
    using Figure = ThroughFlow::Figure;
    const double bore = pipe.bore.si();
    const Figure speed = Figure::variable(ThroughFlow::flow, flow) / area(pipe);
    const Figure viscosity = Figure::variable(ThroughFlow::viscosity, oil.viscosity.si());
    const Figure reynolds = abs(speed) * bore / viscosity;
    const Figure poiseuille =
        chain(poiseuille_number(reynolds.value, pipe.roughness.si() / bore), reynolds);
    // f v = (f Re) viscosity / bore, so that nothing is divided by a velocity of 0.
    return oil.density.si() / 2.0 *
           (poiseuille * viscosity * speed * (pipe.length.si() / (bore * bore)) +
            pipe.minor_losses * abs(speed) * speed);
}

}  // namespace loopwright::hydraulics
