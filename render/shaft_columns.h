#pragma once

#include <map>
#include <vector>

#include <loopwright/render/place.h>

namespace loopwright {

/// Columns of a loop's block for what stands on shafts, by rank (loop_ranks.h): one for all that
/// are equally far from their machine, right of what they stand behind, but left of the loop pump
/// that they lead to.
std::map<int, std::vector<int>> shaft_columns(const Sketch& sketch, const Roles& roles,
                                              const Block& block);

}  // namespace loopwright
