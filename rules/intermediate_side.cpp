// For each side between motors in series: is it fed with charge oil, and limited by a relief?
#include <algorithm>
#include <cmath>
#include <optional>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool asked(const JudgedSide& side) { return side.role == SideRole::intermediate; }

bool on(const JudgedSide& side, Index node) {
    return std::find(side.nodes.begin(), side.nodes.end(), node) != side.nodes.end();
}

/// From the side past nothing that can close, up to other sides.
SearchPool::Lease out_of(const Situation& s, const JudgedSide& side, const Standing& standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : side.nodes) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return sure(s.region.edges[arc.edge]) && stands_open(standing, arc) &&
               s.region.is_reservoir[arc.to] == 0 && !on_a_side(s, arc.to);
    });
    return search;
}

/// A relief that the search came to and that leads off the side.
std::optional<FlowArc> relief_of(const Situation& s, const JudgedSide& side,
                                 const Standing& standing, const Search& search) {
    for (const Index node : search.order)
        for (const FlowArc& arc : s.region.arcs_of(node))
            if (is_relief(s.region.edges[arc.edge]) && arc.backward == 0 &&
                stands_open(standing, arc) && !on(side, arc.to))
                return arc;
    return std::nullopt;
}

void pass(const Situation& s, Docket& docket, const JudgedSide& side, StateSet states,
          const Search& search, const FlowArc& relief) {
    Verdict* verdict = docket.record(s, ElementType::side, side.named_after, states, Outcome::pass);
    if (verdict == nullptr) return;
    std::vector<FlowArc>& way = s.searches.path();
    search.add_path_to(s.region, tail(s.region, relief), way);
    way.push_back(relief);
    std::vector<Step>& steps = s.searches.steps();
    add_walk(s.graph, s.region, way,
             {.from = port_on(s.graph, s.region, tail(s.region, way.front()), side.named_after)},
             steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
    verdict->message = docket.text(
        "the side is fed with charge oil, and ",
        s.circuit().components[s.region.edges[relief.edge].component].path, " limits it");
}

/// Motors of one size that can slip apart (on separate wheels) share the pressure between them.
bool shares_evenly(const Situation& s, const JudgedSide& side) {
    boost::container::small_vector<Index, 4> drives;
    std::optional<double> displacement;
    for (const Index node : side.nodes)
        for (const FlowArc& arc : s.region.arcs_of(node)) {
            const Edge& edge = s.region.edges[arc.edge];
            if (edge.passage_class != PassageClass::displacement || edge.part != Part::actuator)
                continue;
            const auto own =
                s.circuit().figure(s.circuit().components[edge.component], "displacement");
            const Index drive = s.graph.drives().of(edge.component);
            const bool known = drive != none;  // one on no shaft is joined to none
            if (!own || (displacement && std::abs(*own - *displacement) > 1e-9 * *own) ||
                (known && std::find(drives.begin(), drives.end(), drive) != drives.end()))
                return false;
            displacement = own;
            drives.push_back(drive);
        }
    return drives.size() >= 2;
}

void fail(const Situation& s, Docket& docket, const JudgedSide& side, const Search& search,
          bool fed) {
    const bool limited = relief_of(s, side, s.standing, search).has_value();
    const bool even = shares_evenly(s, side);
    Verdict* verdict = docket.record(s, ElementType::side, side.named_after, side.states,
                                     Outcome::fail, even ? Level::warning : Level::error);
    if (verdict == nullptr) return;
    std::vector<Step>& steps = s.searches.steps();
    add_frontier(s.graph, s.region, s.standing, search, true, steps);
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
    verdict->message =
        docket.text("the line between the motors is ",
                    fed       ? "not limited by a relief valve"
                    : limited ? "not fed with charge oil"
                              : "neither fed with charge oil nor limited by a relief "
                                "valve");
}

/// Where all have the same feeds, what limits while all that pressure shifts is shut does always.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds) return false;
    const auto sound = [&](const JudgedSide& side) {
        return !asked(side) || (first_reached(s.feeds.fed, side.nodes) != none &&
                                relief_of(s, side, *s.alike.shut, *out_of(s, side, *s.alike.shut)));
    };
    if (!std::all_of(s.sides.begin(), s.sides.end(), sound)) return false;
    for (const JudgedSide& side : s.sides) {
        if (!asked(side)) continue;
        const auto search = out_of(s, side, *s.alike.shut);
        pass(s, docket, side, side.alike_states, *search,
             *relief_of(s, side, *s.alike.shut, *search));
    }
    return true;
}

void judge(const Situation& s, Docket& docket) {
    for (const JudgedSide& side : s.sides) {
        if (!asked(side)) continue;
        const auto search = out_of(s, side, s.standing);
        const bool fed = first_reached(s.feeds.fed, side.nodes) != none;
        const auto relief = relief_of(s, side, s.standing, *search);
        if (fed && relief)
            pass(s, docket, side, side.states, *search, *relief);
        else
            fail(s, docket, side, *search, fed);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K01, K03)", .place = "5.2.2"}};

}  // namespace

extern constinit const Rule intermediate_side{
    .info = {.id = "intermediate-side",
             .family = "Make-up",
             .question = "Between motors in series, is the line limited and fed?",
             .why = "Motors in series never take quite the same flow: the line between them runs "
                    "empty or is driven up beyond the relief setting, until a motor cavitates or "
                    "its seal or a hose bursts.",
             .decided = "A charge feed reaches the side, and past nothing that can close a relief "
                        "valve is reached that leads off it.",
             .data = "joins, valve positions, locked, displacement, shafts",
             .subject = "each side between motors in series",
             .states = "moving",
             .level = Level::error,
             .remedy = "Put a make-up check from the charge line and a relief valve on the line "
                       "between the motors.",
             .sources = sources},
    .asked = moving_states,
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
