#include <loopwright/render/route.h>

#include <algorithm>
#include <map>
#include <numeric>

#include <loopwright/render/route_grid.h>
#include <loopwright/render/route_net.h>
#include <loopwright/render/route_search.h>

namespace loopwright {

namespace {

// How often the whole set of nets is gone through again.
constexpr int improvement_rounds = 3;
// How often a net that finds no way may go to the head of the order.
constexpr int most_restarts = 8;

/// Half the perimeter of the box round a net's ends: short nets first.
int spread(const RouteNet& net) {
    if (net.ends.empty()) return 0;
    int left = net.ends.front().at.x;
    int right = left;
    int top = net.ends.front().at.y;
    int bottom = top;
    for (const RouteEnd& end : net.ends) {
        left = std::min(left, end.at.x);
        right = std::max(right, end.at.x);
        top = std::min(top, end.at.y);
        bottom = std::max(bottom, end.at.y);
    }
    return right - left + bottom - top;
}

std::vector<std::size_t> order_of(std::span<const RouteNet> nets) {
    std::vector<std::size_t> order(nets.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const bool trunk_a = !nets[a].trunks.empty();
        const bool trunk_b = !nets[b].trunks.empty();
        if (trunk_a != trunk_b) return trunk_a;
        return spread(nets[a]) < spread(nets[b]);
    });
    return order;
}

/// A net whose level stretches bar its own way is laid without them.
std::optional<std::vector<Run>> lay_at_all(RouteGrid& grid, RouteSearch& search, std::int32_t net,
                                           const RouteNet& ends) {
    std::optional<std::vector<Run>> runs = lay_net(grid, search, net, ends);
    if (runs || ends.trunks.empty()) return runs;
    return lay_net(grid, search, net, {.ends = ends.ends});
}

/// One round over all nets; whether anything got better.
bool improve(RouteGrid& grid, RouteSearch& search, std::span<const RouteNet> nets,
             const std::vector<std::size_t>& order, std::vector<std::vector<Run>>& laid) {
    bool better = false;
    for (const std::size_t n : order) {
        const auto net = static_cast<std::int32_t>(n);
        if (laid[n].empty()) continue;
        const int before = net_cost(grid, net, laid[n]);
        std::vector<Run> old = std::move(laid[n]);
        for (const Run& run : old) grid.take_up(run);
        std::optional<std::vector<Run>> again = lay_net(grid, search, net, nets[n]);
        if (again && net_cost(grid, net, *again) < before) {
            laid[n] = std::move(*again);
            better = true;
            continue;
        }
        if (again)
            for (const Run& run : *again) grid.take_up(run);
        for (const Run& run : old) grid.lay(net, run);
        laid[n] = std::move(old);
    }
    return better;
}

}  // namespace

std::optional<std::vector<RoutedNet>> route(const RouteField& field,
                                            std::span<const RouteNet> nets) {
    RouteGrid grid(field, nets);
    RouteSearch search(grid);
    std::vector<std::size_t> order = order_of(nets);
    std::vector<std::vector<Run>> laid(nets.size());
    int restarts = most_restarts;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const std::size_t n = order[i];
        std::optional<std::vector<Run>> runs =
            lay_at_all(grid, search, static_cast<std::int32_t>(n), nets[n]);
        if (runs) {
            laid[n] = std::move(*runs);
            continue;
        }
        if (restarts-- == 0 || i == 0) return std::nullopt;
        for (std::size_t done = 0; done < i; ++done) {
            for (const Run& run : laid[order[done]]) grid.take_up(run);
            laid[order[done]].clear();
        }
        order.erase(order.begin() + static_cast<std::ptrdiff_t>(i));
        order.insert(order.begin(), n);
        i = static_cast<std::size_t>(-1);
    }
    for (int round = 0; round < improvement_rounds; ++round)
        if (!improve(grid, search, nets, order, laid)) break;

    std::vector<RoutedNet> routed(nets.size());
    for (std::size_t n = 0; n < nets.size(); ++n)
        routed[n] = finished(grid, static_cast<std::int32_t>(n), laid[n]);
    return routed;
}

}  // namespace loopwright
