#include <loopwright/render/shafts.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace loopwright {

namespace {

// A change of level costs a shaft as much as this many modules along it.
constexpr int level_change = 3;
// So does a stub that looks the wrong way.
constexpr int wrong_way = 40;

struct Stub {
    int machine = 0;
    RouteEnd end = {};
};

struct Link {
    int cost = 0;
    std::size_t from = 0;
    std::size_t to = 0;
};

std::vector<Stub> stubs_of(const Circuit& circuit, const Sketch& sketch, Index shaft) {
    std::vector<Stub> stubs;
    int machine = 0;
    for (const Index component : circuit.components_of(circuit.shafts[shaft])) {
        const int p = sketch.part_of(component);
        if (p < 0) continue;
        const SketchPart& part = sketch.parts[static_cast<std::size_t>(p)];
        for (const ShaftAnchor& anchor : part.shape.shafts) {
            if (shaft_at(circuit.components[component], anchor) != shaft) continue;
            stubs.push_back({machine,
                             {{part.at.x + static_cast<int>(std::lround(anchor.at.x)),
                               part.at.y + static_cast<int>(std::lround(anchor.at.y))},
                              anchor.side}});
        }
        ++machine;
    }
    return stubs;
}

int link_cost(const Stub& a, const Stub& b) {
    const int dx = b.end.at.x - a.end.at.x;
    const int dy = b.end.at.y - a.end.at.y;
    int cost = std::abs(dx) + level_change * std::abs(dy);
    const auto wrong = [](Side side, int towards) {
        return (side == Side::right && towards < 0) || (side == Side::left && towards > 0);
    };
    if (wrong(a.end.side, dx)) cost += wrong_way;
    if (wrong(b.end.side, -dx)) cost += wrong_way;
    return cost;
}

}  // namespace

std::vector<ShaftNet> shaft_nets(const Circuit& circuit, const Sketch& sketch) {
    std::vector<ShaftNet> nets;
    for (Index s = 0; s < circuit.shafts.size(); ++s) {
        const std::vector<Stub> stubs = stubs_of(circuit, sketch, s);
        std::vector<Link> links;
        for (std::size_t i = 0; i < stubs.size(); ++i)
            for (std::size_t j = i + 1; j < stubs.size(); ++j)
                if (stubs[i].machine != stubs[j].machine)
                    links.push_back({link_cost(stubs[i], stubs[j]), i, j});
        std::stable_sort(links.begin(), links.end(),
                         [](const Link& a, const Link& b) { return a.cost < b.cost; });
        std::vector<int> tree;  // machine -> the tree it belongs to
        for (const Stub& stub : stubs)
            tree.resize(std::max(tree.size(), static_cast<std::size_t>(stub.machine) + 1));
        for (std::size_t m = 0; m < tree.size(); ++m) tree[m] = static_cast<int>(m);
        std::vector<std::size_t> piece(stubs.size(), stubs.size());  // stub -> piece of shaft
        for (const Link& link : links) {
            const int a = tree[static_cast<std::size_t>(stubs[link.from].machine)];
            const int b = tree[static_cast<std::size_t>(stubs[link.to].machine)];
            if (a == b) continue;
            for (int& t : tree)
                if (t == b) t = a;
            std::size_t& from = piece[link.from];
            std::size_t& to = piece[link.to];
            if (from == stubs.size()) from = link.from;
            if (to == stubs.size()) {
                to = from;
            } else {
                const std::size_t merged = to;
                for (std::size_t& other : piece)
                    if (other == merged) other = from;
            }
        }
        std::map<std::size_t, ShaftNet> pieces;
        for (std::size_t i = 0; i < stubs.size(); ++i) {
            if (piece[i] == stubs.size()) continue;
            pieces[piece[i]].shaft = s;
            pieces[piece[i]].net.ends.push_back(stubs[i].end);
        }
        for (auto& [leader, net] : pieces) nets.push_back(std::move(net));
    }
    return nets;
}

}  // namespace loopwright
