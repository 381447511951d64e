#include <loopwright/graph/ways_round.h>

#include <algorithm>
#include <utility>

#include <loopwright/graph/feeds.h>

namespace loopwright {

namespace {

bool is_machine(const Edge& edge) { return edge.passage_class == PassageClass::displacement; }

/// Oil passes one way only, whatever the state.
bool is_check(const Edge& edge) {
    return edge.passage_class == PassageClass::one_way || edge.shift == Shift::pilot_opens ||
           (edge.passage_class == PassageClass::element && !edge.both_ways);
}

}  // namespace

std::span<const Index> WaysRound::checks(const Region& region, const Standing& standing,
                                         std::span<const Index> loop) {
    checks_.clear();
    region_ = &region;
    standing_ = &standing;
    if (std::none_of(loop.begin(), loop.end(), [&](Index e) { return is_check(edge(e)); }))
        return checks_;
    in_loop_.assign(region.edges.size(), 0);
    for (const Index e : loop) in_loop_[e] = is_machine(edge(e)) ? 0 : 1;
    // Pumps side by side have the same ways round.
    std::vector<std::pair<Index, Index>> ends;
    for (const Index e : loop) {
        if (!is_machine(edge(e)) || edge(e).part != Part::pump) continue;
        const std::pair<Index, Index> between = std::minmax(edge(e).from, edge(e).to);
        if (std::find(ends.begin(), ends.end(), between) != ends.end()) continue;
        ends.push_back(between);
        find(loop, edge(e).from, edge(e).to);
    }
    return checks_;
}

void WaysRound::find(std::span<const Index> loop, Index from, Index to) {
    const bool over = leads(out_of_from_, from, to, Pilots::all);
    const bool back = leads(out_of_to_, to, from, Pilots::all);
    if (over && back) {
        find_opened_by_end(loop, from, to);
        bool shorted = leads(into_end_, from, to, Pilots::not_from_end);
        find_opened_by_end(loop, to, from);
        shorted = shorted && leads(into_end_, to, from, Pilots::not_from_end);
        if (shorted) return;
    }
    if (over) add_checks(loop, out_of_from_, to);
    if (back) add_checks(loop, out_of_to_, from);
}

/// With the oil, over the passages of the loop.
bool WaysRound::leads(Search& search, Index from, Index to, Pilots pilots) {
    search.clear(region_->node_count);
    search.begin_at(from);
    graph_.work += search.run(*region_, [&](Index /*node*/, const FlowArc& arc) {
        if (in_loop_[arc.edge] == 0) return false;
        if (edge(arc.edge).shift != Shift::pilot_opens) return stands_open(*standing_, arc);
        return arc.backward == 0 && (pilots == Pilots::all || opened_by_end_[arc.edge] == 0);
    });
    return search.reached(to);
}

/// Adds those that `out` came to and from which oil gets to the end.
void WaysRound::add_checks(std::span<const Index> loop, const Search& out, Index end) {
    into_end_.clear(region_->node_count);
    into_end_.begin_at(end);
    graph_.work += into_end_.run(*region_, [&](Index /*node*/, const FlowArc& arc) {
        if (in_loop_[arc.edge] == 0) return false;
        return edge(arc.edge).shift == Shift::pilot_opens ? arc.backward != 0
                                                          : stands_open_back(*standing_, arc);
    });
    for (const Index e : loop)
        if (is_check(edge(e)) && out.reached(edge(e).from) && into_end_.reached(edge(e).to))
            checks_.push_back(e);
}

/// Notes what is opened by the pressure at the end and not by that at the start. An orifice in a
/// pilot line takes no pressure off it; one that the loop's oil goes through does.
void WaysRound::find_opened_by_end(std::span<const Index> loop, Index start, Index end) {
    opened_by_end_.assign(region_->edges.size(), 0);
    const auto felt = [&](Index node, bool over_orifices) {
        Search search;
        search.clear(region_->node_count);
        search.begin_at(node);
        graph_.work += search.run(*region_, [&](Index /*node*/, const FlowArc& arc) {
            const Edge& way = edge(arc.edge);
            return (*standing_)[arc.edge] == (open_forward | open_backward) &&
                   (open_way(way) || (over_orifices && in_loop_[arc.edge] == 0 &&
                                      way.passage_class == PassageClass::metering));
        });
        return search;
    };
    const Search at_start = felt(start, false);
    const Search at_end = felt(end, true);
    for (const Index e : loop) {
        if (edge(e).shift != Shift::pilot_opens) continue;
        const Index pilot = graph_.circuit().passages[edge(e).passage].pilot;
        if (pilot == none) continue;
        const Index node = graph_.node_of(pilot);
        opened_by_end_[e] = !at_start.reached(node) && at_end.reached(node) ? 1 : 0;
    }
}

}  // namespace loopwright
