#include <loopwright/hydraulics/load_law.h>

namespace loopwright::hydraulics {

namespace {

Dual<1> opposing(Torque torque, bool straight, double speed) {
    return straight ? opposing_force(Force(torque.si()), speed) : opposing_torque(torque, speed);
}

Dual<2> of_speed(const Dual<1>& torque) {
    Dual<2> law(torque.value);
    law.slope[0] = torque.slope[0];
    return law;
}

}  // namespace

Dual<2> load_law(const NetworkLoad& load, bool straight, double speed, double brake_pressure) {
    switch (load.kind) {
        case NetworkLoad::Kind::constant:
            return load.torque.si();
        case NetworkLoad::Kind::opposing:
            return of_speed(opposing(load.torque, straight, speed));
        case NetworkLoad::Kind::vehicle:
            return of_speed(load_torque(load.vehicle, speed));
        case NetworkLoad::Kind::brake: {
            const Dual<1> held = holding_torque(load.brake, brake_pressure);
            const Dual<1> sense = opposing(Torque(1.0), straight, speed);
            Dual<2> law(held.value * sense.value);
            law.slope = {held.value * sense.slope[0], held.slope[0] * sense.value};
            return law;
        }
    }
    return 0.0;
}

}  // namespace loopwright::hydraulics
