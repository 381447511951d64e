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
    const double bore = pipe.bore.si();
    const double per_area = 1.0 / area(pipe);
    const double speed = flow * per_area;
    const double viscosity = oil.viscosity.si();
    const double reynolds = std::abs(speed) * bore / viscosity;
    const Dual<1> poiseuille = poiseuille_number(reynolds, pipe.roughness.si() / bore);
    const double slender = oil.density.si() / 2.0 * pipe.length.si() / (bore * bore);
    const double minor = oil.density.si() / 2.0 * pipe.minor_losses * std::abs(speed);
    // f v = (f Re) viscosity / bore, so that nothing is divided by a velocity of 0. The Reynolds
    // number rises with the speed as the speed does, and falls with the viscosity so.
    const double bend = poiseuille.slope[0] * reynolds;
    ThroughFlow::Figure lost(speed * (slender * poiseuille.value * viscosity + minor));
    lost.slope[ThroughFlow::flow] =
        (slender * (poiseuille.value + bend) * viscosity + 2.0 * minor) * per_area;
    lost.slope[ThroughFlow::viscosity] = speed * slender * (poiseuille.value - bend);
    return lost;
}

}  // namespace loopwright::hydraulics
