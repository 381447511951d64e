#include <loopwright/hydraulics/efficiency.h>

#include <cmath>

namespace loopwright::hydraulics {

std::optional<Efficiencies> efficiencies(const Machine& machine, const MachineState& state,
                                         const MachineLaw& law) {
    const double geometric =
        machine.displacement.si() * state.relative_displacement * state.shaft_speed;
    const double difference = state.pressure_a - state.pressure_b;
    const double ideal = geometric * difference;  // power that the shaft gives to the oil
    if (ideal == 0.0) return std::nullopt;

    const double out = difference > 0.0 ? law.flow_a.value : law.flow_b.value;
    const double shaft = law.torque.value * state.shaft_speed;
    if (ideal > 0.0) {
        if (!(out > 0.0)) return std::nullopt;
        return Efficiencies{Work::pump, out / std::abs(geometric), ideal / shaft};
    }
    if (!(shaft < 0.0)) return std::nullopt;
    return Efficiencies{Work::motor, -std::abs(geometric) / out, shaft / ideal};
}

}  // namespace loopwright::hydraulics
