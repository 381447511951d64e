#pragma once

#include <functional>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/pipes.h>
#include <loopwright/graph/search.h>

/// Where the oil of housings gets to, whatever position its valves stand in: for rules that hang on
/// no state. A reservoir ends every way.
namespace loopwright {

/// The first case port of a machine that is drained outside; `none` of every other component.
Index case_port_of(const FlowGraph& graph, Index component);

/// Whether a drain's oil can get over the arc in some position: by elements, valves that are
/// switched, checks, restrictions, dividers and reliefs, each in its own sense.
bool drains_over(const Region& region, const FlowArc& arc);

/// A port of a reservoir that a drain leads to.
struct DrainReturn {
    Index port = none;
    const Region* region = nullptr;
    const Search* search = nullptr;  ///< from the housings of the region
    Index case_port = none;          ///< of a housing on the same pipe; none: there is a last arc
    FlowArc last = {};               ///< into the pipe
};

/// Visits each reservoir port that a drain leads to, once.
void for_each_drain_return(const FlowGraph& graph,
                           const std::function<void(const DrainReturn&)>& visit);

}  // namespace loopwright
