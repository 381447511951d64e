#pragma once

#include <span>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/known_loop.h>
#include <loopwright/graph/loops.h>
#include <loopwright/graph/states.h>

/// Sections: what closed valves cut off from every pump of a loop while an actuator of it stands
/// there.
namespace loopwright {

struct Section {
    Index known_loop = none;
    Index named_after = none;  ///< port
    std::vector<Index> nodes = {};
};

/// The sections of one standing. An actuator with both its ports on a piece cannot build up
/// pressure there, so a piece with none but such is no section; one open to a reservoir freewheels
/// and is left to the caller, who knows what is vented in the state.
std::vector<Section> find_sections(const FlowGraph& graph, const Region& region,
                                   const Standing& standing, const LoopSet& loops,
                                   std::span<const KnownLoop> known);

}  // namespace loopwright
