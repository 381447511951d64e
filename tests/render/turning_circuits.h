#pragma once

#include <string>
#include <utility>
#include <vector>

namespace loopwright::testing {

/// Circuits with all that turns: brakes, clutches and gearboxes on shafts, units, cylinders.
std::vector<std::pair<std::string, std::string>> turning_circuits();

}  // namespace loopwright::testing
