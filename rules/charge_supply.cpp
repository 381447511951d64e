// For each side that can be the low one: does a charge source feed one of its nodes?
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

Witness way_in(const Situation& s, Docket& docket, const JudgedSide& side, const Search& feed,
               Index node) {
    std::vector<FlowArc>& arcs = s.searches.path();
    feed.add_path_to(s.region, node, arcs);
    const Index start = arcs.empty() ? node : tail(s.region, arcs.front());
    std::vector<Step>& steps = s.searches.steps();
    const Index outlet = add_source(s.graph, s.region, s.feeds.sources, start, steps);
    add_walk(s.graph, s.region, arcs,
             {.from = outlet, .to = port_on(s.graph, s.region, node, side.named_after)}, steps);
    return docket.witness(WitnessShape::path, steps);
}

/// What keeps the feed out: the search against the oil from the side.
Witness what_keeps_out(const Situation& s, Docket& docket, const JudgedSide& side) {
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    for (const Index node : side.nodes) search.begin_at(node);
    search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        const FlowArc flow = turned_round(s.region, arc);
        return stands_open(s.standing, flow) && s.region.is_reservoir[arc.to] == 0 &&
               (open_way(edge) || edge.passage_class == PassageClass::one_way ||
                edge.passage_class == PassageClass::metering ||
                edge.passage_class == PassageClass::divider ||
                edge.passage_class == PassageClass::reduced);
    });
    std::vector<Step>& steps = s.searches.steps();
    add_frontier(s.graph, s.region, s.standing, search, false, steps);
    return docket.witness(WitnessShape::frontier, steps);
}

bool asked(const JudgedSide& side) { return side.role != SideRole::intermediate; }

void pass(const Situation& s, Docket& docket, const JudgedSide& side, StateSet states, Index fed) {
    Verdict* verdict = docket.record(s, ElementType::side, side.named_after, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text("the ", name(side.role), " side is fed with charge oil");
    verdict->witness = way_in(s, docket, side, s.feeds.lasting(), fed);
}

/// Where all have the same feeds, and all sides are fed.
bool judge_alike(const Situation& s, Docket& docket) {
    const auto sound = [&](const JudgedSide& side) {
        return !asked(side) || first_reached(s.feeds.lasting(), side.nodes) != none;
    };
    if (!s.alike.same_feeds || !std::all_of(s.sides.begin(), s.sides.end(), sound)) return false;
    for (const JudgedSide& side : s.sides)
        if (asked(side) && side.alike_low_states != 0)
            pass(s, docket, side, side.alike_low_states,
                 first_reached(s.feeds.lasting(), side.nodes));
    return true;
}

void judge(const Situation& s, Docket& docket) {
    for (const JudgedSide& side : s.sides) {
        if (!side.may_be_low || !asked(side)) continue;
        const Index fed = first_reached(s.feeds.lasting(), side.nodes);
        if (fed != none) {
            pass(s, docket, side, side.states, fed);
            continue;
        }
        const Index stored = first_reached(s.feeds.fed, side.nodes);
        Verdict* verdict =
            docket.record(s, ElementType::side, side.named_after, side.states, Outcome::fail,
                          stored != none ? Level::note : Level::error);
        if (verdict == nullptr) continue;
        if (stored != none) {
            verdict->message = docket.text("nothing but an accumulator feeds the ", name(side.role),
                                           " side: its oil comes to an end");
            verdict->witness = way_in(s, docket, side, s.feeds.fed, stored);
            continue;
        }
        const bool vented = std::any_of(side.nodes.begin(), side.nodes.end(),
                                        [&](Index n) { return s.feeds.pressureless()[n] != 0; });
        verdict->message = docket.text("no charge oil reaches the ", name(side.role), " side",
                                       s.feeds.sources.empty() ? ": nothing delivers charge oil"
                                       : vented                ? ": it is open to a reservoir"
                                                               : "");
        verdict->witness = what_keeps_out(s, docket, side);
    }
}

constexpr Citation sources[] = {
    {.work = "Machinery Lubrication, March-April 2016, article on hydrostatic drives",
     .place = "p. 22 (charge pump and its relief)"}};
constexpr std::string_view follows[] = {"charge-vented"};

}  // namespace

extern constinit const Rule charge_supply{
    .info = {.id = "charge-supply",
             .family = "Charge supply",
             .question = "Does a charge source feed every main side, branch and section that can "
                         "be the low one, in every running state?",
             .why = "What leaks and what is flushed leaves the loop. A low side that is not fed "
                    "runs empty: pump and motor cavitate, lose their braking torque and break up.",
             .decided = "From each charge source (a turned pump outside the loops that draws from "
                        "a reservoir, a reservoir under pressure, an accumulator) by every way "
                        "that oil takes without opening a relief, past nothing that is open to a "
                        "vented reservoir. Every valve position that the state allows is asked. "
                        "A side that accumulators alone feed is a note: their oil is finite.",
             .data = "joins, shafts, valve positions, opening-pressure of checks, pressure of a "
                     "sealed reservoir",
             .subject = "each main side, branch and section",
             .states = "running, where it is low or neutral",
             .level = Level::error,
             .remedy = "Lead charge oil to the side through a make-up check.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
