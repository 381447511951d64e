#include <loopwright/graph/search.h>

#include <algorithm>

namespace loopwright {

std::vector<Arc> Search::path_to(const Region& region, Index node) const {
    std::vector<Arc> path;
    while (way[node] != start) {
        const Arc& arc = region.arcs[way[node]];
        path.push_back(arc);
        node = tail(region, arc);
    }
    std::reverse(path.begin(), path.end());
    return path;
}

}  // namespace loopwright
