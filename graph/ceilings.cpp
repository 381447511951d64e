#include <loopwright/graph/ceilings.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/pump_flow.h>
#include <loopwright/graph/spread.h>

namespace loopwright {

namespace {

constexpr double unlimited = std::numeric_limits<double>::infinity();

using Lowest = Spread<std::less<>>;
using Highest = Spread<std::greater<>>;

class Finder {
  public:
    Finder(const Situation& s, const CeilingCase& one) : s_(s), case_(one) {
        for (const Index node : s_.region.reservoirs)
            pressures_.push_back(s_.graph.gas_pressure(s_.region.joints[node]));
    }

    Ceilings find() {
        find_pieces();
        find_limits_outside();
        find_charge();
        find_limits();
        if (case_.highs.empty() && found_.charge < unlimited) keep_charged();
        find_ceilings();
        return std::move(found_);
    }

    std::vector<double> full_pressures(std::span<const Index> reliefs) {
        find_pieces();
        find_limits_outside();
        find_charge();
        // Sides stand at the charge line's pressure, and reservoirs at their own.
        const bool all_known = std::all_of(reliefs.begin(), reliefs.end(), [&](Index relief) {
            const Index outlet = s_.region.edges[relief].to;
            return piece_[outlet] != none || s_.region.is_reservoir[outlet] != 0;
        });
        if (!all_known) find_limits();
        std::vector<double> pressures;
        for (const Index relief : reliefs) {
            const FlowArc flow = arc_over(s_.region, relief);
            pressures.push_back(
                to_get_away(flow, piece_[flow.to] != none ? found_.charge : found_.limit[flow.to]));
        }
        return pressures;
    }

  private:
    const Edge& edge(const FlowArc& arc) const { return s_.region.edges[arc.edge]; }

    /// Calls `take(node, pressure)` for each.
    template <typename Take>
    void for_each_reservoir(Take take) const {
        for (std::size_t i = 0; i < pressures_.size(); ++i)
            take(s_.region.reservoirs[i], pressures_[i]);
    }

    /// What a pressure-opened passage holds at its full flow.
    double opening(const Edge& way) const {
        if (!way.bypass) {
            const Component& valve = s_.circuit().components[way.component];
            if (const auto full = s_.circuit().figure(valve, "full-flow-pressure")) return *full;
        }
        if (!std::isnan(way.opening)) return way.opening;
        return case_.for_missing(way.component);
    }

    bool drained_apart(const Edge& way) const {
        const Index chamber = s_.circuit().passages[way.passage].spring_chamber;
        return chamber != none && !s_.graph.lines_of(chamber).empty();
    }

    /// The pressure at the way's beginning at which its oil gets away, `behind` being that at its
    /// end.
    double to_get_away(const FlowArc& flow, double behind) const {
        const Edge& way = edge(flow);
        if (!stands_open(case_.ways_out, flow)) return unlimited;
        switch (way.passage_class) {
            case PassageClass::element:
            case PassageClass::switched:
            case PassageClass::metering:
            case PassageClass::divider:
                return carries_flow(way) ? behind : unlimited;
            case PassageClass::one_way:
                return way.opening + behind;
            case PassageClass::pressure_opened:
                return drained_apart(way) ? std::max(opening(way), behind) : opening(way) + behind;
            case PassageClass::joined:
            case PassageClass::reduced:
            case PassageClass::displacement:
            case PassageClass::leakage:
                break;
        }
        return unlimited;
    }

    /// Which side, or section, or machine of a loop each node belongs to, and whether it is low.
    void find_pieces() {
        piece_.assign(s_.region.node_count, none);
        low_.assign(s_.region.node_count, 0);
        Index piece = 0;
        const auto put = [&](Index node) {
            if (piece_[node] == none) piece_[node] = piece;
        };
        for (Index l = 0; l < s_.loops.loops.size(); ++l) {
            const Loop& loop = s_.loops.loops[l];
            if (loop.shorted) continue;
            for (const LoopSide& side : s_.loops.sides_of(loop)) {
                if (side.role != SideRole::main) continue;
                const bool high = case_.highs.empty() || (case_.highs[l] != High::neither &&
                                                          side.letter == case_.highs[l]);
                for (const Index node : s_.loops.nodes_of(side)) {
                    put(node);
                    low_[node] = high ? 0 : 1;
                }
                ++piece;
            }
        }
        for (const JudgedSide& side : s_.sides) {
            if (side.role != SideRole::section) continue;
            for (const Index node : side.nodes) put(node);
            ++piece;
        }
        for (const Index e : s_.region.machines) {
            if (s_.looped[e] == 0) continue;
            for (const Index node : {s_.region.edges[e].from, s_.region.edges[e].to}) {
                put(node);
                ++piece;
            }
        }
    }

    bool other_piece(const FlowArc& relief) const {
        return piece_[relief.to] != none && piece_[relief.to] != piece_[tail(s_.region, relief)];
    }

    /// Of what is no part of a loop, over what is none: those of the charge line.
    void find_limits_outside() {
        found_.limit.assign(s_.region.node_count, unlimited);
        Lowest limits(s_.graph, s_.region, found_.limit);
        for_each_reservoir([&](Index node, double pressure) { limits.seed(node, pressure); });
        limits.run(
            [&](const FlowArc& arc, double behind) {
                return piece_[arc.to] != none || s_.region.is_reservoir[arc.to] != 0
                           ? unlimited
                           : to_get_away(turned_round(s_.region, arc), behind);
            },
            [](Index, Index) {});
    }

    void find_limits() {
        found_.limit.assign(s_.region.node_count, unlimited);
        Lowest limits(s_.graph, s_.region, found_.limit);
        for_each_reservoir([&](Index node, double pressure) { limits.seed(node, pressure); });
        const bool charged = found_.charge < unlimited;
        if (charged)
            for (Index node = 0; node < s_.region.node_count; ++node) {
                if (low_[node] != 0) limits.seed(node, found_.charge);
            }
        found_.limited_by.assign(s_.region.node_count, none);
        spread_limits(limits, charged);
        if (charged) limit_over_reliefs(limits);
    }

    void spread_limits(Lowest& limits, bool charged) {
        limits.run(
            [&](const FlowArc& arc, double behind) {
                // Nothing but the charge line makes the pressure of a low side, and a reservoir has
                // its own.
                return (charged && low_[arc.to] != 0) || s_.region.is_reservoir[arc.to] != 0
                           ? unlimited
                           : to_get_away(turned_round(s_.region, arc), behind);
            },
            [&](Index node, Index slot) {
                const FlowArc& arc = s_.region.arcs[slot];
                const bool opened = edge(arc).passage_class == PassageClass::pressure_opened;
                found_.limited_by[arc.to] = opened ? Index{arc.edge} : found_.limited_by[node];
            });
    }

    /// Every side may be the low one as well, and stands at the pressure of the charge line then.
    void keep_charged() {
        for (Index node = 0; node < s_.region.node_count; ++node)
            if (s_.loops.on_main[node] != 0)
                found_.limit[node] = std::max(found_.limit[node], found_.charge);
    }

    /// What a relief discharges into is not high while the side before it is.
    void limit_over_reliefs(Lowest& limits) {
        for (const Edge& relief : s_.region.edges) {
            const auto e = static_cast<Index>(&relief - s_.region.edges.data());
            if (relief.passage_class != PassageClass::pressure_opened || relief.bypass ||
                (case_.ways_out[e] & open_forward) == 0)
                continue;
            const FlowArc flow = arc_over(s_.region, e);
            if (!other_piece(flow) || low_[relief.from] != 0) continue;
            if (limits.seed(relief.from, to_get_away(flow, found_.charge)))
                found_.limited_by[relief.from] = e;
        }
        spread_limits(limits, true);
    }

    /// What the charge sources give where their oil enters a side.
    void find_charge() {
        std::vector<double> given(s_.region.node_count, 0.0);
        Highest spread(s_.graph, s_.region, given);
        for (const ChargeSource& source : s_.feeds.sources)
            if (piece_[source.outlet] == none && (source.is_pump() || source.has_line))
                spread.seed(source.outlet, found_.limit[source.outlet]);
        spread.run(
            [&](const FlowArc& arc, double before) {
                return piece_[arc.to] != none
                           ? 0.0
                           : std::min(found_.limit[arc.to], handed_on(arc, before));
            },
            [](Index, Index) {});
        found_.charge = 0.0;
        for (const Index node : s_.feeds.fed.order) {
            if (piece_[node] != none) continue;
            for (const FlowArc& arc : s_.region.arcs_of(node))
                if (piece_[arc.to] != none && hands_charge_on(arc))
                    found_.charge = std::max(found_.charge, given[node]);
        }
    }

    bool hands_charge_on(const FlowArc& arc) const {
        const PassageClass passage = edge(arc).passage_class;
        return stands_open(s_.standing, arc) && passage != PassageClass::displacement &&
               passage != PassageClass::leakage && passage != PassageClass::pressure_opened;
    }

    void find_ceilings() {
        found_.ceiling.assign(s_.region.node_count, 0.0);
        Highest ceilings(s_.graph, s_.region, found_.ceiling);
        const auto drive = [&](Index node, double pressure) {
            if (ceilings.seed(node, std::min(pressure, found_.limit[node])))
                found_.drive.way[node] = Search::start;
        };
        found_.drive.clear(s_.region.node_count);
        for (const Index e : s_.region.machines) {
            if (case_.highs.empty() && s_.loops.loop_of[e] != none) {
                drive(s_.region.edges[e].from, unlimited);
                drive(s_.region.edges[e].to, unlimited);
                continue;
            }
            const PumpFlow flow = flow_of(s_, e, case_.direction);
            if (flow.outlet != none && !circulates(flow)) drive(flow.outlet, unlimited);
        }
        for (Index node = 0; node < s_.region.node_count; ++node) {
            if (piece_[node] == none || s_.loops.on_main[node] == 0) continue;
            if (low_[node] == 0)
                drive(node, unlimited);
            else
                drive(node, found_.charge);
        }
        for (const JudgedSide& side : s_.sides)
            if (side.role == SideRole::section)
                for (const Index node : side.nodes) drive(node, unlimited);
        if (s_.graph.has_accumulators())
            for (Index node = 0; node < s_.region.node_count; ++node)
                if (s_.graph.has_accumulator(s_.region.joints[node])) drive(node, unlimited);
        for_each_reservoir(drive);
        ceilings.run(
            [&](const FlowArc& arc, double before) {
                return std::min(found_.limit[arc.to], handed_on(arc, before));
            },
            [&](Index, Index slot) { found_.drive.way[s_.region.arcs[slot].to] = slot; });
    }

    /// Whether a pump's oil gets back to its inlet by what is open both ways.
    bool circulates(const PumpFlow& flow) {
        if (!joined_) {
            joined_.emplace(s_.region.node_count);
            for (Index e = 0; e < s_.region.edges.size(); ++e) {
                const Edge& way = s_.region.edges[e];
                if (case_.ways_out[e] == (open_forward | open_backward) && carries_flow(way))
                    joined_->join(way.from, way.to);
            }
        }
        return joined_->find(flow.inlet) == joined_->find(flow.outlet);
    }

    static bool carries_flow(const Edge& way) {
        switch (way.passage_class) {
            case PassageClass::element:
            case PassageClass::metering:
            case PassageClass::divider:
                return true;
            case PassageClass::switched:
                return way.shift != Shift::hand || way.locked;
            default:
                return false;
        }
    }

    /// Whether a pump draws in itself what leaks over this way. What is to bound all situations
    /// alike counts on no pump.
    bool drawn_in(const FlowArc& leakage) const {
        if (case_.bounds_all) return false;
        const Index pump = edge(leakage).component;
        return std::any_of(s_.region.machines.begin(), s_.region.machines.end(), [&](Index e) {
            return s_.region.edges[e].component == pump &&
                   flow_of(s_, e, case_.direction).inlet == leakage.to;
        });
    }

    /// What a way hands on of the pressure at its beginning.
    double handed_on(const FlowArc& flow, double before) const {
        const Edge& way = edge(flow);
        if (way.passage_class == PassageClass::displacement)
            return way.part == Part::actuator && s_.loops.on_main[flow.to] == 0 &&
                           (way.both_ways || flow.backward == 0)
                       ? before
                       : 0.0;
        if (!stands_open(case_.ways_in, flow)) return 0.0;
        if (way.passage_class == PassageClass::leakage && way.part == Part::pump && drawn_in(flow))
            return 0.0;
        if (way.passage_class != PassageClass::reduced) return before;
        const double most = reduced_to(s_.circuit(), way);
        return std::min(before, std::isnan(most) ? case_.for_missing(way.component) : most);
    }

    const Situation& s_;
    const CeilingCase& case_;
    Ceilings found_;
    std::vector<double> pressures_;  // in the region's reservoirs
    std::vector<Index> piece_;       // for each node; none: no part of a loop
    std::vector<std::uint8_t> low_;  // for each node
    std::optional<DisjointSets> joined_;
};

}  // namespace

double reduced_to(const Circuit& circuit, const Edge& way) {
    const Component& valve = circuit.components[way.component];
    // Of a priority valve the setting is what it keeps for that outlet at the least.
    if (std::isnan(way.opening) || way.opening > 0.0) return way.opening;
    const auto& attributes = valve.kind->attributes;
    const bool has_most = std::any_of(attributes.begin(), attributes.end(),
                                      [](const auto& spec) { return spec.name == "max-pressure"; });
    if (!has_most) return unlimited;
    return circuit.figure(valve, "max-pressure").value_or(std::nan(""));
}

bool has_unknown_setting(const Circuit& circuit, const Edge& edge) {
    return std::isnan(edge.opening) ||
           (edge.passage_class == PassageClass::reduced && std::isnan(reduced_to(circuit, edge)));
}

Ceilings find_ceilings(const Situation& situation, const CeilingCase& one) {
    return Finder(situation, one).find();
}

std::vector<double> find_full_pressures(const Situation& situation, const CeilingCase& one,
                                        std::span<const Index> reliefs) {
    const std::vector<High> no_side(situation.loops.loops.size(), High::neither);
    CeilingCase at_charge_pressure = one;
    at_charge_pressure.highs = no_side;
    return Finder(situation, at_charge_pressure).full_pressures(reliefs);
}

}  // namespace loopwright
