// For each loop: does oil get out of it to a reservoir by a way made for that, so that cooled and
// filtered oil takes its place? What leaks or leaves over a relief valve is not counted on.
#include <algorithm>
#include <optional>
#include <vector>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool takes_oil_out(PassageClass passage) {
    switch (passage) {
        case PassageClass::switched:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::reduced:
        case PassageClass::element:
            return true;
        case PassageClass::joined:
        case PassageClass::one_way:
        case PassageClass::pressure_opened:
        case PassageClass::displacement:
        case PassageClass::leakage:
            break;
    }
    return false;
}

bool on_side_of(const Situation& s, Index node, Index loop) {
    const auto sides = s.loops.sides_at(node);
    return std::any_of(sides.begin(), sides.end(),
                       [&](Index side) { return s.loops.sides[side].loop == loop; });
}

/// What the loop's oil gets to with the valves standing so.
SearchPool::Lease out_of(const Situation& s, Index loop, const Standing& standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const LoopSide& side : s.loops.sides_of(s.loops.loops[loop]))
        if (side.role == SideRole::main)
            for (const Index node : s.loops.nodes_of(side)) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index node, const FlowArc& arc) {
        const PassageClass passage = s.region.edges[arc.edge].passage_class;
        if (s.region.is_reservoir[node] != 0 || !stands_open(standing, arc) ||
            on_side_of(s, arc.to, loop))
            return false;
        if (search->way[node] == Search::start)
            return takes_oil_out(passage) && s.loops.loop_of[arc.edge] != loop;
        return passage != PassageClass::leakage && passage != PassageClass::displacement;
    });
    return search;
}

/// A reservoir, or else a node that opens to one both ways, which hangs on what stands open.
Index first_tank(const Situation& s, const Search& search,
                 std::optional<std::vector<std::uint8_t>>& at_tank) {
    const Index reservoir = first_reached(search, s.region.reservoirs);
    if (reservoir != none) return reservoir;
    if (!at_tank) {
        at_tank.emplace();
        find_at_tank(s.graph, s.region, s.standing, s.searches, *at_tank);
    }
    const auto found = std::find_if(search.order.begin(), search.order.end(),
                                    [&](Index node) { return (*at_tank)[node] != 0; });
    return found == search.order.end() ? none : *found;
}

void pass(const Situation& s, Docket& docket, Index loop, StateSet states, const Search& search,
          Index tank) {
    const Index first_pump = s.loops.loops[loop].first_pump;
    Verdict* verdict = docket.record(s, ElementType::loop, first_pump, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = "oil is taken out of the loop and led to a reservoir";
    std::vector<FlowArc>& arcs = s.searches.path();
    search.add_path_to(s.region, tank, arcs);
    std::vector<Step>& steps = s.searches.steps();
    if (!arcs.empty())
        add_walk(s.graph, s.region, arcs,
                 {.from = port_on(s.graph, s.region, tail(s.region, arcs.front()), none)}, steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
}

void fail(const Situation& s, Docket& docket, Index loop, StateSet states, const Search& search) {
    const Index first_pump = s.loops.loops[loop].first_pump;
    Verdict* verdict =
        docket.record(s, ElementType::loop, first_pump, states, Outcome::fail, Level::note);
    if (verdict == nullptr) return;
    verdict->message = "no oil is taken out of the loop but by leakage and relief valves";
    std::vector<Step>& steps = s.searches.steps();
    add_frontier(s.graph, s.region, s.standing, search, true, steps);
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
}

bool asked(const Situation& s, Index loop) {
    return s.judges(s.loops.loops[loop].first_pump) && !s.loops.loops[loop].shorted;
}

/// Where oil gets out past no valve that pressure shifts, it does in each of those alike.
bool judge_alike(const Situation& s, Docket& docket) {
    const auto reservoir_of = [&](const Search& search) {
        return first_reached(search, s.region.reservoirs);
    };
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (asked(s, loop) && reservoir_of(*out_of(s, loop, *s.alike.shut)) == none) return false;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!asked(s, loop)) continue;
        const auto search = out_of(s, loop, *s.alike.shut);
        pass(s, docket, loop, s.alike.loop_states[loop], *search, reservoir_of(*search));
    }
    return true;
}

void judge(const Situation& s, Docket& docket) {
    std::optional<std::vector<std::uint8_t>> at_tank;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!asked(s, loop) || (s.loop_states[loop] & moving_states) == 0) continue;
        const auto search = out_of(s, loop, s.standing);
        const Index tank = first_tank(s, *search, at_tank);
        if (tank == none)
            fail(s, docket, loop, s.loop_states[loop], *search);
        else
            pass(s, docket, loop, s.loop_states[loop], *search, tank);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"flushing-side"};

}  // namespace

extern constinit const Rule loop_flushing{
    .info = {.id = "loop-flushing",
             .family = "Flushing and cooling",
             .question = "Has the loop a way to exchange oil while it works?",
             .why = "The oil of a closed loop goes round and round and takes up the heat of pump "
                    "and motor. Where it is not exchanged it gets hot and thin, and wears them.",
             .decided = "From the loop's main sides over a valve that stands open, a restriction, "
                        "a divider, a reducing valve or an element out of the loop, and on by "
                        "every open way but leakage and machines: a reservoir is reached.",
             .data = "joins, valve positions, sense of checks",
             .subject = "each loop",
             .states = "moving",
             .level = Level::note,
             .remedy = "Where the temperature does not hold, put a flushing valve with a relief "
                       "behind it at the motor and lead its oil over the cooler.",
             .sources = sources,
             .follows = follows},
    .asked = moving_states,
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
