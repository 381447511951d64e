#include <loopwright/graph/combinations.h>

#include <algorithm>

#include <loopwright/graph/disjoint_sets.h>

namespace loopwright {

namespace {

/// An operated valve whose position may not matter.
struct Candidate {
    std::size_t valve = 0;          ///< into ValveBoard::valves
    std::uint32_t stride = 1;       ///< what one position counts in a combination's number
    Index rest = 0;                 ///< number of its position at rest
    std::vector<Index> nodes = {};  ///< that its paths join
};

/// Nothing but working ports of operated valves, and what joins lines, stands at a node.
bool is_bare(const FlowGraph& graph, const Region& region, Index node) {
    if (region.is_reservoir[node] != 0) return false;
    const Circuit& circuit = graph.circuit();
    const auto ports = graph.ports_of(region.joints[node]);
    return std::all_of(ports.begin(), ports.end(), [&](Index port) {
        const Component& component = circuit.components[circuit.ports[port].component];
        const bool joins = component.kind->part == Part::plumbing && component.passages.size() == 0;
        return circuit.ports[port].use != PortUse::pilot &&
               (component.positions.size() > 0 || joins);
    });
}

std::vector<Candidate> find_candidates(const FlowGraph& graph, const Region& region,
                                       const ValveBoard& valves) {
    const Circuit& circuit = graph.circuit();
    std::vector<Candidate> found;
    std::uint32_t stride = 1;
    for (std::size_t v = 0; v < valves.valves().size(); ++v) {
        const Index c = valves.valves()[v];
        const auto positions = circuit.positions_of(circuit.components[c]);
        Candidate candidate{.valve = v, .stride = stride};
        stride *= static_cast<std::uint32_t>(positions.size());
        const auto rest = std::find_if(positions.begin(), positions.end(),
                                       [](const Position& one) { return one.rest; });
        if (rest != positions.end()) candidate.rest = static_cast<Index>(rest - positions.begin());
        const auto at = static_cast<std::size_t>(
            std::lower_bound(region.components.begin(), region.components.end(), c) -
            region.components.begin());
        for (Index e = region.first_edge[at]; e < region.first_edge[at + 1]; ++e)
            candidate.nodes.insert(candidate.nodes.end(),
                                   {region.edges[e].from, region.edges[e].to});
        // At rest it must be allowed wherever it is in other positions.
        if (std::all_of(positions.begin(), positions.end(),
                        [](const Position& one) { return one.in == 0; }) &&
            std::all_of(candidate.nodes.begin(), candidate.nodes.end(),
                        [&](Index node) { return is_bare(graph, region, node); }))
            found.push_back(std::move(candidate));
    }
    return found;
}

}  // namespace

std::vector<std::uint32_t> find_judging_combinations(const FlowGraph& graph, const Region& region,
                                                     const ValveBoard& valves) {
    const std::uint32_t count = valves.combination_count();
    if (count == 1) return {};
    const std::vector<Candidate> candidates = find_candidates(graph, region, valves);
    if (candidates.empty()) return {};
    std::vector<std::uint8_t> bare(region.node_count, 0);
    for (Index node = 0; node < region.node_count; ++node)
        bare[node] = is_bare(graph, region, node) ? 1 : 0;

    std::vector<std::uint32_t> judging(count);
    std::vector<Index> positions;
    Standing standing;
    DisjointSets pieces;
    std::vector<std::uint8_t> alive;
    for (std::uint32_t combination = 0; combination < count; ++combination) {
        valves.find_positions(combination, positions);
        valves.find_standing(positions, standing);
        pieces.reset(region.node_count);
        for (Index e = 0; e < region.edges.size(); ++e)
            if (region.edges[e].shift != Shift::position || standing[e] != 0)
                pieces.join(region.edges[e].from, region.edges[e].to);
        alive.assign(region.node_count, 0);
        for (Index node = 0; node < region.node_count; ++node)
            if (bare[node] == 0) alive[pieces.find(node)] = 1;
        graph.work += region.edges.size() + region.node_count;
        judging[combination] = combination;
        for (const Candidate& one : candidates) {
            if (std::any_of(one.nodes.begin(), one.nodes.end(),
                            [&](Index node) { return alive[pieces.find(node)] != 0; }))
                continue;
            const auto all = graph.circuit().positions_of(
                graph.circuit().components[valves.valves()[one.valve]]);
            const auto stands = static_cast<std::uint32_t>(
                &graph.circuit().positions[positions[one.valve]] - all.data());
            judging[combination] += (one.rest - stands) * one.stride;  // modulo 2^32
        }
    }
    return judging;
}

}  // namespace loopwright
