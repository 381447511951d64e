#include <loopwright/hydraulics/cylinder.h>

#include <numbers>

#include <loopwright/hydraulics/loss_factor.h>

namespace loopwright::hydraulics {

Cylinder Cylinder::of(Length bore, Length rod, int rods) {
    const double piston = std::numbers::pi / 4.0 * bore.si() * bore.si();
    const double ring = piston - std::numbers::pi / 4.0 * rod.si() * rod.si();
    return {.cap = Area(rods == 2 ? ring : piston), .rod_side = Area(ring)};
}

CylinderLaw cylinder_law(const Cylinder& cylinder, const CylinderState& state) {
    using State = CylinderState;
    using Figure = CylinderLaw::Figure;
    const Figure a = Figure::variable(State::a, state.pressure_a);
    const Figure b = Figure::variable(State::b, state.pressure_b);
    const Figure velocity = Figure::variable(State::velocity, state.rod_velocity);

    const Figure past = cylinder.leakage.si() * (a - b);
    const Figure ideal = cylinder.cap.si() * a - cylinder.rod_side.si() * b;
    return {.flow_a = -cylinder.cap.si() * velocity - past,
            .flow_b = cylinder.rod_side.si() * velocity + past,
            .force = ideal * loss_factor(ideal / cylinder_force_band.si(),
                                         velocity / cylinder_velocity_band.si(),
                                         cylinder.force_efficiency)};
}

}  // namespace loopwright::hydraulics
