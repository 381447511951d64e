#pragma once

#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>

namespace loopwright {

/// Passages of the relief valves by which oil leaves a side.
std::vector<Index> reliefs_of(const Circuit& circuit, const SideInfo& side);

/// Whether a port, or `none`, stands on a side.
bool stands_on(const SideInfo& side, Index port);

/// The main sides that a loop has in a state.
std::vector<const SideInfo*> main_sides(const LoopInfo& loop, State state);

}  // namespace loopwright
