#include <loopwright/graph/sections.h>

#include <algorithm>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/feeds.h>

namespace loopwright {

namespace {

/// What hangs together by ways open both ways, reservoirs left out.
DisjointSets pieces(const Region& region, const Standing& standing) {
    DisjointSets sets(region.node_count);
    for (Index e = 0; e < region.edges.size(); ++e) {
        const Edge& edge = region.edges[e];
        if (open_way(edge) && standing[e] == (open_forward | open_backward) &&
            region.is_reservoir[edge.from] == 0 && region.is_reservoir[edge.to] == 0)
            sets.join(edge.from, edge.to);
    }
    return sets;
}

/// For each piece, by its leader: whether pressure can stand in it. A motor with both its ports on
/// a piece turns freely.
std::vector<std::uint8_t> held_pieces(const Region& region, DisjointSets& sets) {
    std::vector<std::uint8_t> held(region.node_count, 0);
    for (const Index e : region.machines) {
        const Edge& edge = region.edges[e];
        if (edge.part != Part::actuator) continue;
        const Index from = sets.find(edge.from);
        const Index to = sets.find(edge.to);
        if (from != to) held[from] = held[to] = 1;
    }
    return held;
}

}  // namespace

std::vector<Section> find_sections(const FlowGraph& graph, const Region& region,
                                   const Standing& standing, const LoopSet& loops,
                                   std::span<const KnownLoop> known) {
    std::vector<Section> sections;
    DisjointSets sets = pieces(region, standing);
    const std::vector<std::uint8_t> held = held_pieces(region, sets);
    std::vector<Index> section_of(region.node_count, none);  // by leader, of the loop at hand
    std::vector<Index> pumped(region.node_count, none);  // by leader: last loop with a pump on it
    std::vector<std::vector<Index>> wanted(region.node_count);  // by leader: its sections
    for (Index k = 0; k < known.size(); ++k) {
        for (const Index e : known[k].pump_edges)
            pumped[sets.find(region.edges[e].from)] = pumped[sets.find(region.edges[e].to)] = k;
        const auto first = static_cast<Index>(sections.size());
        for (const Index e : known[k].actuator_edges) {
            if (loops.loop_of[e] != none) continue;
            for (const Index node : {region.edges[e].from, region.edges[e].to}) {
                const Index leader = sets.find(node);
                const bool taken = section_of[leader] != none && section_of[leader] >= first;
                if (region.is_reservoir[node] != 0 || taken || pumped[leader] == k ||
                    held[leader] == 0)
                    continue;
                section_of[leader] = static_cast<Index>(sections.size());
                wanted[leader].push_back(section_of[leader]);
                sections.push_back({.known_loop = k});
            }
        }
        // Any actuator of the loop on the piece gives the name, cut off or not.
        for (const Index e : known[k].actuator_edges) {
            const Passage& passage = graph.circuit().passages[region.edges[e].passage];
            for (const auto& [node, port] : {std::pair{region.edges[e].from, passage.from},
                                             std::pair{region.edges[e].to, passage.to}}) {
                const Index at = section_of[sets.find(node)];
                if (at != none && at >= first)
                    sections[at].named_after = std::min(sections[at].named_after, port);
            }
        }
    }
    if (sections.empty()) return sections;
    for (Index n = 0; n < region.node_count; ++n)
        for (const Index at : wanted[sets.find(n)]) sections[at].nodes.push_back(n);
    return sections;
}

}  // namespace loopwright
