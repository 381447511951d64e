// For each make-up check: does charge oil get to it past nothing that can close? One search over
// all that could ever be open finds the checks, one over what nobody can close judges them.
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// An open part's actuator with a relief round it lets a feed through.
bool past_an_actuator(const Situation& s, const FlowArc& arc) {
    const std::uint8_t sense = arc.backward != 0 ? open_backward : open_forward;
    return (s.open_part_ways[arc.edge] & sense) != 0;
}

/// From the outlets of the sources up to the sides of the loops. `standing` null: over every way of
/// these classes, however it stands.
SearchPool::Lease charged(const Situation& s, const Standing* standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const ChargeSource& source : s.feeds.sources)
        if (source.has_line) search->begin_at(source.outlet);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        if (s.region.is_reservoir[arc.to] != 0 || on_a_side(s, arc.to)) return false;
        const Edge& edge = s.region.edges[arc.edge];
        if (edge.passage_class == PassageClass::displacement) return past_an_actuator(s, arc);
        if (standing != nullptr) return hands_on(edge) && stands_open(*standing, arc);
        return (hands_on(edge) || edge.passage_class == PassageClass::switched) &&
               (arc.backward == 0 || edge.both_ways);
    });
    return search;
}

/// A make-up check and the states of the sides that it leads to.
struct MakeUp {
    Index edge = none;
    StateSet states = 0;
};

bool counts(const JudgedSide& side) { return side.role != SideRole::intermediate; }

/// The checks out of what the widest search reached into the sides judged.
std::vector<MakeUp> checks_of(const Situation& s, const Search& widest,
                              StateSet JudgedSide::*states) {
    std::vector<StateSet> at_node(s.region.node_count, 0);
    for (const JudgedSide& side : s.sides)
        if (counts(side))
            for (const Index node : side.nodes) at_node[node] |= side.*states;
    std::vector<MakeUp> checks;
    for (const Index node : widest.order)
        for (const FlowArc& arc : s.region.arcs_of(node))
            if (arc.backward == 0 && at_node[arc.to] != 0 &&
                s.region.edges[arc.edge].passage_class == PassageClass::one_way)
                checks.push_back({arc.edge, at_node[arc.to]});
    s.graph.work += widest.order.size();
    return checks;
}

bool has_subject(const Situation& s) {
    return !s.feeds.sources.empty() && std::any_of(s.sides.begin(), s.sides.end(), counts);
}

std::string_view path_of(const Situation& s, Index edge) {
    return s.circuit().components[s.region.edges[edge].component].path;
}

/// From a source to the check and through it; leaves its arcs in the pool's path.
std::vector<Step>& way_over(const Situation& s, const Search& search, Index check) {
    const Index before = s.region.edges[check].from;
    std::vector<FlowArc>& arcs = s.searches.path();
    search.add_path_to(s.region, before, arcs);
    arcs.push_back(arc_over(s.region, check));
    std::vector<Step>& steps = s.searches.steps();
    const Index outlet =
        add_source(s.graph, s.region, s.feeds.sources, tail(s.region, arcs.front()), steps);
    add_walk(s.graph, s.region, arcs, {.from = outlet}, steps);
    return steps;
}

bool sound(const Situation& s, const Standing& standing, const Search& search, Index check) {
    return search.reached(s.region.edges[check].from) &&
           stands_open(standing, arc_over(s.region, check));
}

void pass(const Situation& s, Docket& docket, const MakeUp& check, const Search& search) {
    Verdict* verdict =
        docket.record(s, ElementType::component, s.region.edges[check.edge].component, check.states,
                      Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message =
        docket.text("nothing can close the way of the charge oil to ", path_of(s, check.edge));
    verdict->witness = docket.witness(WitnessShape::path, way_over(s, search, check.edge));
}

/// The way that is meant, with what can close on it.
void fail(const Situation& s, Docket& docket, const MakeUp& check, const Search& widest) {
    Verdict* verdict =
        docket.record(s, ElementType::component, s.region.edges[check.edge].component, check.states,
                      Outcome::fail);
    if (verdict == nullptr) return;
    std::vector<Step>& steps = way_over(s, widest, check.edge);
    const std::vector<FlowArc> arcs(s.searches.path());
    Index closes = none;
    for (const FlowArc& arc : arcs) {
        const Edge& edge = s.region.edges[arc.edge];
        const bool open = stands_open(s.standing, arc);
        if (open && (hands_on(edge) || past_an_actuator(s, arc))) continue;
        if (closes == none) closes = arc.edge;
        remark(s, arc,
               open                        ? "can be closed"
               : edge.shift == Shift::hand ? "drawn closed"
                                           : "shut in this state",
               steps);
    }
    verdict->witness = docket.witness(WitnessShape::path, steps);
    verdict->message =
        closes == none
            ? docket.text("the way of the charge oil to ", path_of(s, check.edge), " can be closed")
            : docket.text(path_of(s, closes), " can close the way of the charge oil ",
                          closes == check.edge ? "into the loop"
                                               : docket.text("to ", path_of(s, check.edge)));
}

/// However what pressure shifts stands.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds) return false;
    if (!has_subject(s)) return true;
    const auto widest = charged(s, nullptr);
    const auto checks = checks_of(s, *widest, &JudgedSide::alike_states);
    const auto search = charged(s, s.alike.shut);
    if (!std::all_of(checks.begin(), checks.end(), [&](const MakeUp& check) {
            return sound(s, *s.alike.shut, *search, check.edge);
        }))
        return false;
    for (const MakeUp& check : checks) pass(s, docket, check, *search);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    if (!has_subject(s)) return;
    const auto widest = charged(s, nullptr);
    const auto search = charged(s, &s.standing);
    for (const MakeUp& check : checks_of(s, *widest, &JudgedSide::states)) {
        if (sound(s, s.standing, *search, check.edge))
            pass(s, docket, check, *search);
        else
            fail(s, docket, check, *widest);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented"};

}  // namespace

extern constinit const Rule make_up_path{
    .info = {.id = "make-up-path",
             .family = "Make-up",
             .question = "Is the way from charge line to each check free of anything that can "
                         "close, in every state?",
             .why = "A valve that is left shut before a make-up check starves one side only, and "
                    "only when it is the low one: pump and motor cavitate, and the drive loses its "
                    "braking torque without a warning.",
             .decided = "Make-up checks are those that charge oil could reach if every valve were "
                        "open, and that lead onto a side. Charge oil reaches each of them past "
                        "nothing that can be shut by hand and no valve that is shut in the state.",
             .data = "joins, valve positions, locked",
             .subject = "each component with a make-up check",
             .states = "running",
             .level = Level::error,
             .remedy = "Take the valve out of the way, or lock it open.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
