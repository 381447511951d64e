#include <loopwright/hydraulics/load_at_rest.h>

#include <cmath>

#include <loopwright/hydraulics/loads.h>

namespace loopwright::hydraulics {

bool can_drive(const Circuit& circuit, const Component& load) {
    return circuit.is_yes(load, "overrunning") || circuit.is_yes(load, "vehicle");
}

LoadAtRest load_at_rest(const PointFigures& point, Index load) {
    const Circuit& circuit = point.circuit();
    const auto torque = point.figure(load, "torque");
    const auto mass = point.figure(load, "mass");
    const auto radius = point.figure(load, "wheel-radius");
    if (circuit.is_yes(circuit.components[load], "vehicle")) {
        const auto grade = point.figure(load, "grade");
        LoadAtRest rest;
        if (!mass) rest.missing.push_back("mass");
        if (!radius) rest.missing.push_back("wheel-radius");
        if (!grade) rest.missing.push_back("grade");
        if (!rest.missing.empty()) return rest;
        const Vehicle vehicle{.mass = Mass(*mass),
                              .wheel_radius = Length(*radius),
                              .grade = Grade(std::abs(*grade)),
                              .rolling_resistance = 0.0};
        return {.torque = grade_resistance(vehicle).si() * *radius};
    }
    if (torque) return {.torque = std::abs(*torque)};
    if (mass && radius)
        return {.torque =
                    load_torque(Hoist{.mass = Mass(*mass), .drum_radius = Length(*radius)}).si()};
    return {.missing = {"torque"}};
}

}  // namespace loopwright::hydraulics
