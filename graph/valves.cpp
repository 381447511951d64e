#include <loopwright/graph/valves.h>

#include <algorithm>
#include <array>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/feeds.h>

namespace loopwright {

namespace {

using FewSides = boost::container::small_vector<Index, 4>;
using FewArcs = boost::container::small_vector<FlowArc, 4>;

bool is_piloted(Shift shift) {
    return shift == Shift::pilot_opens || shift == Shift::pilot_shuts ||
           shift == Shift::pilot_unloads || shift == Shift::higher_inlet;
}

/// Finds the main sides whose pressure stands at a node: those that it hangs on by ways open both
/// ways, and back over a shuttle valve from its outlet to its inlets.
class SidesFelt {
  public:
    SidesFelt(const Region& region, const LoopSet& loops, const Standing& standing)
        : region_(region), loops_(loops), standing_(standing) {}

    /// At a flushing valve's port; what meters on the way takes no pressure off a shut port.
    FewSides at_port(Index node) {
        parts_.push_back({node, none, false});
        for (std::size_t i = 0; i < parts_.size(); ++i) {
            if (!spread(Part(parts_[i]))) continue;
            for (const FlowArc& arc : exits_)
                if (meters(arc)) parts_.push_back({arc.to, arc.edge, false});
        }
        return std::move(sides_);
    }

    /// At a pilot. A restriction takes no pressure off oil that stands still: it counts where the
    /// line behind it ends dead. A check beside it (throttle-check) changes nothing.
    FewSides at_pilot(Index node) {
        parts_.push_back({node, none, true});
        for (std::size_t i = 0; i < parts_.size(); ++i) {
            if (!spread(Part(parts_[i])) || !still_ || exits_.empty()) continue;
            const auto let_in = std::find_if(exits_.begin(), exits_.end(), [&](const FlowArc& arc) {
                return meters(arc) && stands_open_back(standing_, arc);
            });
            const Index beyond = exits_.front().to;
            if (let_in != exits_.end() && !at_outlet_ &&
                std::all_of(exits_.begin(), exits_.end(),
                            [&](const FlowArc& arc) { return arc.to == beyond; }))
                parts_.push_back({beyond, let_in->edge, true});
        }
        return std::move(sides_);
    }

  private:
    /// Nodes at one pressure, from the first one, that was come to over a passage.
    struct Part {
        Index node = none;
        Index by = none;
        bool still = false;  ///< no oil flows off where it was come from
    };

    bool meters(const FlowArc& arc) const {
        return region_.edges[arc.edge].passage_class == PassageClass::metering;
    }

    /// False where the part was seen before or is a side. Else `exits_` are the passages that lead
    /// on, the inlets of a shuttle valve excepted: they are parts by themselves.
    bool spread(const Part& part) {
        if (std::find(seen_.begin(), seen_.end(), part.node) != seen_.end()) return false;
        exits_.clear();
        still_ = part.still;
        bool at_side = false;
        FewArcs inlets;
        std::size_t i = seen_.size();
        for (seen_.push_back(part.node); i < seen_.size(); ++i) {
            if (loops_.on_main[seen_[i]] != 0) {
                for (const Index s : loops_.sides_at(seen_[i]))
                    if (loops_.sides[s].role == SideRole::main) sides_.push_back(s);
                at_side = true;
                continue;
            }
            for (const FlowArc& arc : region_.arcs_of(seen_[i])) {
                if (region_.edges[arc.edge].shift == Shift::higher_inlet) {
                    if (arc.backward != 0)
                        inlets.push_back(arc);
                    else if (arc.edge != part.by)
                        still_ = false;
                } else if (arc.to != part.node || arc.edge != part.by) {
                    go(arc);
                }
            }
        }
        if (at_side) return false;
        at_outlet_ = !inlets.empty();
        for (const FlowArc& arc : inlets)
            parts_.push_back({arc.to, arc.edge, still_ && exits_.empty()});
        return true;
    }

    void go(const FlowArc& arc) {
        const Edge& edge = region_.edges[arc.edge];
        if (standing_[arc.edge] == 0 && !is_piloted(edge.shift)) return;  // shut
        if (std::find(seen_.begin(), seen_.end(), arc.to) != seen_.end()) return;
        if (is_piloted(edge.shift) || region_.is_reservoir[arc.to] != 0)
            still_ = false;
        else if (open_way(edge) && standing_[arc.edge] == (open_forward | open_backward) &&
                 edge.shift != Shift::pressure)
            seen_.push_back(arc.to);
        else if (meters(arc) || edge.passage_class == PassageClass::one_way)
            exits_.push_back(arc);
        else
            still_ = false;
    }

    const Region& region_;
    const LoopSet& loops_;
    const Standing& standing_;
    FewSides sides_;
    boost::container::small_vector<Part, 4> parts_;
    boost::container::small_vector<Index, 16> seen_;
    FewArcs exits_;
    bool still_ = false;
    bool at_outlet_ = false;  ///< of a shuttle valve
};

}  // namespace

void ValveBoard::begin(const Region& region) {
    region_ = &region;
    base_.assign(region.edges.size(), 0);
    valves_.clear();
    flushing_.clear();
    for (auto* list : {&piloted_, &shifted_by_pressure_, &towing_ways_, &components_, &undecided_})
        list->clear();
    for (Index i = 0; i < region.components.size(); ++i) {
        const Index c = region.components[i];
        const Component& component = circuit_.components[c];
        const Range edges{region.first_edge[i], region.first_edge[i + 1]};
        bool by_pressure = false;
        for (Index e = edges.begin; e < edges.end; ++e) {
            const Edge& edge = region.edges[e];
            // Without pressure a shuttle valve's ball lies anywhere, and no pilot does a thing.
            if (edge.shift == Shift::never || edge.shift == Shift::pilot_shuts ||
                edge.shift == Shift::higher_inlet ||
                (edge.shift == Shift::hand && circuit_.choice(component, "position") != "closed"))
                base_[e] = ways_of(edge);
            if (is_piloted(edge.shift)) piloted_.push_back(e);
            if (edge.for_towing) towing_ways_.push_back(e);
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
                standing[e] = ways_of(edge);
        }
}

void ValveBoard::open_towing_ways(Standing& standing) const {
    for (const Index e : towing_ways_) standing[e] = ways_of(region_->edges[e]);
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
    if (!undecided_.empty()) return all_states;
    StateSet allowed = all_states;
    for (std::size_t v = 0; v < valves_.size(); ++v) allowed &= allowed_by(v, positions[v]);
    return allowed;
}

StateSet ValveBoard::allowed_by(std::size_t valve, Index position) const {
    const Position& stands = circuit_.positions[position];
    StateSet allowed = all_states;
    if (!stands.rest) {
        allowed = without(allowed, rest_states);
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
    if (!undecided_.empty()) return all_states;
    StateSet allowed = all_states;
    for (std::size_t v = 0; v < valves_.size(); ++v) {
        const std::vector<Index>& loops = valves_[v].loops;
        const bool others_only =
            !loops.empty() && std::find(loops.begin(), loops.end(), loop) == loops.end();
        if (others_only && !circuit_.positions[positions[v]].rest) return 0;
        if (!others_only) allowed &= allowed_by(v, positions[v]);
    }
    return allowed;
}

void ValveBoard::shift_flushing(const LoopSet& loops, std::span<const High> highs,
                                Standing& standing) const {
    const auto set_centre = [&](const Valve& valve, std::uint8_t open) {
        for (Index e = valve.edges.begin; e < valve.edges.end; ++e)
            if (region_->edges[e].shift == Shift::pressure_centred) standing[e] = open;
    };
    // All stand centred before any is shifted: an open centre hands on what their ends feel.
    for (const Valve& valve : flushing_) set_centre(valve, open_forward | open_backward);
    std::vector<std::pair<const Valve*, Index>> shifted;
    for (const Valve& valve : flushing_)
        if (const Index end = end_on_low_side(valve, loops, highs, standing); end != none)
            shifted.emplace_back(&valve, end);
    for (const auto& [valve, end] : shifted) {
        set_centre(*valve, 0);
        standing[end] = open_forward | open_backward;
    }
}

void ValveBoard::set_by_pressure(const LoopSet& loops, std::span<const High> highs,
                                 Standing& standing) const {
    shift_flushing(loops, highs, standing);
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
        standing[e] = edge.shift == Shift::pilot_shuts ? std::uint8_t{0} : ways_of(edge);
    }
}

Index ValveBoard::first_edge_of(const Edge& edge) const {
    const auto at =
        std::lower_bound(region_->components.begin(), region_->components.end(), edge.component);
    return region_->first_edge[static_cast<std::size_t>(at - region_->components.begin())];
}

bool ValveBoard::is_high(Index node, const LoopSet& loops, std::span<const High> highs,
                         const Standing& standing) const {
    const auto sides = SidesFelt(*region_, loops, standing).at_pilot(node);
    return std::any_of(sides.begin(), sides.end(), [&](Index s) {
        const LoopSide& side = loops.sides[s];
        return highs[side.loop] != High::neither && side.letter == highs[side.loop];
    });
}

void ValveBoard::set_all_shifted(Standing& standing, bool open) const {
    const auto set = [&](Index e) {
        const Edge& edge = region_->edges[e];
        if (edge.shift == Shift::never) return;
        standing[e] = open ? ways_of(edge) : std::uint8_t{0};
    };
    for (const Index e : shifted_by_pressure_) set(e);
}

Index ValveBoard::end_on_low_side(const Valve& valve, const LoopSet& loops,
                                  std::span<const High> highs, const Standing& standing) const {
    std::array<Index, 2> ends = {none, none};  // the passages from A and from B
    std::size_t found = 0;
    for (Index e = valve.edges.begin; e < valve.edges.end && found < 2; ++e)
        if (region_->edges[e].shift == Shift::pressure) ends[found++] = e;
    if (found != 2) return none;
    const auto at_a = SidesFelt(*region_, loops, standing).at_port(region_->edges[ends[0]].from);
    const auto at_b = SidesFelt(*region_, loops, standing).at_port(region_->edges[ends[1]].from);
    for (const Index sa : at_a)
        for (const Index sb : at_b) {
            const LoopSide& a = loops.sides[sa];
            const LoopSide& b = loops.sides[sb];
            if (a.loop != b.loop || a.letter == b.letter || highs[a.loop] == High::neither)
                continue;
            return a.letter != highs[a.loop] ? ends[0] : ends[1];
        }
    return none;
}

}  // namespace loopwright
