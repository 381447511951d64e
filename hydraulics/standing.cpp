#include <loopwright/hydraulics/standing.h>

#include <algorithm>

#include <loopwright/graph/situation.h>

namespace loopwright::hydraulics {

namespace {

/// The loops of a situation; their ports.
void add_loops(const Situation& s, std::vector<PointLoop>& loops) {
    const std::size_t before = loops.size();
    for (const Loop& loop : s.loops.loops) loops.push_back({.first_pump = loop.first_pump});
    for (const JudgedSide& side : s.sides) {
        if (side.loop == none) continue;
        std::vector<Index>& ports = loops[before + side.loop].ports;
        for (const Index node : side.nodes) {
            const auto there = s.graph.ports_of(s.region.joints[node]);
            ports.insert(ports.end(), there.begin(), there.end());
        }
    }
}

/// A point in one of its states.
struct Asked {
    std::size_t point = 0;
    State state = State::drive_forward;
};

bool stands_as_wished(const Situation& s, const PointFigures& point, State state) {
    const Circuit& circuit = point.circuit();
    for (std::size_t v = 0; v < s.valves.size(); ++v) {
        const Component& valve = circuit.components[s.valves[v]];
        Index wished = point.position_of(s.valves[v]);
        if (wished == none) {
            for (Index p = valve.positions.begin; p < valve.positions.end; ++p)
                if ((circuit.positions[p].in & bit(state)) != 0) wished = p;
            for (Index p = valve.positions.begin; p < valve.positions.end && wished == none; ++p)
                if (circuit.positions[p].rest) wished = p;
        }
        if (wished != none && s.positions[v] != wished) return false;
    }
    return true;
}

/// How the circuit stands in each point and state asked, all of its loops in that state.
std::vector<PointStanding> standings_of(const FlowGraph& graph,
                                        std::span<const PointFigures> points,
                                        std::span<const Asked> asked) {
    const Circuit& circuit = graph.circuit();
    std::vector<PointStanding> standing(asked.size());
    for (PointStanding& one : standing) one.open.assign(circuit.passages.size(), 0);
    std::vector<std::vector<std::uint8_t>> found(
        asked.size(), std::vector<std::uint8_t>(graph.regions().size(), 0));
    for_each_situation(graph, [&](const Situation& s) {
        const auto region = static_cast<std::size_t>(&s.region - graph.regions().data());
        for (std::size_t i = 0; i < asked.size(); ++i) {
            if (found[i][region] != 0 || (s.states & bit(asked[i].state)) == 0 ||
                s.judged_pump != none || !s.undecided.empty() ||
                !stands_as_wished(s, points[asked[i].point], asked[i].state))
                continue;
            found[i][region] = 1;
            for (Index e = 0; e < s.region.edges.size(); ++e)
                standing[i].open[s.region.edges[e].passage] = s.standing[e];
            add_loops(s, standing[i].loops);
        }
    });
    const auto is_switched = [](const Edge& edge) { return edge.shift != Shift::never; };
    for (std::size_t r = 0; r < graph.regions().size(); ++r) {
        const auto& edges = graph.regions()[r].edges;
        if (std::none_of(edges.begin(), edges.end(), is_switched)) continue;
        for (std::size_t i = 0; i < asked.size(); ++i)
            if (found[i][r] == 0) standing[i].open.clear();
    }
    return standing;
}

/// Each loop, and what has a port on it, as in the loop's own state; what stands on no loop as in
/// all of the states. Where they do not agree on it, how it stands is not known.
PointStanding merged(const PointFigures& point, std::span<const Asked> asked,
                     std::span<const PointStanding> in) {
    const Circuit& circuit = point.circuit();
    PointStanding whole;
    std::vector<std::size_t> of_port(circuit.ports.size(), in.size());
    for (std::size_t i = 0; i < in.size(); ++i) {
        if (in[i].open.empty()) return whole;
        for (const PointLoop& loop : in[i].loops) {
            if (point.state(loop.first_pump) != asked[i].state) continue;
            whole.loops.push_back(loop);
            for (const Index port : loop.ports) of_port[port] = i;
        }
    }
    whole.open = in.front().open;
    for (Index p = 0; p < circuit.passages.size(); ++p) {
        const std::size_t one = of_port[circuit.passages[p].from];
        const std::size_t other = of_port[circuit.passages[p].to];
        const std::size_t own = one == in.size() ? other : one;
        const bool apart = one != other && one != in.size() && other != in.size();
        if (own != in.size() && !apart) {
            whole.open[p] = in[own].open[p];
            continue;
        }
        for (const PointStanding& each : in)
            if (each.open[p] != whole.open[p]) return {.loops = std::move(whole.loops)};
    }
    return whole;
}

}  // namespace

std::vector<PointStanding> standings(const FlowGraph& graph, std::span<const PointFigures> points) {
    std::vector<Asked> asked;
    std::vector<std::size_t> begins;
    for (std::size_t i = 0; i < points.size(); ++i) {
        begins.push_back(asked.size());
        for (const State state : points[i].states()) asked.push_back({i, state});
    }
    begins.push_back(asked.size());
    std::vector<PointStanding> each = standings_of(graph, points, asked);
    std::vector<PointStanding> standing;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const std::size_t begin = begins[i];
        const std::size_t count = begins[i + 1] - begin;
        standing.push_back(count == 1 ? std::move(each[begin])
                                      : merged(points[i], std::span(asked).subspan(begin, count),
                                               std::span(each).subspan(begin, count)));
    }
    return standing;
}

void part_motions(const FlowGraph& graph, std::span<PointFigures> points) {
    std::optional<Motions> motions;
    for (PointFigures& point : points) {
        if (!point.goes_both_ways()) continue;
        if (!motions) motions.emplace(graph);
        point.part(*motions);
    }
}

}  // namespace loopwright::hydraulics
