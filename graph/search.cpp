#include <loopwright/graph/search.h>

#include <algorithm>

namespace loopwright {

std::vector<FlowArc> Search::path_to(const Region& region, Index node) const {
    std::vector<FlowArc> path;
    while (way[node] != start) {
        const FlowArc& arc = region.arcs[way[node]];
        path.push_back(arc);
        node = tail(region, arc);
    }
    std::reverse(path.begin(), path.end());
    return path;
}

}  // namespace loopwright
