#include <loopwright/hydraulics/rated_mover.h>

namespace loopwright::hydraulics {

std::optional<Torque> braking_torque(const Circuit& circuit, const Component& mover) {
    if (const auto brakes = circuit.figure(mover, "braking-torque")) return Torque(*brakes);
    const auto takes_up = circuit.figure(mover, "braking-power");
    const auto highest = circuit.figure(mover, "max-speed");
    if (!takes_up || !highest) return std::nullopt;
    return Torque(*takes_up / *highest);
}

std::optional<PrimeMover> rated_mover(const Circuit& circuit, Index c) {
    const Component& mover = circuit.components[c];
    const auto power = circuit.figure(mover, "power");
    const auto speed = circuit.figure(mover, "speed");
    if (!power || !speed) return std::nullopt;
    PrimeMover rated{.rated_speed = Speed(*speed),
                     .rated_torque = Torque(*power / *speed),
                     .droop = circuit.figure(mover, "droop").value_or(0.0),
                     .braking_torque = braking_torque(circuit, mover),
                     .full_load = measured_full_load(circuit, c)};
    if (const auto most = circuit.figure(mover, "max-torque")) rated.max_torque = Torque(*most);
    return rated;
}

}  // namespace loopwright::hydraulics
