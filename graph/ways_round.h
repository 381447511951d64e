#pragma once

#include <span>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/search.h>

namespace loopwright {

/// Ways for oil from one port of a loop's pump to the other past no machine. Open both ways they
/// short-circuit the loop. A way that leads over what only the pressure at its end opens is never
/// one: oil does not flow to where the pressure is higher.
class WaysRound {
  public:
    explicit WaysRound(const FlowGraph& graph) : graph_(graph) {}

    /// The checks on ways round pumps that do not short-circuit a loop of these edges; good until
    /// the next call.
    std::span<const Index> checks(const Region& region, const Standing& standing,
                                  std::span<const Index> loop);

  private:
    /// Which pilot-opened passages a search takes for open.
    enum class Pilots { all, not_from_end };

    void find(std::span<const Index> loop, Index from, Index to);
    bool leads(Search& search, Index from, Index to, Pilots pilots);
    void add_checks(std::span<const Index> loop, const Search& out, Index end);
    void find_opened_by_end(std::span<const Index> loop, Index start, Index end);
    const Edge& edge(Index e) const { return region_->edges[e]; }

    const FlowGraph& graph_;
    const Region* region_ = nullptr;
    const Standing* standing_ = nullptr;
    std::vector<std::uint8_t> in_loop_;        // for each edge, machines left out
    std::vector<std::uint8_t> opened_by_end_;  // for each edge
    std::vector<Index> checks_;
    Search out_of_from_;
    Search out_of_to_;
    Search into_end_;
};

}  // namespace loopwright
