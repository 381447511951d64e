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

bool touches(const Region& region, std::span<const Index> edges, Index leader, DisjointSets& sets) {
    return std::any_of(edges.begin(), edges.end(), [&](Index e) {
        return sets.find(region.edges[e].from) == leader || sets.find(region.edges[e].to) == leader;
    });
}

}  // namespace

std::vector<Section> find_sections(const FlowGraph& graph, const Region& region,
                                   const Standing& standing, const LoopSet& loops,
                                   std::span<const KnownLoop> known) {
    std::vector<Section> sections;
    DisjointSets sets = pieces(region, standing);
    std::vector<Index> taken;
    for (Index k = 0; k < known.size(); ++k) {
        for (const Index cut_off : known[k].actuator_edges) {
            if (loops.loop_of[cut_off] != none) continue;
            for (const Index node : {region.edges[cut_off].from, region.edges[cut_off].to}) {
                const Index leader = sets.find(node);
                if (region.is_reservoir[node] != 0 ||
                    std::find(taken.begin(), taken.end(), leader) != taken.end() ||
                    touches(region, known[k].pump_edges, leader, sets))
                    continue;
                taken.push_back(leader);
                Section section{.known_loop = k};
                bool held = false;
                for (const KnownLoop& loop : known)
                    for (const Index e : loop.actuator_edges) {
                        const Edge& edge = region.edges[e];
                        const Passage& passage = graph.circuit().passages[edge.passage];
                        const bool from_here = sets.find(edge.from) == leader;
                        const bool to_here = sets.find(edge.to) == leader;
                        if (from_here)
                            section.named_after = std::min(section.named_after, passage.from);
                        if (to_here)
                            section.named_after = std::min(section.named_after, passage.to);
                        held = held || from_here != to_here;
                    }
                if (!held) continue;
                for (Index n = 0; n < region.node_count; ++n)
                    if (sets.find(n) == leader) section.nodes.push_back(n);
                sections.push_back(std::move(section));
            }
        }
    }
    return sections;
}

}  // namespace loopwright
