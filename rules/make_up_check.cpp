// For each side that can be low: a feed path from the charge line whose last check is followed by
// open ways only.
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

Witness make_up_way(const Situation& s, Docket& docket, const JudgedSide& side, Index node) {
    std::vector<FlowArc>& arcs = s.searches.path();
    s.feeds.add_make_up_path(s.region, node, arcs);
    const Index end = port_on(s.graph, s.region, node, side.named_after);
    std::vector<Step>& steps = s.searches.steps();
    const Index outlet =
        add_source(s.graph, s.region, s.feeds.sources, tail(s.region, arcs.front()), steps);
    add_walk(s.graph, s.region, arcs, {.from = outlet, .to = end}, steps);
    return docket.witness(WitnessShape::path, steps);
}

/// The ways that end on the side and are no make-up check: a check turned round, a restriction ...
Witness ways_on_side(const Situation& s, Docket& docket, const JudgedSide& side) {
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    for (const Index node : side.nodes) search.begin_at(node);
    search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return open_way(s.region.edges[arc.edge]) && s.region.is_reservoir[arc.to] == 0 &&
               stands_open(s.standing, turned_round(s.region, arc));
    });
    std::vector<Step>& steps = s.searches.steps();
    add_frontier(s.graph, s.region, s.standing, search, false, steps);
    return docket.witness(WitnessShape::frontier, steps);
}

/// What charge oil reaches by ways that meter nothing.
SearchPool::Lease fed_past_no_restriction(const Situation& s) {
    const FeedRule feeds(s.region, s.standing, s.loops, s.feeds.pressureless(), s.open_part_ways);
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const ChargeSource& source : s.feeds.sources) search->begin_at(source.outlet);
    search->run(s.region, [&](Index node, const FlowArc& arc) {
        return s.region.edges[arc.edge].passage_class != PassageClass::metering && feeds(node, arc);
    });
    return search;
}

bool asked(const JudgedSide& side) { return side.role != SideRole::intermediate; }

/// `made_up`: the first node of the side that lies behind a make-up check.
void pass(const Situation& s, Docket& docket, const JudgedSide& side, StateSet states,
          Index made_up) {
    Verdict* verdict = docket.record(s, ElementType::side, side.named_after, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text("a check lets charge oil into the ", name(side.role), " side");
    verdict->witness = make_up_way(s, docket, side, made_up);
}

/// Where all have the same feeds, and all sides are made up.
bool judge_alike(const Situation& s, Docket& docket) {
    const auto sound = [&](const JudgedSide& side) {
        return !asked(side) || first_reached(s.feeds.checked, side.nodes) != none;
    };
    if (!s.alike.same_feeds || !std::all_of(s.sides.begin(), s.sides.end(), sound)) return false;
    for (const JudgedSide& side : s.sides)
        if (asked(side) && side.alike_low_states != 0)
            pass(s, docket, side, side.alike_low_states,
                 first_reached(s.feeds.checked, side.nodes));
    return true;
}

void judge(const Situation& s, Docket& docket) {
    std::optional<SearchPool::Lease> freely_fed;
    const auto unrestricted = [&]() -> const Search& {
        if (!freely_fed) freely_fed.emplace(fed_past_no_restriction(s));
        return **freely_fed;
    };
    for (const JudgedSide& side : s.sides) {
        if (!side.may_be_low || !asked(side)) continue;
        const Index made_up = first_reached(s.feeds.checked, side.nodes);
        if (made_up != none) {
            pass(s, docket, side, side.states, made_up);
            continue;
        }
        const bool metered = side.role == SideRole::branch &&
                             first_reached(s.feeds.fed, side.nodes) != none &&
                             first_reached(unrestricted(), side.nodes) == none;
        Verdict* verdict = docket.record(s, ElementType::side, side.named_after, side.states,
                                         Outcome::fail, metered ? Level::warning : Level::error);
        if (verdict == nullptr) continue;
        verdict->witness = ways_on_side(s, docket, side);
        const bool turned_round = std::any_of(
            verdict->witness.steps.begin(), verdict->witness.steps.end(),
            [](const Step& step) { return step.text == "blocks: its free flow is the other way"; });
        verdict->message =
            s.feeds.line.order.empty() && !metered ? "there is no charge line to make up from"
            : metered ? "charge oil reaches the branch through a restriction only"
                      : docket.text("no make-up check leads from the charge line into the ",
                                    name(side.role), " side",
                                    turned_round ? "; a check there faces out of it" : "");
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented"};

}  // namespace

extern constinit const Rule make_up_check{
    .info = {.id = "make-up-check",
             .family = "Make-up",
             .question = "Does every main side, section and branch have a make-up check from the "
                         "charge line, free flow into the loop?",
             .why = "Without it the side cavitates when it is the low one; with a check turned "
                    "round, loop pressure bursts into the charge line, its filter and its housing "
                    "seals, and oil under pressure can leave them.",
             .decided = "A feed path from the charge line to the side whose last check is followed "
                        "only by ways open both ways that meter nothing.",
             .data = "joins, sense of the checks, valve positions",
             .subject = "each main side, branch and section",
             .states = "running, where it is low or neutral",
             .level = Level::error,
             .remedy = "Put a check between charge line and side, its free flow into the loop.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
