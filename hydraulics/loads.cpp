#include <loopwright/hydraulics/loads.h>

#include <cmath>

#include <loopwright/hydraulics/assumed.h>
#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

namespace {

double weight(Mass mass) { return mass.si() * assumed::gravity.figure.si(); }

// Over the slope's length, where the run is 1.
double slope_length(const Vehicle& vehicle) { return std::hypot(1.0, vehicle.grade.si()); }

}  // namespace

Force grade_resistance(const Vehicle& vehicle) {
    return Force(weight(vehicle.mass) * vehicle.grade.si() / slope_length(vehicle));
}

Force rolling_resistance(const Vehicle& vehicle) {
    return Force(weight(vehicle.mass) * vehicle.rolling_resistance / slope_length(vehicle));
}

Dual<1> load_torque(const Vehicle& vehicle, double speed) {
    const double radius = vehicle.wheel_radius.si();
    return grade_resistance(vehicle).si() * radius +
           opposing_torque(Torque(rolling_resistance(vehicle).si() * radius), speed);
}

Torque load_torque(const Hoist& hoist) {
    return Torque(weight(hoist.mass) * hoist.drum_radius.si());
}

Dual<1> opposing_torque(Torque torque, double speed) {
    return torque.si() * soft_sign(Dual<1>::variable(0, speed) / standstill.si());
}

Dual<1> opposing_force(Force force, double velocity) {
    return force.si() * soft_sign(Dual<1>::variable(0, velocity) / rod_standstill.si());
}

}  // namespace loopwright::hydraulics
