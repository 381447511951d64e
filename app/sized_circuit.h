#pragma once

#include <span>
#include <string>

#include <loopwright/hydraulics/sizing_duty.h>

namespace loopwright::app {

/// A sound circuit with the sizes of a drive: a circuit to begin with, its figures exchanged, with
/// the prime mover, gearbox, load, oil and duty of the circuit that asked for it. `travels`: of the
/// command at each duty point, -1 to 1.
std::string sized_circuit(const Circuit& asked, const hydraulics::SizingTask& task,
                          const hydraulics::DriveSizes& sizes, std::span<const double> travels);

}  // namespace loopwright::app
