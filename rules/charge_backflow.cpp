// For each main side and section: does oil get out of it into the charge line without opening a
// relief valve?
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool asked(const JudgedSide& side) {
    return side.role == SideRole::main || side.role == SideRole::section;
}

/// Whether charge oil stands at a node.
bool charged(const Situation& s, Index node) {
    return s.feeds.line.reached(node) ||
           std::any_of(s.feeds.sources.begin(), s.feeds.sources.end(),
                       [&](const ChargeSource& source) {
                           return source.is_pump() && source.outlet == node;
                       });
}

/// What the side's oil gets to past no relief, restriction or machine. What a restriction lets
/// through is a matter of amount.
SearchPool::Lease out_of(const Situation& s, const JudgedSide& side, const Standing& standing,
                         bool low = false) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : side.nodes) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        const Index loop = s.loops.loop_of[arc.edge];
        // The pressure of the other side lets the surplus of a cylinder out of the low one.
        if (low && edge.shift == Shift::pilot_opens) return false;
        return (edge.passage_class == PassageClass::one_way || open_way(edge)) &&
               stands_open(standing, arc) &&
               (s.region.is_reservoir[arc.to] == 0 || charged(s, arc.to)) &&
               (loop == none || s.loops.loops[loop].first_pump != side.first_pump);
    });
    return search;
}

Index first_charged(const Situation& s, const Search& search) {
    const auto found = std::find_if(search.order.begin(), search.order.end(),
                                    [&](Index node) { return charged(s, node); });
    return found == search.order.end() ? none : *found;
}

/// Where it would get out: what does not let it.
void pass(const Situation& s, Docket& docket, const JudgedSide& side, StateSet states,
          const Search& search) {
    Verdict* verdict = docket.record(s, ElementType::side, side.named_after, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text("nothing but a relief valve lets the oil of the ",
                                   name(side.role), " side into the charge line");
    std::vector<Step>& steps = s.searches.steps();
    add_frontier(s.graph, s.region, s.standing, search, true, steps);
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
}

/// However what pressure shifts stands.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds || s.feeds.sources.empty()) return false;
    for (const JudgedSide& side : s.sides)
        if (asked(side) && first_charged(s, *out_of(s, side, *s.alike.wide)) != none) return false;
    for (const JudgedSide& side : s.sides)
        if (asked(side)) pass(s, docket, side, side.alike_states, *out_of(s, side, *s.alike.wide));
    return true;
}

void judge(const Situation& s, Docket& docket) {
    for (const JudgedSide& side : s.sides) {
        if (!asked(side)) continue;
        if (s.feeds.sources.empty()) {
            Verdict* verdict = docket.record(s, ElementType::side, side.named_after, side.states,
                                             Outcome::not_applicable);
            if (verdict != nullptr) verdict->message = "nothing delivers charge oil";
            continue;
        }
        const bool low = side.role == SideRole::main && side.may_be_low;
        const auto search = out_of(s, side, s.standing, low);
        const Index node = first_charged(s, *search);
        if (node == none) {
            pass(s, docket, side, side.states, *search);
            continue;
        }
        Verdict* verdict =
            docket.record(s, ElementType::side, side.named_after, side.states, Outcome::fail);
        if (verdict == nullptr) continue;
        verdict->message = docket.text("the oil of the ", name(side.role),
                                       " side gets into the charge line, past no relief valve");
        std::vector<FlowArc>& arcs = s.searches.path();
        search->add_path_to(s.region, node, arcs);
        const Index start = arcs.empty() ? node : tail(s.region, arcs.front());
        std::vector<Step>& steps = s.searches.steps();
        add_walk(s.graph, s.region, arcs,
                 {.from = port_on(s.graph, s.region, start, side.named_after),
                  .to = port_on(s.graph, s.region, node, none)},
                 steps);
        verdict->witness = docket.witness(WitnessShape::path, steps);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"make-up-check"};

}  // namespace

extern constinit const Rule charge_backflow{
    .info = {.id = "charge-backflow",
             .family = "Charge supply",
             .question = "Is the charge line shut off from the loop's pressure, but for relief "
                         "valves?",
             .why = "Loop pressure in the charge line bursts filter, hoses and seals that are made "
                    "for a tenth of it, and the side cannot hold its load.",
             .decided = "From the side by every way that stands open, checks with their sense, but "
                        "not through relief valves, restrictions and machines: no node of the "
                        "charge line is reached.",
             .data = "joins, valve positions, sense of checks",
             .subject = "each main side and section",
             .states = "running",
             .level = Level::error,
             .remedy = "Put a check valve between charge line and side, free towards the side; "
                       "turn one that stands the wrong way.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
