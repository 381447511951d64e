#pragma once

#include <cstdint>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/valves.h>

namespace loopwright {

/// For each combination of a region's valve positions the one that it is judged by: itself, or one
/// in which valves between nothing but other shut valves stand at rest. Nothing gives or takes oil
/// there, so that nothing hangs on them: of valves one behind the other only the first and the last
/// that are shut count. Empty where each is judged by itself.
std::vector<std::uint32_t> find_judging_combinations(const FlowGraph& graph, const Region& region,
                                                     const ValveBoard& valves);

}  // namespace loopwright
