// For each loop: take all filters out; does a way from a reservoir into the loop remain?
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool into_housing(const Situation& s, const Edge& leakage) {
    const Passage& passage = s.circuit().passages[leakage.passage];
    return s.circuit().ports[passage.to].use == PortUse::drain;
}

/// Every way that oil can take from a reservoir, but through the machines of loops. Leakage counts
/// where it leaves a machine, into its housing.
SearchPool::Lease oil_ways(const Situation& s, const Standing& standing, bool with_filters) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : s.region.reservoirs) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        if (s.region.is_reservoir[arc.to] != 0) return false;
        if (!with_filters && edge.part == Part::filter) return false;
        if (edge.passage_class == PassageClass::leakage && !into_housing(s, edge)) return false;
        if (edge.passage_class != PassageClass::displacement) return stands_open(standing, arc);
        const std::uint8_t sense = arc.backward != 0 ? open_backward : open_forward;
        return s.loops.loop_of[arc.edge] == none &&
               (displacement_ways(edge, s.direction()) & sense) != 0;
    });
    return search;
}

/// The first node of the loop's sides that the search reached; `none` if there is none.
Index first_reached(const Situation& s, const Loop& loop, const Search& search) {
    for (const LoopSide& side : s.loops.sides_of(loop)) {
        if (side.role == SideRole::branch) continue;
        for (const Index node : s.loops.nodes_of(side))
            if (search.reached(node)) return node;
    }
    return none;
}

/// The way by which the oil came, up to where it first meets the loop.
Witness way_in(const Situation& s, Docket& docket, const Loop& loop, const Search& search,
               Index node) {
    std::vector<FlowArc>& arcs = s.searches.path();
    search.add_path_to(s.region, node, arcs);
    const auto on_loop = [&](const FlowArc& arc) {
        const auto sides = s.loops.sides_at(arc.to);
        return std::any_of(sides.begin(), sides.end(), [&](Index side) {
            return &s.loops.loops[s.loops.sides[side].loop] == &loop;
        });
    };
    arcs.erase(std::next(std::find_if(arcs.begin(), arcs.end(), on_loop)), arcs.end());
    std::vector<Step>& steps = s.searches.steps();
    add_walk(s.graph, s.region, arcs, {.to = port_on(s.graph, s.region, arcs.back().to, none)},
             steps);
    return docket.witness(WitnessShape::path, steps);
}

/// `all`: every way that oil takes, filters included.
void pass(const Situation& s, Docket& docket, const Loop& loop, StateSet states,
          const Search& all) {
    Verdict* verdict = docket.record(s, ElementType::loop, loop.first_pump, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = "all oil that enters the loop passes a filter";
    verdict->witness = way_in(s, docket, loop, all, first_reached(s, loop, all));
}

/// That no unfiltered oil gets in however the flushing valves stand, and some gets in anyway, is
/// the usual case.
bool judge_alike(const Situation& s, Docket& docket) {
    if (s.loops.loops.empty()) return true;
    const auto all = oil_ways(s, *s.alike.shut, true);
    const auto unfiltered = oil_ways(s, *s.alike.wide, false);
    const auto judged = [&](const Loop& loop) {
        return s.judges(loop.first_pump) && !loop.shorted;
    };
    const bool sound =
        std::all_of(s.loops.loops.begin(), s.loops.loops.end(), [&](const Loop& loop) {
            return !judged(loop) || (first_reached(s, loop, *unfiltered) == none &&
                                     first_reached(s, loop, *all) != none);
        });
    if (!sound) return false;
    for (Index i = 0; i < s.loops.loops.size(); ++i) {
        const Loop& loop = s.loops.loops[i];
        if (judged(loop)) pass(s, docket, loop, s.alike.loop_states[i], *all);
    }
    return true;
}

void judge(const Situation& s, Docket& docket) {
    const auto all = oil_ways(s, s.standing, true);
    const auto unfiltered = oil_ways(s, s.standing, false);
    for (Index i = 0; i < s.loops.loops.size(); ++i) {
        const Loop& loop = s.loops.loops[i];
        if (!s.judges(loop.first_pump) || loop.shorted) continue;
        const Index dirty = first_reached(s, loop, *unfiltered);
        const Index any = first_reached(s, loop, *all);
        if (dirty == none && any != none) {
            pass(s, docket, loop, s.loop_states[i], *all);
            continue;
        }
        Verdict* verdict = docket.record(s, ElementType::loop, loop.first_pump, s.loop_states[i],
                                         dirty != none ? Outcome::fail : Outcome::not_applicable);
        if (verdict == nullptr) continue;
        if (dirty != none) {
            verdict->message = "oil enters the loop without passing a filter";
            verdict->witness = way_in(s, docket, loop, *unfiltered, dirty);
        } else {
            verdict->message = "no oil enters the loop from a reservoir";
        }
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K30)", .place = "5.4.5"}};

}  // namespace

extern constinit const Rule filtration{
    .info = {.id = "filtration",
             .family = "Filtration",
             .question = "Does all oil that enters a loop from outside pass a filter first?",
             .why = "Dirt that enters a closed loop goes round in it and wears pump and motor "
                    "until they fail, often at full pressure.",
             .decided = "From all reservoirs, every way that oil can take, relief valves and "
                        "leakage included, with all filters taken out: the loop must not be "
                        "reached. A filter with a bypass counts here; a strainer never does.",
             .data = "joins, valve positions, sense of checks and one-way filters",
             .subject = "each loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Place the filter where all charge oil passes it: in the suction line or in "
                       "the charge line before the first branch.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
