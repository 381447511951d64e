#pragma once

#include <optional>

#include <loopwright/hydraulics/machine.h>

namespace loopwright::hydraulics {

/// As in ISO 4391 (definitions from memory), for incompressible oil as in ISO 4409:2007.
struct Efficiencies {
    Work work;
    double volumetric;  ///< pump: flow out over geometric flow; motor: the inverse, of flow in
    double hydro_mechanical;  ///< pump: ideal torque over torque; motor: torque over ideal torque
    double total() const { return volumetric * hydro_mechanical; }
};

/// Of a machine in a state: as a pump where the shaft's motion works against the pressure
/// difference, as a motor where it follows it; flows are those of the port with the higher
/// pressure. Nothing at rest, at no stroke or without a pressure difference, and where all that
/// goes in is lost: a pump that delivers nothing, a motor that has to be turned.
std::optional<Efficiencies> efficiencies(const Machine& machine, const MachineState& state,
                                         const MachineLaw& law);

}  // namespace loopwright::hydraulics
