#include <loopwright/graph/search.h>

#include <algorithm>

namespace loopwright {

void Search::add_path_to(const Region& region, Index node, std::vector<FlowArc>& path) const {
    const auto before = static_cast<std::ptrdiff_t>(path.size());
    while (way[node] != start) {
        const FlowArc& arc = region.arcs[way[node]];
        path.push_back(arc);
        node = tail(region, arc);
    }
    std::reverse(path.begin() + before, path.end());
}

void Search::add_way_from(const Region& region, Index node, std::vector<FlowArc>& path) const {
    // From the node back to the beginning, which is the order that the oil takes.
    while (way[node] != start) {
        const FlowArc& arc = region.arcs[way[node]];
        path.push_back(turned_round(region, arc));
        node = path.back().to;
    }
}

}  // namespace loopwright
