// For each loop: does its oil, or the oil that replaces it, pass a cooler? One search against the
// oil from all coolers answers for most loops.
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool is_cooler(const Edge& edge) {
    return edge.part == Part::cooler && edge.passage_class == PassageClass::element;
}

bool asked(const Situation& s, Index loop) {
    return s.judges(s.loops.loops[loop].first_pump) && !s.loops.loops[loop].shorted;
}

/// For each node the cooler's passage that takes oil out of it; an arc to `none` where none does.
using CoolersAt = std::vector<FlowArc>;

CoolersAt coolers_at(const Situation& s, const Standing& standing) {
    CoolersAt at(s.region.node_count);
    const auto add = [&](Index node, Index e, bool backward) {
        // Back out of a reservoir nothing draws over a cooler.
        if (at[node].to == none && !(backward && s.region.is_reservoir[node] != 0))
            at[node] = arc_over(s.region, e, backward);
    };
    for (Index e = 0; e < s.region.edges.size(); ++e) {
        if (!is_cooler(s.region.edges[e])) continue;
        if ((standing[e] & open_forward) != 0) add(s.region.edges[e].from, e, false);
        if ((standing[e] & open_backward) != 0) add(s.region.edges[e].to, e, true);
    }
    s.graph.work += s.region.edges.size();
    return at;
}

/// Where the coolers' oil comes from, past no machine of any loop.
SearchPool::Lease into(const Situation& s, const CoolersAt& coolers, const Standing& standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (Index node = 0; node < coolers.size(); ++node)
        if (coolers[node].to != none && s.region.is_reservoir[node] == 0) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        return stands_open_back(standing, arc) && s.region.is_reservoir[arc.to] == 0 &&
               (edge.passage_class != PassageClass::displacement ||
                s.loops.loop_of[arc.edge] == none);
    });
    return search;
}

/// What the oil of one loop gets to, through the machines of others as well.
SearchPool::Lease out_of(const Situation& s, Index loop) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const LoopSide& side : s.loops.sides_of(s.loops.loops[loop]))
        if (side.role == SideRole::main)
            for (const Index node : s.loops.nodes_of(side)) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        return stands_open(s.standing, arc) && s.region.is_reservoir[arc.to] == 0 &&
               (edge.passage_class != PassageClass::displacement ||
                s.loops.loop_of[arc.edge] != loop);
    });
    return search;
}

/// How a loop's oil is cooled: a way, which may be the cooler's passage alone.
struct Cooled {
    bool is = false;
    std::vector<FlowArc> way = {};
};

/// A cooler among the loop's own passages.
Cooled inside(const Situation& s, Index loop) {
    const auto edges = s.loops.edges_of(s.loops.loops[loop]);
    const auto found = std::find_if(edges.begin(), edges.end(),
                                    [&](Index e) { return is_cooler(s.region.edges[e]); });
    if (found == edges.end()) return {};
    return {true, {arc_over(s.region, *found, (s.standing[*found] & open_forward) == 0)}};
}

/// A way out of the loop's main sides that the search from the coolers found.
Cooled towards(const Situation& s, Index loop, const CoolersAt& coolers, const Search& into) {
    for (const LoopSide& side : s.loops.sides_of(s.loops.loops[loop])) {
        if (side.role != SideRole::main) continue;
        const Index node = first_reached(into, s.loops.nodes_of(side));
        if (node == none) continue;
        Cooled cooled{true, {}};
        into.add_way_from(s.region, node, cooled.way);
        const Index end = cooled.way.empty() ? node : cooled.way.back().to;
        cooled.way.push_back(coolers[end]);
        return cooled;
    }
    return {};
}

/// The first cooler that a search reached.
Cooled reached_by(const Situation& s, const CoolersAt& coolers, const Search& search) {
    // What draws from a reservoir over a cooler counts as well.
    const auto at_cooler = [&](Index node) { return coolers[node].to != none; };
    const auto reservoir =
        std::find_if(s.region.reservoirs.begin(), s.region.reservoirs.end(), at_cooler);
    if (reservoir != s.region.reservoirs.end()) return {true, {coolers[*reservoir]}};
    const auto found = std::find_if(search.order.begin(), search.order.end(), at_cooler);
    if (found == search.order.end()) return {};
    Cooled cooled{true, {}};
    search.add_path_to(s.region, *found, cooled.way);
    cooled.way.push_back(coolers[*found]);
    return cooled;
}

void pass(const Situation& s, Docket& docket, StateSet states, const Cooled& cooled) {
    Verdict* verdict = docket.record(s, ElementType::circuit, none, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = "the oil of every loop passes a cooler";
    std::vector<Step>& steps = s.searches.steps();
    const Index start = tail(s.region, cooled.way.front());
    add_walk(s.graph, s.region, cooled.way,
             {.from = cooled.way.size() == 1 ? entry_port(s.graph, s.region, cooled.way.front())
                                             : port_on(s.graph, s.region, start, none),
              .to = exit_port(s.graph, s.region, cooled.way.back())},
             steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
}

void fail(const Situation& s, Docket& docket, Index loop, const Search& search) {
    Verdict* verdict = docket.record(s, ElementType::circuit, none, s.loop_states[loop],
                                     Outcome::fail, Level::note);
    if (verdict == nullptr) return;
    verdict->message = docket.text("no cooler cools the oil of loop:",
                                   s.circuit().components[s.loops.loops[loop].first_pump].path);
    std::vector<Step>& steps = s.searches.steps();
    add_frontier(s.graph, s.region, s.standing, search, true, steps);
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
}

/// Where the oil gets into a cooler past no valve that pressure shifts, it does in each of those
/// alike.
bool judge_alike(const Situation& s, Docket& docket) {
    if (s.loops.loops.empty()) return true;
    const CoolersAt coolers = coolers_at(s, *s.alike.shut);
    const auto search = into(s, coolers, *s.alike.shut);
    std::vector<Cooled> cooled(s.loops.loops.size());
    for (Index loop = 0; loop < cooled.size(); ++loop) {
        if (!asked(s, loop)) continue;
        cooled[loop] = inside(s, loop);
        if (!cooled[loop].is) cooled[loop] = towards(s, loop, coolers, *search);
        if (!cooled[loop].is) return false;
    }
    for (Index loop = 0; loop < cooled.size(); ++loop)
        if (asked(s, loop)) pass(s, docket, s.alike.loop_states[loop], cooled[loop]);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    if (s.loops.loops.empty()) return;
    const CoolersAt coolers = coolers_at(s, s.standing);
    const auto against = into(s, coolers, s.standing);
    const Cooled charge = reached_by(s, coolers, s.feeds.fed);
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!asked(s, loop)) continue;
        Cooled cooled = inside(s, loop);
        if (!cooled.is) cooled = towards(s, loop, coolers, *against);
        if (!cooled.is) cooled = charge;
        if (cooled.is) {
            pass(s, docket, s.loop_states[loop], cooled);
            continue;
        }
        const auto search = out_of(s, loop);
        cooled = reached_by(s, coolers, *search);
        if (cooled.is)
            pass(s, docket, s.loop_states[loop], cooled);
        else
            fail(s, docket, loop, *search);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule cooling{
    .info = {.id = "cooling",
             .family = "Flushing and cooling",
             .question = "Does the hot oil of every loop pass a cooler?",
             .why = "What pump and motor lose becomes heat. Where nothing but the walls of the "
                    "reservoir carries it off, the oil may get so hot and thin that machines wear "
                    "and seals harden and leak.",
             .decided = "A cooler is part of the loop, or is reached from its main sides by any "
                        "way that stands open, leakage included, or by the charge oil.",
             .data = "joins, valve positions, sense of checks",
             .subject = "the circuit",
             .states = "moving",
             .level = Level::note,
             .remedy = "Where the temperature does not hold, lead the flushed oil and the drains "
                       "over a cooler.",
             .sources = sources},
    .asked = moving_states,
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
