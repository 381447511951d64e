#include <loopwright/render/wire_graph.h>

#include <algorithm>
#include <cmath>
#include <queue>
#include <set>
#include <stdexcept>

namespace loopwright {

namespace {

constexpr int quarters = 4;

}  // namespace

std::vector<DrawnSymbol> drawn_symbols(const Circuit& circuit, const Layout& layout) {
    std::vector<DrawnSymbol> out;
    for (const Placed& placed : layout.placed) {
        if (placed.component >= circuit.components.size() ||
            (placed.port != none && placed.port >= circuit.ports.size()))
            throw std::logic_error("the layout belongs to another circuit");
        const Component& component = circuit.components[placed.component];
        const Symbol rest = placed.port == none ? symbol_of(circuit, component)
                                                : local_reservoir(circuit, component, placed.port);
        out.push_back({placed, turned(rest, placed.attitude)});
    }
    return out;
}

GridPoint on_grid(const Placed& placed, Point in_symbol) {
    return {placed.at.x + static_cast<int>(std::lround(in_symbol.x * quarters)),
            placed.at.y + static_cast<int>(std::lround(in_symbol.y * quarters))};
}

WireGraph::WireGraph(const Layout& layout, const std::vector<DrawnSymbol>& symbols)
    : layout_(&layout) {
    for (const Wire& wire : layout.wires) {
        next_[{wire.from.x, wire.from.y}].push_back(wire.to);
        next_[{wire.to.x, wire.to.y}].push_back(wire.from);
    }
    for (const DrawnSymbol& symbol : symbols)
        for (const PortAnchor& port : symbol.shape.ports)
            places_[port.port].push_back(on_grid(symbol.placed, port.at));
}

const std::vector<GridPoint>& WireGraph::places_of(Index port) const {
    static const std::vector<GridPoint> nowhere;
    const auto at = places_.find(port);
    return at == places_.end() ? nowhere : at->second;
}

std::vector<GridPoint> WireGraph::way(GridPoint from, const std::vector<GridPoint>& to) const {
    std::set<Key> goals;
    for (const GridPoint& p : to) goals.insert({p.x, p.y});
    std::map<Key, std::pair<int, Key>> seen;  // distance, before
    std::priority_queue<std::pair<int, Key>, std::vector<std::pair<int, Key>>, std::greater<>> open;
    const Key start{from.x, from.y};
    seen[start] = {0, start};
    open.push({0, start});
    while (!open.empty()) {
        const auto [distance, at] = open.top();
        open.pop();
        if (distance > seen[at].first) continue;
        if (goals.count(at) != 0) {
            std::vector<GridPoint> points;
            for (Key k = at;; k = seen[k].second) {
                points.push_back({k.first, k.second});
                if (k == start) break;
            }
            std::reverse(points.begin(), points.end());
            return points;
        }
        const auto neighbours = next_.find(at);
        if (neighbours == next_.end()) continue;
        for (const GridPoint& n : neighbours->second) {
            const Key key{n.x, n.y};
            const int far = distance + std::abs(n.x - at.first) + std::abs(n.y - at.second);
            const auto known = seen.find(key);
            if (known != seen.end() && known->second.first <= far) continue;
            seen[key] = {far, at};
            open.push({far, key});
        }
    }
    return {};
}

std::vector<std::pair<GridPoint, GridPoint>> WireGraph::runs_of(Index line) const {
    std::vector<std::pair<GridPoint, GridPoint>> runs;
    for (const Wire& wire : layout_->wires)
        if (wire.line == line) runs.push_back({wire.from, wire.to});
    return runs;
}

}  // namespace loopwright
