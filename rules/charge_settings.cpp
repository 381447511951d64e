#include <loopwright/rules/charge_settings.h>

#include <algorithm>
#include <cmath>

#include <loopwright/rules/oil_ways.h>

namespace loopwright {

namespace {

/// Edges of the reliefs at what a search reaches over what stands open and nobody can close.
std::vector<Index> reliefs_from(const Situation& s, Search& search, bool over_sides) {
    s.graph.work += search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return stands_open(s.standing, arc) && sure(s.region.edges[arc.edge]) &&
               s.region.is_reservoir[arc.to] == 0 && (over_sides || !on_a_side(s, arc.to));
    });
    std::vector<Index> found;
    for (const Index node : search.order)
        for (const FlowArc& arc : s.region.arcs_of(node))
            if (is_relief(s.region.edges[arc.edge]) && arc.backward == 0 &&
                stands_open(s.standing, arc))
                found.push_back(arc.edge);
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace

std::vector<Index> charge_reliefs(const Situation& s) {
    const auto lease = s.searches.take(s.region.node_count);
    for (const ChargeSource& source : s.feeds.sources)
        if (source.has_line) lease->begin_at(source.outlet);
    return reliefs_from(s, *lease, false);
}

std::vector<Index> flushing_reliefs(const Situation& s) {
    const auto lease = s.searches.take(s.region.node_count);
    for (const Edge& edge : s.region.edges)
        if (edge.shift == Shift::pressure) lease->begin_at(edge.to);
    return lease->order.empty() ? std::vector<Index>() : reliefs_from(s, *lease, true);
}

std::optional<LowestCharge> lowest_charge(const Situation& s) {
    std::vector<Index> reliefs = charge_reliefs(s);
    if (reliefs.empty()) return std::nullopt;
    const std::vector<Index> flushing = flushing_reliefs(s);
    reliefs.insert(reliefs.end(), flushing.begin(), flushing.end());
    LowestCharge lowest;
    for (const Index e : reliefs) {
        const Edge& relief = s.region.edges[e];
        if (std::isnan(relief.opening)) {
            lowest.unknown.push_back(relief.component);
        } else if (lowest.relief == none || relief.opening < lowest.pressure) {
            lowest.pressure = relief.opening;
            lowest.relief = e;
        }
    }
    return lowest;
}

}  // namespace loopwright
