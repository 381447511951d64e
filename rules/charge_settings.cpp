#include <loopwright/rules/charge_settings.h>

#include <algorithm>
#include <cmath>

#include <loopwright/rules/oil_ways.h>

namespace loopwright {

namespace {

void add_reliefs_at(const Situation& s, Index node, std::vector<Index>& found) {
    for (const FlowArc& arc : s.region.arcs_of(node))
        if (is_relief(s.region.edges[arc.edge]) && arc.backward == 0 &&
            stands_open(s.standing, arc))
            found.push_back(arc.edge);
}

bool has_relief(const Situation& s, Index node) {
    const auto arcs = s.region.arcs_of(node);
    return std::any_of(arcs.begin(), arcs.end(), [&](const FlowArc& arc) {
        return is_relief(s.region.edges[arc.edge]) && arc.backward == 0 &&
               stands_open(s.standing, arc);
    });
}

/// Over what stands open and nobody can close.
bool sure_way(const Situation& s, const FlowArc& arc) {
    return stands_open(s.standing, arc) && sure(s.region.edges[arc.edge]) &&
           s.region.is_reservoir[arc.to] == 0;
}

}  // namespace

std::vector<Index> charge_reliefs(const Situation& s) {
    const auto lease = s.searches.take(s.region.node_count);
    for (const ChargeSource& source : s.feeds.sources)
        if (source.has_line && source.is_pump()) lease->begin_at(source.outlet);
    s.graph.work += lease->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return sure_way(s, arc) && !on_a_side(s, arc.to);
    });
    std::vector<Index> found;
    for (const Index node : lease->order) add_reliefs_at(s, node, found);
    // One that discharges into the charge line limits nothing.
    found.erase(std::remove_if(found.begin(), found.end(),
                               [&](Index e) { return lease->reached(s.region.edges[e].to); }),
                found.end());
    std::sort(found.begin(), found.end());
    return found;
}

std::vector<Index> flushing_reliefs(const Situation& s) {
    const auto lease = s.searches.take(s.region.node_count);
    for (const Edge& edge : s.region.edges)
        if (edge.shift == Shift::pressure) lease->begin_at(edge.to);
    std::vector<Index> found;
    if (lease->order.empty()) return found;
    // What comes from the sides leads nothing back to them, and a relief on the way is the first.
    s.graph.work += lease->run(s.region, [&](Index node, const FlowArc& arc) {
        return sure_way(s, arc) && s.region.edges[arc.edge].shift != Shift::pressure &&
               !has_relief(s, node);
    });
    for (const Index node : lease->order)
        if (s.region.is_reservoir[node] == 0) add_reliefs_at(s, node, found);
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
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
