#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include <loopwright/graph/flow_graph.h>

namespace loopwright {

/// Values that spread from seeds over a region, the best first. Few differ, so what is equal to the
/// best is gone through as a list, and a heap holds the rest.
template <typename Better>
class Spread {
  public:
    Spread(const FlowGraph& graph, const Region& region, std::vector<double>& values)
        : graph_(graph), region_(region), values_(values) {
        level_.reserve(region.node_count);
        later_.reserve(region.node_count);
    }

    /// Whether that is better than what the node has.
    bool seed(Index node, double value) {
        if (!better_(value, values_[node])) return false;
        values_[node] = value;
        later_.emplace_back(value, node);
        return true;
    }

    /// `step(arc, value)`: the value that the arc's end gets where its beginning has this one.
    /// `taken(node, slot)` is told of each arc out of a node over which another got a better one.
    template <typename Step, typename Taken>
    void run(Step step, Taken taken) {
        const auto worse = [this](const Entry& a, const Entry& b) {
            return better_(b.first, a.first);
        };
        std::make_heap(later_.begin(), later_.end(), worse);
        while (!later_.empty()) {
            const double best = later_.front().first;
            level_.clear();
            while (!later_.empty() && later_.front().first == best) {
                std::pop_heap(later_.begin(), later_.end(), worse);
                if (values_[later_.back().second] == best) level_.push_back(later_.back().second);
                later_.pop_back();
            }
            for (std::size_t i = 0; i < level_.size(); ++i) {
                const Index node = level_[i];
                const Index end = region_.arc_offsets[node + 1];
                graph_.work += 1 + end - region_.arc_offsets[node];
                for (Index slot = region_.arc_offsets[node]; slot < end; ++slot) {
                    const FlowArc& arc = region_.arcs[slot];
                    if (!better_(best, values_[arc.to])) continue;
                    const double value = step(arc, best);
                    if (!better_(value, values_[arc.to])) continue;
                    values_[arc.to] = value;
                    taken(node, slot);
                    if (value == best) {
                        level_.push_back(arc.to);
                    } else {
                        later_.emplace_back(value, arc.to);
                        std::push_heap(later_.begin(), later_.end(), worse);
                    }
                }
            }
        }
    }

  private:
    using Entry = std::pair<double, Index>;

    const FlowGraph& graph_;
    const Region& region_;
    std::vector<double>& values_;
    Better better_;
    std::vector<Index> level_;
    std::vector<Entry> later_;
};

}  // namespace loopwright
