// For each one-way filter: does oil flow through it the way it is made for, or is the only way that
// oil could take the other? A way from a giver to a taker that passes the filter from A to B comes
// to A, and goes on from B, without it; so two searches over everything decide for all filters
// whether oil flows ahead. Only where it does not, and may flow back, the filter is taken out for a
// search of its own.
#include <algorithm>
#include <array>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

using Filters = boost::container::small_vector<Index, 8>;

/// The elements of filters that may be passed one way only.
Filters one_way_filters(const Region& region) {
    Filters filters;
    for (Index e = 0; e < region.edges.size(); ++e) {
        const Edge& edge = region.edges[e];
        if (edge.part == Part::filter && edge.passage_class == PassageClass::element &&
            !edge.both_ways)
            filters.push_back(e);
    }
    return filters;
}

/// What gives oil, or takes it.
enum class End : std::uint8_t { giver, taker };

class Flow {
  public:
    Flow(const Situation& s, const Standing& standing, Direction direction)
        : s_(s),
          standing_(standing),
          ends_{s.searches.take(s.region.node_count), s.searches.take(s.region.node_count)},
          reached_{s.searches.take(s.region.node_count), s.searches.take(s.region.node_count)} {
        for (const Index node : s.region.reservoirs) {
            at(End::giver).begin_at(node);
            at(End::taker).begin_at(node);
        }
        for (const Index e : s.region.machines) {
            const PumpFlow flow = flow_of(s, e, direction);
            if (flow.outlet == none) continue;
            at(End::giver).begin_at(flow.outlet);
            at(End::taker).begin_at(flow.inlet);
        }
        for (const End end : {End::giver, End::taker}) {
            Search& search = *reached_[index(end)];
            for (const Index node : at(end).order) search.begin_at(node);
            s.graph.work += s.region.machines.size() +
                            search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
                                return passes(arc, end);
                            });
        }
    }

    /// A giver gets to the node.
    bool up(Index node) const { return reached_[0]->reached(node); }
    /// The node gets to a taker.
    bool down(Index node) const { return reached_[1]->reached(node); }

    bool ahead(Index filter) const {
        const Edge& edge = s_.region.edges[filter];
        return up(edge.from) && down(edge.to);
    }

    /// Where it does not flow ahead: whether it would flow from B to A.
    bool back(Index filter) const {
        const Edge& edge = s_.region.edges[filter];
        if (!up(edge.to) || !down(edge.from)) return false;
        // What comes to A has come to B over the filter, or gets from A over it to what takes it.
        if (up(edge.from)) return gets_past(filter, edge.to, End::giver);
        if (down(edge.to)) return gets_past(filter, edge.from, End::taker);
        return true;
    }

    /// From a giver to one end of the filter, and from the other to a taker.
    void add_way(Index filter, bool ahead, std::vector<FlowArc>& way) const {
        const Edge& edge = s_.region.edges[filter];
        const Index in = ahead ? edge.from : edge.to;
        const Index out = ahead ? edge.to : edge.from;
        add_part(filter, in, End::giver, way);
        way.push_back(arc_over(s_.region, filter, !ahead));
        add_part(filter, out, End::taker, way);
    }

  private:
    static std::size_t index(End end) { return end == End::giver ? 0 : 1; }
    Search& at(End end) const { return *ends_[index(end)]; }

    /// Whether oil takes the arc: with it from givers, against it from takers.
    bool passes(const FlowArc& arc, End from) const {
        const Edge& edge = s_.region.edges[arc.edge];
        switch (edge.passage_class) {
            case PassageClass::leakage:
            case PassageClass::pressure_opened:
                return false;
            case PassageClass::displacement:
                if (edge.part != Part::actuator) return false;
                break;
            default:
                break;
        }
        return from == End::giver ? stands_open(standing_, arc) : stands_open_back(standing_, arc);
    }

    /// The search from one node towards an end without the filter; its last node is that end, if
    /// there is one.
    SearchPool::Lease past(Index filter, Index node, End towards, Index& end) const {
        SearchPool::Lease search = s_.searches.take(s_.region.node_count);
        end = at(towards).reached(node) ? node : none;
        search->begin_at(node);
        const Index own = s_.region.edges[filter].component;
        const End against = towards == End::giver ? End::taker : End::giver;
        s_.graph.work += search->run(s_.region, [&](Index /*node*/, const FlowArc& arc) {
            if (end != none || s_.region.edges[arc.edge].component == own || !passes(arc, against))
                return false;
            if (at(towards).reached(arc.to)) end = arc.to;
            return true;
        });
        return search;
    }

    bool gets_past(Index filter, Index node, End towards) const {
        Index end = none;
        past(filter, node, towards, end);
        return end != none;
    }

    void add_part(Index filter, Index node, End towards, std::vector<FlowArc>& way) const {
        Index end = none;
        const SearchPool::Lease search = past(filter, node, towards, end);
        if (end == none) return;
        const auto begin = static_cast<std::ptrdiff_t>(way.size());
        search->add_path_to(s_.region, end, way);
        if (towards == End::taker) return;
        std::reverse(way.begin() + begin, way.end());
        std::for_each(way.begin() + begin, way.end(),
                      [&](FlowArc& arc) { arc = turned_round(s_.region, arc); });
    }

    const Situation& s_;
    const Standing& standing_;
    std::array<SearchPool::Lease, 2> ends_;     // what gives and what takes
    std::array<SearchPool::Lease, 2> reached_;  // from the givers; against the oil from the takers
};

void record(const Situation& s, Docket& docket, const Flow& flow, Index filter, StateSet states,
            bool ahead) {
    const Index c = s.region.edges[filter].component;
    Verdict* verdict =
        docket.record(s, ElementType::component, c, states, ahead ? Outcome::pass : Outcome::fail);
    if (verdict == nullptr) return;
    std::vector<FlowArc>& way = s.searches.path();
    flow.add_way(filter, ahead, way);
    std::vector<Step>& steps = s.searches.steps();
    const auto end_at = [&](Index node) {
        return s.region.is_reservoir[node] != 0 ? none : port_on(s.graph, s.region, node, none);
    };
    add_walk(s.graph, s.region, way,
             {.from = end_at(tail(s.region, way.front())), .to = end_at(way.back().to)}, steps);
    if (!ahead)
        for (Step& step : steps)
            if (step.type == ElementType::component && step.index == c)
                step.text = "against the filter's one way";
    verdict->witness = docket.witness(WitnessShape::path, steps);
    const std::string_view path = s.circuit().components[c].path;
    verdict->message =
        ahead ? docket.text("the oil passes ", path, " the way it is made for")
              : docket.text("oil would have to pass ", path, " from ",
                            s.circuit().ports[port_at(s, filter, s.region.edges[filter].to)].letter,
                            ", against its one way");
}

/// Ahead by reservoirs and one-way pumps alone, while all that pressure shifts is shut, is ahead in
/// all situations alike.
bool judge_alike(const Situation& s, Docket& docket) {
    const Filters filters = one_way_filters(s.region);
    if (filters.empty()) return true;
    const Flow flow(s, *s.alike.shut, Direction::none);
    if (!std::all_of(filters.begin(), filters.end(),
                     [&](Index filter) { return flow.ahead(filter); }))
        return false;
    for (const Index filter : filters) record(s, docket, flow, filter, s.alike.states, true);
    return true;
}

void judge_in(const Situation& s, Docket& docket, const Filters& filters, Direction direction,
              StateSet states) {
    if ((states & running_states) == 0) return;
    const Flow flow(s, s.standing, direction);
    for (const Index filter : filters) {
        if (flow.ahead(filter))
            record(s, docket, flow, filter, states, true);
        else if (flow.back(filter))
            record(s, docket, flow, filter, states, false);
    }
}

/// States that share a situation may differ in the direction of a loop's flow.
void judge(const Situation& s, Docket& docket) {
    const Filters filters = one_way_filters(s.region);
    if (filters.empty()) return;
    judge_in(s, docket, filters, Direction::forward,
             without(s.states & moving_states, reverse_states));
    judge_in(s, docket, filters, Direction::reverse, s.states & reverse_states);
    judge_in(s, docket, filters, Direction::none, without(s.states, moving_states));
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule filter_reversal{
    .info = {.id = "filter-reversal",
             .family = "Filtration",
             .question = "Is a one-way filter mounted against the flow, or in a line whose flow "
                         "reverses?",
             .why = "Flow against its sense collapses the element: its dirt and its pieces go "
                    "straight into pump and motor, which seize while the machine drives.",
             .decided =
                 "Without the filter, oil gets from a pump's outlet or a reservoir to its "
                 "inlet A, and from its outlet B on to a pump's inlet or a reservoir; relief "
                 "valves and leakage are left out. It fails where oil could only pass from "
                 "B to A.",
             .data = "one-way, joins, valve positions, sense of checks, shafts",
             .subject = "each one-way filter",
             .states = "running",
             .level = Level::error,
             .remedy = "Turn the filter round, or move it to a line that is passed one way; in a "
                       "loop put checks round it or take one that may be passed both ways.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
