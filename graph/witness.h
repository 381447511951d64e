#pragma once

#include <span>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/graph/feeds.h>
#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/search.h>

/// Ways through the graph told as steps that a finger can follow on the drawing: component, line,
/// component ...
namespace loopwright {

/// Both ends may be left open with `none`.
struct WalkEnds {
    Index from = none;  ///< port where the walk starts
    Index to = none;    ///< port where it ends
};

/// Adds the walk over the arcs, with the lines between their components. An end given adds the way
/// from that port to the first arc, or from the last arc to that port; a walk that starts or ends
/// at a reservoir shows the reservoir. Without arcs: from the one port to the other, or to a
/// reservoir joined to it.
void add_walk(const FlowGraph& graph, const Region& region, std::span<const FlowArc> arcs,
              WalkEnds ends, std::vector<Step>& steps);

/// The port by which a walk is shown to start or end at a node: the preferred one if it is there,
/// else the first machine's port there, else any.
Index port_on(const FlowGraph& graph, const Region& region, Index node, Index preferred);

/// Adds the charge source that delivers into a node; gives its outlet port, `none` if there is
/// none.
Index add_source(const FlowGraph& graph, const Region& region,
                 std::span<const ChargeSource> sources, Index node, std::vector<Step>& steps);

/// What happens where oil takes this arc: "free flow", "through the element", ...
std::string_view passing_text(const Edge& edge, bool backward);

/// The step over one arc.
Step step_over(const FlowGraph& graph, const Region& region, const FlowArc& arc,
               std::string_view text = {});

/// The ports that an arc enters and leaves its component by.
Index entry_port(const FlowGraph& graph, const Region& region, const FlowArc& arc);
Index exit_port(const FlowGraph& graph, const Region& region, const FlowArc& arc);

/// Adds where a search ended: the components that did not let it out of what it reached, in the
/// order met; each once, an operated valve once for each pair of ports. `towards` says whether the
/// search ran with the oil (false: against it).
void add_frontier(const FlowGraph& graph, const Region& region, const Standing& standing,
                  const Search& search, bool towards, std::vector<Step>& steps);

}  // namespace loopwright
