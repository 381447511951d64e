#include <loopwright/graph/valves.h>

#include <algorithm>
#include <array>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/feeds.h>

namespace loopwright {

namespace {

using FewSides = boost::container::small_vector<Index, 4>;

bool is_piloted(Shift shift) {
    return shift == Shift::pilot_opens || shift == Shift::pilot_shuts ||
           shift == Shift::pilot_unloads || shift == Shift::higher_inlet;
}

/// The main sides that a node hangs on by ways open both ways.
FewSides main_sides_from(const Region& region, Index node, const LoopSet& loops,
                         const Standing& standing) {
    FewSides sides;
    boost::container::small_vector<Index, 16> seen{node};
    for (std::size_t i = 0; i < seen.size(); ++i) {
        if (loops.on_main[seen[i]] != 0) {
            for (const Index s : loops.sides_at(seen[i]))
                if (loops.sides[s].role == SideRole::main) sides.push_back(s);
            continue;
        }
        for (const FlowArc& arc : region.arcs_of(seen[i])) {
            const Edge& edge = region.edges[arc.edge];
            if (open_way(edge) && standing[arc.edge] == (open_forward | open_backward) &&
                edge.shift != Shift::pressure && region.is_reservoir[arc.to] == 0 &&
                std::find(seen.begin(), seen.end(), arc.to) == seen.end())
                seen.push_back(arc.to);
        }
    }
    return sides;
}

}  // namespace

void ValveBoard::begin(const Region& region) {
    region_ = &region;
    base_.assign(region.edges.size(), 0);
    valves_.clear();
    flushing_.clear();
    for (auto* list : {&piloted_, &shifted_by_pressure_, &components_, &undecided_}) list->clear();
    for (Index i = 0; i < region.components.size(); ++i) {
        const Index c = region.components[i];
        const Component& component = circuit_.components[c];
        const Range edges{region.first_edge[i], region.first_edge[i + 1]};
        bool by_pressure = false;
        for (Index e = edges.begin; e < edges.end; ++e) {
            const Edge& edge = region.edges[e];
            const std::uint8_t ways = edge.both_ways ? open_forward | open_backward : open_forward;
            // Without pressure a shuttle valve's ball lies anywhere, and no pilot does a thing.
            if (edge.shift == Shift::never || edge.shift == Shift::pilot_shuts ||
                edge.shift == Shift::higher_inlet ||
                (edge.shift == Shift::hand && circuit_.choice(component, "position") != "closed"))
                base_[e] = ways;
            if (is_piloted(edge.shift)) piloted_.push_back(e);
            by_pressure = by_pressure || edge.shift == Shift::pressure;
        }
        if (component.positions.size() > 0) {
            valves_.push_back({.component = c, .edges = edges});
            components_.push_back(c);
        }
        if (by_pressure) flushing_.push_back({.component = c, .edges = edges});
        for (Index e = edges.begin; e < edges.end; ++e)
            if (by_pressure || is_piloted(region.edges[e].shift)) shifted_by_pressure_.push_back(e);
    }
    std::uint64_t count = 1;
    for (const Index valve : components_) {
        count *= circuit_.components[valve].positions.size();
        if (count <= most_combinations) continue;
        undecided_ = components_;
        count = 1;
        break;
    }
    combinations_ = static_cast<std::uint32_t>(count);
}

Index ValveBoard::rest_position(Index component) const {
    const Range range = circuit_.components[component].positions;
    for (Index p = range.begin; p < range.end; ++p)
        if (circuit_.positions[p].rest) return p;
    return range.begin;
}

void ValveBoard::find_positions(std::uint32_t combination, std::vector<Index>& positions) const {
    positions.clear();
    for (const Index valve : components_) {
        const Range range = circuit_.components[valve].positions;
        if (!undecided_.empty()) {
            positions.push_back(rest_position(valve));
            continue;
        }
        positions.push_back(range.begin + combination % range.size());
        combination /= range.size();
    }
}

void ValveBoard::find_standing(std::span<const Index> positions, Standing& standing) const {
    standing = base_;
    for (std::size_t v = 0; v < valves_.size(); ++v)
        for (Index e = valves_[v].edges.begin; e < valves_[v].edges.end; ++e) {
            const Edge& edge = region_->edges[e];
            if (edge.shift == Shift::position &&
                circuit_.passages[edge.passage].position == positions[v])
                standing[e] = edge.both_ways ? open_forward | open_backward : open_forward;
        }
}

void ValveBoard::note_command(Index component, Index loop) {
    // Both are in file order.
    const auto at = std::lower_bound(components_.begin(), components_.end(), component);
    if (at == components_.end() || *at != component) return;
    std::vector<Index>& loops = valves_[static_cast<std::size_t>(at - components_.begin())].loops;
    if (std::find(loops.begin(), loops.end(), loop) == loops.end()) loops.push_back(loop);
}

bool ValveBoard::any_commands() const {
    return std::any_of(valves_.begin(), valves_.end(),
                       [](const Valve& valve) { return !valve.loops.empty(); });
}

StateSet ValveBoard::allowed_states(std::span<const Index> positions) const {
    if (!undecided_.empty()) return running_states;
    StateSet allowed = running_states;
    for (std::size_t v = 0; v < valves_.size(); ++v) allowed &= allowed_by(v, positions[v]);
    return allowed;
}

StateSet ValveBoard::allowed_by(std::size_t valve, Index position) const {
    const Position& stands = circuit_.positions[position];
    StateSet allowed = running_states;
    if (!stands.rest) {
        allowed = without(allowed, bit(State::lost_signal));
        if (!valves_[valve].loops.empty()) allowed = without(allowed, bit(State::neutral));
    }
    // Where some position names a state, only such positions stand in it.
    StateSet named = 0;
    for (const Position& other :
         circuit_.positions_of(circuit_.components[valves_[valve].component]))
        named |= other.in;
    return without(allowed, named & without(moving_states, stands.in));
}

StateSet ValveBoard::allowed_states_apart(std::span<const Index> positions, Index loop) const {
    if (!undecided_.empty()) return running_states;
    StateSet allowed = running_states;
    for (std::size_t v = 0; v < valves_.size(); ++v) {
        const std::vector<Index>& loops = valves_[v].loops;
        const bool others_only =
            !loops.empty() && std::find(loops.begin(), loops.end(), loop) == loops.end();
        if (others_only && !circuit_.positions[positions[v]].rest) return 0;
        if (!others_only) allowed &= allowed_by(v, positions[v]);
    }
    return allowed;
}

void ValveBoard::set_by_pressure(const LoopSet& loops, std::span<const High> highs,
                                 Standing& standing) const {
    for (const Valve& valve : flushing_) shift(valve, loops, highs, standing);
    for (const Index e : piloted_) {
        const Edge& edge = region_->edges[e];
        if (edge.shift == Shift::higher_inlet) {
            // Shut where another inlet is higher and this one is not.
            for (Index other = first_edge_of(edge);
                 other < region_->edges.size() && region_->edges[other].component == edge.component;
                 ++other)
                if (other != e && is_high(region_->edges[other].from, loops, highs, standing) &&
                    !is_high(edge.from, loops, highs, standing))
                    standing[e] = 0;
            continue;
        }
        const Index pilot = circuit_.passages[edge.passage].pilot;
        if (pilot == none || !is_high(graph_.node_of(pilot), loops, highs, standing)) continue;
        standing[e] = edge.shift == Shift::pilot_shuts ? 0
                      : edge.both_ways                 ? open_forward | open_backward
                                                       : open_forward;
    }
}

Index ValveBoard::first_edge_of(const Edge& edge) const {
    const auto at =
        std::lower_bound(region_->components.begin(), region_->components.end(), edge.component);
    return region_->first_edge[static_cast<std::size_t>(at - region_->components.begin())];
}

bool ValveBoard::is_high(Index node, const LoopSet& loops, std::span<const High> highs,
                         const Standing& standing) const {
    const auto sides = main_sides_from(*region_, node, loops, standing);
    return std::any_of(sides.begin(), sides.end(), [&](Index s) {
        const LoopSide& side = loops.sides[s];
        return highs[side.loop] != High::neither && side.letter == highs[side.loop];
    });
}

void ValveBoard::set_all_shifted(Standing& standing, bool open) const {
    const auto set = [&](Index e) {
        const Edge& edge = region_->edges[e];
        if (edge.shift == Shift::never) return;
        standing[e] = !open ? 0 : edge.both_ways ? open_forward | open_backward : open_forward;
    };
    for (const Index e : shifted_by_pressure_) set(e);
}

void ValveBoard::shift(const Valve& valve, const LoopSet& loops, std::span<const High> highs,
                       Standing& standing) const {
    std::array<Index, 2> ends = {none, none};  // the passages from A and from B
    std::size_t found = 0;
    for (Index e = valve.edges.begin; e < valve.edges.end && found < 2; ++e)
        if (region_->edges[e].shift == Shift::pressure) ends[found++] = e;
    if (found == 2) {
        const auto at_a = main_sides_from(*region_, region_->edges[ends[0]].from, loops, standing);
        const auto at_b = main_sides_from(*region_, region_->edges[ends[1]].from, loops, standing);
        for (const Index sa : at_a)
            for (const Index sb : at_b) {
                const LoopSide& a = loops.sides[sa];
                const LoopSide& b = loops.sides[sb];
                if (a.loop != b.loop || a.letter == b.letter || highs[a.loop] == High::neither)
                    continue;
                standing[a.letter != highs[a.loop] ? ends[0] : ends[1]] =
                    open_forward | open_backward;
                return;
            }
    }
    for (Index e = valve.edges.begin; e < valve.edges.end; ++e)
        if (region_->edges[e].shift == Shift::pressure_centred)
            standing[e] = open_forward | open_backward;
}

}  // namespace loopwright
