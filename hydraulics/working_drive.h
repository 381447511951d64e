#pragma once

#include <loopwright/hydraulics/working.h>

namespace loopwright::hydraulics {

/// The equations that hold strokes elsewhere than they are set. Private to working.cpp.
void work_strokes(const Circuit& circuit, const Model& model, const SteadyState& state,
                  std::vector<WorkedEquation>& worked);

/// Those of what stands on shafts beside machines: prime movers that give way, gearboxes, loads and
/// brakes. Private to working.cpp.
void work_trains(const Circuit& circuit, const Model& model, const SteadyState& state,
                 std::vector<WorkedEquation>& worked);

}  // namespace loopwright::hydraulics
