#pragma once

#include <loopwright/hydraulics/operating_point.h>

namespace loopwright::hydraulics {

/// Adds to a point what rules ask of it beside what `solve` tells: pressures by port, flows through
/// components and out of machines' ports, what stands on shafts. Its machines and shafts are there.
void read_details(const Circuit& circuit, const Model& model, const SteadyState& state,
                  OperatingPoint& point);

}  // namespace loopwright::hydraulics
