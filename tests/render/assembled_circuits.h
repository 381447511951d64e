#pragma once

#include <string>
#include <utility>
#include <vector>

/// Circuits whose parts stand in assemblies: units as they are sold and mounted, and drives whose
/// parts are put into assemblies by lot.
namespace loopwright::testing {

/// Name and text of each.
std::vector<std::pair<std::string, std::string>> assembled_circuits();

}  // namespace loopwright::testing
