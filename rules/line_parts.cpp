#include <loopwright/rules/line_parts.h>

#include <loopwright/graph/feeds.h>

namespace loopwright {

/// Passed by oil on its way to or from a relief; nothing that somebody can close.
bool secured(const Situation& s, const FlowArc& arc) {
    const Edge& edge = s.region.edges[arc.edge];
    if (!stands_open(s.standing, arc)) return false;
    switch (edge.passage_class) {
        case PassageClass::element:
        case PassageClass::one_way:
        case PassageClass::divider:
            return true;
        case PassageClass::switched:
            return edge.shift != Shift::hand || edge.locked;
        default:
            return false;
    }
}

LineParts::LineParts(const Situation& s) : s_(s) {
    sets_.reset(s_.region.node_count);
    for (Index e = 0; e < s_.region.edges.size(); ++e) {
        const Edge& edge = s_.region.edges[e];
        if (open_way(edge) && s_.standing[e] == (open_forward | open_backward) &&
            s_.feeds.line.reached(edge.from) && s_.feeds.line.reached(edge.to) &&
            s_.region.is_reservoir[edge.from] == 0 && s_.region.is_reservoir[edge.to] == 0)
            sets_.join(edge.from, edge.to);
    }
}

const Search& LineParts::checked_from(Index node) {
    const auto [at, fresh] = checked_from_.try_emplace(sets_.find(node));
    if (!fresh) return at->second;
    const FeedRule rule(s_.region, s_.standing, s_.loops, s_.feeds.pressureless(),
                        s_.open_part_ways);
    Search fed;
    fed.clear(s_.region.node_count);
    fed.begin_at(node);
    s_.graph.work += fed.run(s_.region, rule);
    find_checked(s_.graph, s_.region, fed, rule, at->second);
    return at->second;
}

const Search& LineParts::secured_from(Index node) {
    const auto [at, fresh] = secured_from_.try_emplace(sets_.find(node));
    Search& led = at->second;
    if (!fresh) return led;
    led.clear(s_.region.node_count);
    led.begin_at(node);
    s_.graph.work += led.run(s_.region, [&](Index /*node*/, const FlowArc& arc) {
        return secured(s_, arc) && s_.feeds.pressureless()[arc.to] == 0;
    });
    return led;
}

}  // namespace loopwright
