#include <loopwright/hydraulics/rated_mover.h>

namespace loopwright::hydraulics {

std::optional<Torque> braking_torque(const Circuit& circuit, const Component& mover) {
    if (const auto brakes = circuit.figure(mover, "braking-torque")) return Torque(*brakes);
    const auto takes_up = circuit.figure(mover, "braking-power");
    const auto highest = circuit.figure(mover, "max-speed");
    if (!takes_up || !highest) return std::nullopt;
    return Torque(*takes_up / *highest);
}

std::optional<PrimeMover> rated_mover(const Circuit& circuit, Index mover) {
    const Component& component = circuit.components[mover];
    const auto power = circuit.figure(component, "power");
    const auto speed = circuit.figure(component, "speed");
    if (!power || !speed) return std::nullopt;
    PrimeMover rated{.rated_speed = Speed(*speed),
                     .rated_torque = Torque(*power / *speed),
                     .droop = circuit.figure(component, "droop").value_or(0.0),
                     .braking_torque = braking_torque(circuit, component),
                     .full_load = measured_full_load(circuit, mover)};
    if (const auto most = circuit.figure(component, "max-torque")) rated.max_torque = Torque(*most);
    return rated;
}

}  // namespace loopwright::hydraulics
