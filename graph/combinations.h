#pragma once

#include <cstdint>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/valves.h>

namespace loopwright {

/// For each combination of a region's valve positions the one that it is judged by: itself, or one
/// in which valves on which nothing hangs stand at rest. Those are valves between nothing but other
/// shut valves, where nothing gives or takes oil: of valves one behind the other only the first and
/// the last that are shut count. In a region with one loop they are also valves beside an open one
/// that does the same: of valves side by side one that is open counts. Empty where each is judged
/// by itself.
std::vector<std::uint32_t> find_judging_combinations(const FlowGraph& graph, const Region& region,
                                                     const ValveBoard& valves);

}  // namespace loopwright
