#include <loopwright/graph/combinations.h>

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

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

Range edges_of(const Region& region, Index component) {
    const auto at = static_cast<std::size_t>(
        std::lower_bound(region.components.begin(), region.components.end(), component) -
        region.components.begin());
    return {region.first_edge[at], region.first_edge[at + 1]};
}

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

/// A valve's number of its position at rest, 0 where it names none.
Index rest_of(std::span<const Position> positions) {
    const auto rest =
        std::find_if(positions.begin(), positions.end(), [](const Position& p) { return p.rest; });
    return rest == positions.end() ? 0 : static_cast<Index>(rest - positions.begin());
}

/// A valve with two positions, in one of which it opens its only way.
struct ShutOff {
    std::size_t valve = 0;     ///< into ValveBoard::valves
    std::uint32_t stride = 1;  ///< what one position counts in a combination's number
    Index rest = 0;
    Index open = 0;  ///< the number of the position
};

/// Shut-off valves side by side: the same way between the same two nodes.
using SideBySide = std::vector<ShutOff>;

/// Whether no region's loop can be judged while another stands in neutral: there is one pump at
/// most that could have a loop.
bool has_one_loop(const Region& region) {
    return std::count_if(region.machines.begin(), region.machines.end(), [&](Index e) {
               const Edge& edge = region.edges[e];
               return edge.part == Part::pump && region.is_reservoir[edge.from] == 0 &&
                      region.is_reservoir[edge.to] == 0;
           }) <= 1;
}

std::vector<SideBySide> find_side_by_side(const FlowGraph& graph, const Region& region,
                                          const ValveBoard& valves) {
    if (!has_one_loop(region)) return {};
    const Circuit& circuit = graph.circuit();
    using Way = std::tuple<Index, Index, bool, PassageClass>;
    std::map<Way, SideBySide> found;
    std::uint32_t stride = 1;
    for (std::size_t v = 0; v < valves.valves().size(); ++v) {
        const Index c = valves.valves()[v];
        const auto positions = circuit.positions_of(circuit.components[c]);
        const std::uint32_t own_stride = stride;
        stride *= static_cast<std::uint32_t>(positions.size());
        const Range edges = edges_of(region, c);
        if (positions.size() != 2 || edges.size() != 1 ||
            std::any_of(positions.begin(), positions.end(),
                        [](const Position& one) { return one.in != 0; }))
            continue;
        const Edge& edge = region.edges[edges.begin];
        if (edge.shift != Shift::position) continue;
        auto [from, to] = std::pair{edge.from, edge.to};
        if (edge.both_ways && from > to) std::swap(from, to);
        const Position& open = circuit.positions[circuit.passages[edge.passage].position];
        found[{from, to, edge.both_ways, edge.passage_class}].push_back(
            {.valve = v,
             .stride = own_stride,
             .rest = rest_of(positions),
             .open = static_cast<Index>(&open - positions.data())});
    }
    std::vector<SideBySide> groups;
    for (auto& [way, group] : found)
        if (group.size() > 1) groups.push_back(std::move(group));
    return groups;
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
        candidate.rest = rest_of(positions);
        const Range edges = edges_of(region, c);
        for (Index e = edges.begin; e < edges.end; ++e)
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

/// Of valves side by side one that is open does: what the others change in a combination's number
/// where they stand at rest (modulo 2^32). `number(valve)`: of the position that it stands in.
template <typename Number>
std::uint32_t at_rest_beside_open(const SideBySide& group, const Number& number) {
    const auto is_open = [&](const ShutOff& one) { return number(one.valve) == one.open; };
    auto kept = std::find_if(group.begin(), group.end(), is_open);
    if (kept == group.end()) return 0;
    // One that is open at rest does for all.
    if (std::any_of(group.begin(), group.end(),
                    [](const ShutOff& one) { return one.rest == one.open; }))
        kept = group.end();
    std::uint32_t change = 0;
    for (auto one = group.begin(); one != group.end(); ++one)
        if (one != kept) change += (one->rest - number(one->valve)) * one->stride;
    return change;
}

}  // namespace

std::vector<std::uint32_t> find_judging_combinations(const FlowGraph& graph, const Region& region,
                                                     const ValveBoard& valves) {
    const std::uint32_t count = valves.combination_count();
    if (count == 1) return {};
    const std::vector<Candidate> candidates = find_candidates(graph, region, valves);
    const std::vector<SideBySide> groups = find_side_by_side(graph, region, valves);
    if (candidates.empty() && groups.empty()) return {};
    std::vector<std::uint8_t> bare(region.node_count, 0);
    for (Index node = 0; node < region.node_count; ++node)
        bare[node] = is_bare(graph, region, node) ? 1 : 0;

    std::vector<std::uint32_t> judging(count);
    std::vector<Index> positions;
    Standing standing;
    DisjointSets pieces;
    std::vector<std::uint8_t> alive;
    const auto number = [&](std::size_t valve) {  // of the position that a valve stands in
        const auto all =
            graph.circuit().positions_of(graph.circuit().components[valves.valves()[valve]]);
        return static_cast<Index>(&graph.circuit().positions[positions[valve]] - all.data());
    };
    for (std::uint32_t combination = 0; combination < count; ++combination) {
        valves.find_positions(combination, positions);
        judging[combination] = combination;
        for (const SideBySide& group : groups)
            judging[combination] += at_rest_beside_open(group, number);
        if (judging[combination] != combination)
            valves.find_positions(judging[combination], positions);
        valves.find_standing(positions, standing);
        pieces.reset(region.node_count);
        for (Index e = 0; e < region.edges.size(); ++e)
            if (region.edges[e].shift != Shift::position || standing[e] != 0)
                pieces.join(region.edges[e].from, region.edges[e].to);
        alive.assign(region.node_count, 0);
        for (Index node = 0; node < region.node_count; ++node)
            if (bare[node] == 0) alive[pieces.find(node)] = 1;
        graph.work += region.edges.size() + region.node_count;
        for (const Candidate& one : candidates) {
            if (std::any_of(one.nodes.begin(), one.nodes.end(),
                            [&](Index node) { return alive[pieces.find(node)] != 0; }))
                continue;
            judging[combination] += (one.rest - number(one.valve)) * one.stride;  // modulo 2^32
        }
    }
    return judging;
}

}  // namespace loopwright
