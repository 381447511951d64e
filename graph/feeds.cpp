// All searches are breadth first over one standing. `checked` is the second layer of the feed: a
// node enters it by a check out of any fed node and hands it on over open ways; a metering passage
// falls back to the first layer. So the last check of a make-up path is followed by open ways only.
#include <loopwright/graph/feeds.h>

#include <algorithm>

#include <loopwright/graph/charge_stores.h>

namespace loopwright {

namespace {

bool holds_no_pressure(const Edge& edge) {
    switch (edge.passage_class) {
        case PassageClass::switched:
        case PassageClass::element:
            return true;
        case PassageClass::one_way:
            return edge.opening == 0.0;
        default:
            return false;
    }
}

bool feeds_on(PassageClass passage) {
    switch (passage) {
        case PassageClass::one_way:
        case PassageClass::switched:
        case PassageClass::reduced:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::element:
            return true;
        default:
            return false;
    }
}

/// Against the oil by ways that hold no pressure.
bool vents(const Region& region, const Standing& standing, const FlowArc& arc) {
    return holds_no_pressure(region.edges[arc.edge]) && stands_open_back(standing, arc);
}

/// With the oil from the reservoirs, without a pump.
bool flows_on(const Region& region, const Standing& standing, const FlowArc& arc) {
    return feeds_on(region.edges[arc.edge].passage_class) && stands_open(standing, arc);
}

void begin_at_reservoirs(const Region& region, Search& search) {
    search.clear(region.node_count);
    for (const Index node : region.reservoirs) search.begin_at(node);
}

}  // namespace

bool open_way(const Edge& edge) {
    return edge.passage_class == PassageClass::switched ||
           edge.passage_class == PassageClass::element;
}

bool FeedRule::operator()(Index node, const FlowArc& arc) const {
    // Oil starts or ends at a reservoir.
    if (pressureless_[arc.to] != 0 || region_.is_reservoir[arc.to] != 0) return false;
    if (up_to_sides_ && loops_.on_main[node] != 0) return false;
    const Edge& edge = region_.edges[arc.edge];
    if (edge.passage_class == PassageClass::displacement)
        return (open_part_ways_[arc.edge] & (arc.backward != 0 ? open_backward : open_forward)) !=
                   0 &&
               loops_.on_main[node] == 0;
    if (!feeds_on(edge.passage_class) || !stands_open(standing_, arc)) return false;
    return loops_.on_main[node] == 0 || loops_.loop_of[arc.edge] != none;
}

void find_open_part_ways(const Region& region, std::span<const std::uint8_t> looped,
                         std::vector<std::uint8_t>& ways) {
    ways.assign(region.edges.size(), 0);
    for (const Index e : region.machines) {
        const Edge& edge = region.edges[e];
        if (edge.part != Part::actuator || looped[e] != 0) continue;
        for (const FlowArc& arc : region.arcs_of(edge.from)) {
            const Edge& beside = region.edges[arc.edge];
            if (beside.passage_class != PassageClass::pressure_opened || beside.bypass ||
                arc.to != edge.to)
                continue;
            if (arc.backward == 0)
                ways[e] |= open_forward;
            else if (edge.both_ways)
                ways[e] |= open_backward;
        }
    }
}

void find_at_tank(const FlowGraph& graph, const Region& region, const Standing& standing,
                  SearchPool& searches, std::vector<std::uint8_t>& at_tank) {
    const auto out = searches.take(region.node_count);
    begin_at_reservoirs(region, *out);
    graph.work += out->run(
        region, [&](Index /*node*/, const FlowArc& arc) { return vents(region, standing, arc); });
    const auto in = searches.take(region.node_count);
    begin_at_reservoirs(region, *in);
    graph.work += in->run(region, [&](Index /*node*/, const FlowArc& arc) {
        return holds_no_pressure(region.edges[arc.edge]) && stands_open(standing, arc);
    });
    at_tank.assign(region.node_count, 0);
    for (const Index node : in->order) at_tank[node] = out->reached(node) ? 1 : 0;
}

void find_checked(const FlowGraph& graph, const Region& region, const Search& fed,
                  const FeedRule& feeds, Search& checked) {
    checked.clear(region.node_count);
    for (const Index node : fed.order) {
        for (Index slot = region.arc_offsets[node]; slot < region.arc_offsets[node + 1]; ++slot) {
            const FlowArc& arc = region.arcs[slot];
            if (region.edges[arc.edge].passage_class != PassageClass::one_way ||
                checked.reached(arc.to) || !feeds(node, arc))
                continue;
            checked.way[arc.to] = slot;
            checked.order.push_back(arc.to);
        }
    }
    graph.work += fed.order.size();
    graph.work += checked.run(region, [&](Index node, const FlowArc& arc) {
        const Edge& edge = region.edges[arc.edge];
        return open_way(edge) && edge.both_ways && feeds(node, arc);
    });
}

void Feeds::add_make_up_path(const Region& region, Index node, std::vector<FlowArc>& path) const {
    // Back over open ways to the check; then how the check is fed goes before.
    Index at_check = node;
    std::size_t behind = 0;
    const auto back = [&](Index from) -> const FlowArc& { return region.arcs[checked.way[from]]; };
    for (bool check = false; !check; ++behind) {
        const FlowArc& arc = back(at_check);
        at_check = tail(region, arc);
        check = region.edges[arc.edge].passage_class == PassageClass::one_way;
    }
    line_fed.add_path_to(region, at_check, path);
    path.resize(path.size() + behind);
    for (auto slot = path.rbegin(); behind > 0; --behind, ++slot) {
        *slot = back(node);
        node = tail(region, *slot);
    }
}

Range add_loops(const LoopSet& loops, const Search& search, std::vector<Index>& found) {
    const auto begin = static_cast<Index>(found.size());
    for (const Index node : search.order)
        for (const Index at : loops.sides_at(node)) {
            const LoopSide& side = loops.sides[at];
            if (side.role == SideRole::main &&
                std::find(found.begin() + begin, found.end(), side.loop) == found.end())
                found.push_back(side.loop);
        }
    return {begin, static_cast<Index>(found.size())};
}

namespace {

/// A two-way pump without a flow direction stands at no stroke.
bool may_charge(const Edge& edge, const Turning& turning) {
    return edge.part == Part::pump && edge.from != edge.to &&
           (!edge.both_ways || (turning.signal && turning.direction != Direction::none));
}

/// A two-way pump delivers as the flow says, whichever way its shaft turns.
bool delivers(const FlowGraph& graph, const Edge& edge, const Turning& turning) {
    return edge.both_ways ? turning.turns(graph.drives(), edge.component)
                          : turning.turns_ahead(graph.drives(), edge.component);
}

/// Nodes of inlet and outlet.
std::pair<Index, Index> ends_of(const Edge& edge, const Turning& turning) {
    const bool out_at_to = (displacement_ways(edge, turning.direction) & open_forward) != 0;
    return out_at_to ? std::pair{edge.from, edge.to} : std::pair{edge.to, edge.from};
}

void find_charge_pumps(const FlowGraph& graph, const Region& region, const Standing& standing,
                       const LoopSet& loops, std::span<const std::uint8_t> looped,
                       std::span<const std::uint8_t> open_part_ways, const Turning& turning,
                       SearchPool& searches, Feeds& feeds) {
    feeds.pumps.clear();
    feeds.loops_would_feed.clear();
    feeds.loops_fed.clear();
    const FeedRule would_feed(region, standing, loops, region.is_reservoir, open_part_ways);
    const FeedRule feed(region, standing, loops, feeds.pressureless(), open_part_ways);
    for (const Index e : region.machines) {
        const Edge& edge = region.edges[e];
        if (!may_charge(edge, turning) || looped[e] != 0) continue;
        const auto [inlet, outlet] = ends_of(edge, turning);
        if (region.is_reservoir[outlet] != 0) continue;
        ChargePump pump{.edge = e,
                        .inlet = inlet,
                        .outlet = outlet,
                        .delivers = delivers(graph, edge, turning)};
        const auto search = searches.take(region.node_count);
        search->begin_at(outlet);
        graph.work += search->run(region, would_feed);
        pump.loops = add_loops(loops, *search, feeds.loops_would_feed);
        if (pump.loops.size() == 0) continue;
        const auto lost = [&](Index node) { return feeds.pressureless()[node] != 0; };
        if (!pump.delivers || !feeds.from_tank.reached(inlet) || lost(outlet)) {
            // It feeds nothing.
        } else if (std::none_of(search->order.begin(), search->order.end(), lost)) {
            pump.fed.begin = static_cast<Index>(feeds.loops_fed.size());
            feeds.loops_fed.insert(feeds.loops_fed.end(),
                                   feeds.loops_would_feed.begin() + pump.loops.begin,
                                   feeds.loops_would_feed.end());
            pump.fed.end = static_cast<Index>(feeds.loops_fed.size());
        } else {
            search->clear(region.node_count);
            search->begin_at(outlet);
            graph.work += search->run(region, feed);
            pump.fed = add_loops(loops, *search, feeds.loops_fed);
        }
        feeds.pumps.push_back(pump);
    }
}

/// What is open to reservoirs: first to those that are vented, then to those under pressure.
void find_vented(const FlowGraph& graph, const Region& region, const Standing& standing,
                 Feeds& feeds) {
    const auto against = [&](Index /*node*/, const FlowArc& arc) {
        return vents(region, standing, arc);
    };
    feeds.vented.assign(region.node_count, 0);
    feeds.told_apart.clear();
    if (!graph.has_pressurised()) {
        begin_at_reservoirs(region, feeds.to_tank);
        graph.work += feeds.to_tank.run(region, against);
        for (const Index node : feeds.to_tank.order) feeds.vented[node] = 1;
        return;
    }
    feeds.to_tank.clear(region.node_count);
    for (const Index node : region.reservoirs)
        if (graph.gas_pressure(region.joints[node]) == 0.0) feeds.to_tank.begin_at(node);
    graph.work += feeds.to_tank.run(region, against);
    for (const Index node : feeds.to_tank.order) feeds.vented[node] = 1;
    feeds.told_apart = feeds.vented;
    for (const Index node : region.reservoirs) feeds.to_tank.begin_at(node);
    graph.work += feeds.to_tank.run(region, against);
    for (const Index node : feeds.to_tank.order) feeds.vented[node] = 1;
}

/// The pumps among the sources.
void find_pumping(const FlowGraph& graph, const Region& region, const LoopSet& loops,
                  std::span<const std::uint8_t> looped, const Turning& turning, Feeds& feeds) {
    for (const Index e : region.machines) {
        const Edge& edge = region.edges[e];
        if (!may_charge(edge, turning) || looped[e] != 0 || !delivers(graph, edge, turning))
            continue;
        const auto [inlet, outlet] = ends_of(edge, turning);
        if (!feeds.from_tank.reached(inlet) || region.is_reservoir[outlet] != 0 ||
            feeds.pressureless()[outlet] != 0)
            continue;
        const bool has_line = loops.sides_at(outlet).empty();
        feeds.sources.push_back({.edge = e, .outlet = outlet, .has_line = has_line});
    }
    graph.work += region.machines.size();
}

}  // namespace

void find_feeds(const FlowGraph& graph, const Region& region, const Standing& standing,
                const LoopSet& loops, std::span<const std::uint8_t> looped,
                std::span<const std::uint8_t> open_part_ways, const Turning& turning,
                SearchPool& searches, Feeds& feeds) {
    find_vented(graph, region, standing, feeds);
    begin_at_reservoirs(region, feeds.from_tank);
    graph.work += feeds.from_tank.run(region, [&](Index /*node*/, const FlowArc& arc) {
        return flows_on(region, standing, arc);
    });

    feeds.sources.clear();
    feeds.stores.clear();
    feeds.any_finite = feeds.any_idle_store = false;
    feeds.fed.clear(region.node_count);
    feeds.line_fed.clear(region.node_count);
    feeds.line.clear(region.node_count);
    find_charge_pumps(graph, region, standing, loops, looped, open_part_ways, turning, searches,
                      feeds);
    find_pumping(graph, region, loops, looped, turning, feeds);
    const FeedRule rule(region, standing, loops, feeds.pressureless(), open_part_ways);
    if (graph.has_pressurised() || graph.has_accumulators())
        find_stores(graph, region, loops, looped,
                    {region, standing, loops, region.is_reservoir, open_part_ways}, rule, searches,
                    feeds);
    for (const ChargeSource& source : feeds.sources) {
        feeds.fed.begin_at(source.outlet);
        if (!source.has_line) continue;
        feeds.line_fed.begin_at(source.outlet);
        feeds.line.begin_at(source.outlet);
    }
    graph.work += feeds.fed.run(region, rule);
    if (feeds.any_finite) {
        feeds.from_lasting.clear(region.node_count);
        for (const ChargeSource& source : feeds.sources)
            if (!source.finite) feeds.from_lasting.begin_at(source.outlet);
        graph.work += feeds.from_lasting.run(region, rule);
    }
    graph.work += feeds.line_fed.run(region, rule);
    graph.work += feeds.line.run(region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = region.edges[arc.edge];
        return (edge.passage_class == PassageClass::element || edge.shift == Shift::hand) &&
               stands_open(standing, arc) && feeds.pressureless()[arc.to] == 0 &&
               region.is_reservoir[arc.to] == 0 && loops.sides_at(arc.to).empty();
    });
    find_checked(graph, region, feeds.line_fed, rule, feeds.checked);
}

bool hold_with(const Feeds& feeds, const Region& region, const LoopSet& loops,
               std::span<const std::uint8_t> open_part_ways, std::span<const Index> changed,
               const Standing& before, const Standing& now) {
    const FeedRule rule_before(region, before, loops, feeds.pressureless(), open_part_ways);
    const FeedRule rule_now(region, now, loops, feeds.pressureless(), open_part_ways);
    const auto told_apart = [&](Index node, const FlowArc& arc) {
        return (feeds.to_tank.reached(node) &&
                vents(region, before, arc) != vents(region, now, arc)) ||
               (feeds.from_tank.reached(node) &&
                flows_on(region, before, arc) != flows_on(region, now, arc)) ||
               // What the searches from the sources reach is in `fed` or, behind a check,
               // `checked`.
               ((feeds.fed.reached(node) || feeds.checked.reached(node)) &&
                rule_before(node, arc) != rule_now(node, arc));
    };
    return std::none_of(changed.begin(), changed.end(), [&](Index e) {
        if (before[e] == now[e]) return false;
        if (feeds.any_idle_store) return true;  // what it would need to be one is not kept
        const Edge& edge = region.edges[e];
        return told_apart(edge.from, arc_over(region, e)) ||
               told_apart(edge.to, arc_over(region, e, true));
    });
}

}  // namespace loopwright
