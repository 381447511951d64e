#pragma once

#include <loopwright/graph/flow_graph.h>

/// What a pump draws through, whatever position its valves stand in: for rules that hang on no
/// state.
namespace loopwright {

/// The suction port of a pump; `none` of every other component, and of a two-way pump.
Index suction_port_of(const FlowGraph& graph, Index component);

/// Whether a pump can draw over the arc in some position: over elements, valves set by hand or
/// operated, checks and restrictions, each in its own sense.
bool draws_over(const Region& region, const FlowArc& arc);

}  // namespace loopwright
