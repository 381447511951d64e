#pragma once

#include <algorithm>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/graph/flow_graph.h>

/// Reachability that keeps the way, so that every answer has a witness.
namespace loopwright {

/// A search from one or more nodes of a region. `way[n]` is the slot of the arc (in
/// Region::arcs) by which n was first reached, `start` for where it began, `none` if not reached.
struct Search {
    static constexpr Index start = none - 1;

    std::vector<Index> way = {};
    std::vector<Index> order = {};  ///< nodes in the order reached

    bool reached(Index node) const { return way[node] != none; }

    /// Ready for a new search; forgets only what the last one touched.
    void clear(Index node_count) {
        if (way.size() == node_count)
            for (const Index node : order) way[node] = none;
        else
            way.assign(node_count, none);
        order.clear();
        next_ = 0;
    }
    void begin_at(Index node) {
        if (way[node] != none) return;
        way[node] = start;
        order.push_back(node);
    }

    /// Goes on breadth first. `passes(node, arc)` says whether oil gets over the arc out of node.
    /// Returns the visits of nodes and arcs, for the count of work.
    template <typename Passes>
    std::uint64_t run(const Region& region, Passes passes) {
        std::uint64_t visits = 0;
        for (; next_ < order.size(); ++next_) {
            const Index node = order[next_];
            visits += 1 + region.arc_offsets[node + 1] - region.arc_offsets[node];
            for (Index slot = region.arc_offsets[node]; slot < region.arc_offsets[node + 1];
                 ++slot) {
                const FlowArc& arc = region.arcs[slot];
                if (way[arc.to] != none || !passes(node, arc)) continue;
                way[arc.to] = slot;
                order.push_back(arc.to);
            }
        }
        return visits;
    }

    /// Adds the arcs from where the search began to `node`, in order.
    void add_path_to(const Region& region, Index node, std::vector<FlowArc>& path) const;

    /// Of a search against the oil: adds the oil's way from `node` to where the search began.
    void add_way_from(const Region& region, Index node, std::vector<FlowArc>& path) const;

  private:
    std::size_t next_ = 0;
};

/// The first of some nodes that a search reached; `none` if there is none.
inline Index first_reached(const Search& search, std::span<const Index> nodes) {
    const auto at =
        std::find_if(nodes.begin(), nodes.end(), [&](Index node) { return search.reached(node); });
    return at == nodes.end() ? none : *at;
}

/// Searches, paths and steps to borrow, so that their memory is used again: a check runs some
/// dozens of them in each of many situations.
class SearchPool {
  public:
    /// A search, cleared; goes back when the lease ends.
    class Lease {
      public:
        Lease(SearchPool& pool, std::unique_ptr<Search> search)
            : pool_(&pool), search_(std::move(search)) {}
        Lease(Lease&&) = default;
        Lease& operator=(Lease&&) = delete;
        Lease(const Lease&) = delete;
        Lease& operator=(const Lease&) = delete;
        ~Lease() {
            if (search_ != nullptr) pool_->idle_.push_back(std::move(search_));
        }

        Search& operator*() const { return *search_; }
        Search* operator->() const { return search_.get(); }

      private:
        SearchPool* pool_;
        std::unique_ptr<Search> search_;
    };

    Lease take(Index node_count) {
        if (idle_.empty()) idle_.push_back(std::make_unique<Search>());
        std::unique_ptr<Search> search = std::move(idle_.back());
        idle_.pop_back();
        search->clear(node_count);
        return {*this, std::move(search)};
    }

    /// An empty path, good until the next is asked for.
    std::vector<FlowArc>& path() {
        path_.clear();
        return path_;
    }

    /// An empty list of steps, good until the next is asked for.
    std::vector<Step>& steps() {
        steps_.clear();
        return steps_;
    }

  private:
    std::vector<std::unique_ptr<Search>> idle_;
    std::vector<FlowArc> path_;
    std::vector<Step> steps_;
};

/// The node an arc leaves.
inline Index tail(const Region& region, const FlowArc& arc) {
    const Edge& edge = region.edges[arc.edge];
    return arc.backward != 0 ? edge.to : edge.from;
}

/// The arc over an edge.
inline FlowArc arc_over(const Region& region, Index edge, bool backward = false) {
    FlowArc arc;
    arc.to = backward ? region.edges[edge].from : region.edges[edge].to;
    arc.edge = edge & 0x7fffffffU;
    arc.backward = backward ? 1 : 0;
    return arc;
}

/// The same arc seen from its other end.
inline FlowArc turned_round(const Region& region, const FlowArc& arc) {
    FlowArc back;
    back.to = tail(region, arc);
    back.edge = arc.edge;
    back.backward = arc.backward == 0 ? 1 : 0;
    return back;
}

}  // namespace loopwright
