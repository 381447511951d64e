// For each flushing valve and loop that it stands on: does it take its oil from the low side?
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool is_inlet(const Edge& edge) { return edge.shift == Shift::pressure; }

/// The main side of a loop that a node is on; null if it is on none.
const LoopSide* main_side_at(const Situation& s, Index node, Index loop) {
    for (const Index i : s.loops.sides_at(node)) {
        const LoopSide& side = s.loops.sides[i];
        if (side.loop == loop && side.role == SideRole::main) return &side;
    }
    return nullptr;
}

bool is_low(const Situation& s, const LoopSide& side) {
    const High high = s.highs[side.loop];
    return high != High::neither && side.letter != High::neither && side.letter != high;
}

/// A flushing valve in one situation, seen from one loop.
struct Shifted {
    const Edge* open = nullptr;      ///< its inlet that stands open, the first of them
    Index count = 0;                 ///< how many do
    const LoopSide* side = nullptr;  ///< of the loop, at the open inlet
    bool sound(const Situation& s) const {
        return count == 1 && side != nullptr && is_low(s, *side);
    }
};

Shifted shifted(const Situation& s, std::span<const Edge> edges, Index first_edge, Index loop) {
    Shifted valve;
    for (Index i = 0; i < edges.size(); ++i) {
        if (!is_inlet(edges[i]) || s.standing[first_edge + i] == 0) continue;
        if (valve.count++ > 0) continue;
        valve.open = &edges[i];
        valve.side = main_side_at(s, edges[i].from, loop);
    }
    return valve;
}

std::string_view message_of(const Situation& s, Docket& docket, const Component& component,
                            const Shifted& valve) {
    const std::string_view path = component.path;
    if (valve.sound(s))
        return docket.text("the flushing valve ", path, " takes its oil from the low side");
    if (valve.count == 0) return docket.text("the flushing valve ", path, " takes no oil");
    if (valve.count > 1) return docket.text("the flushing valve ", path, " joins its two inlets");
    const std::string_view letter =
        s.circuit().ports[s.circuit().passages[valve.open->passage].from].letter;
    if (valve.side == nullptr)
        return docket.text("the flushing valve ", path, " takes oil at ", letter,
                           ", which is on no side of the loop");
    return docket.text("the flushing valve ", path, " takes oil at ", letter,
                       ", from the side that is not the low one");
}

/// From the side through the valve, or the valve alone where it takes nothing.
Witness witness_of(const Situation& s, Docket& docket, Index component, const Shifted& valve) {
    std::vector<Step>& steps = s.searches.steps();
    if (valve.open == nullptr) {
        steps.push_back({ElementType::component, component, none, none, "shut in this state"});
        return docket.witness(WitnessShape::set, steps);
    }
    const Passage& passage = s.circuit().passages[valve.open->passage];
    const Index side = valve.side == nullptr ? none : valve.side->named_after;
    add_walk(s.graph, s.region, {},
             {.from = port_on(s.graph, s.region, valve.open->from, side), .to = passage.from},
             steps);
    steps.push_back({ElementType::component, component, passage.from, passage.to,
                     passing_text(*valve.open, false)});
    return docket.witness(WitnessShape::path, steps);
}

bool stands_on(const Situation& s, std::span<const Edge> edges, Index loop) {
    return std::any_of(edges.begin(), edges.end(), [&](const Edge& edge) {
        return is_inlet(edge) && main_side_at(s, edge.from, loop) != nullptr;
    });
}

/// Whether its inlets stand on two main sides of the loop.
bool stands_between(const Situation& s, std::span<const Edge> edges, Index loop) {
    const LoopSide* first = nullptr;
    for (const Edge& edge : edges) {
        const LoopSide* const side = is_inlet(edge) ? main_side_at(s, edge.from, loop) : nullptr;
        if (side == nullptr) continue;
        if (first != nullptr && side != first) return true;
        first = side;
    }
    return false;
}

void judge_valve(const Situation& s, Docket& docket, Index component, std::span<const Edge> edges,
                 Index first_edge) {
    // On a line that loops share it flushes the one that it stands between the sides of.
    const auto loop_count = static_cast<Index>(s.loops.loops.size());
    bool between_any = false;
    for (Index loop = 0; loop < loop_count && !between_any; ++loop)
        between_any = stands_between(s, edges, loop);
    for (Index loop = 0; loop < loop_count; ++loop) {
        if (!s.judges(s.loops.loops[loop].first_pump)) continue;
        if (between_any ? !stands_between(s, edges, loop) : !stands_on(s, edges, loop)) continue;
        const Shifted valve = shifted(s, edges, first_edge, loop);
        Verdict* verdict = docket.record(s, ElementType::component, component, s.loop_states[loop],
                                         valve.sound(s) ? Outcome::pass : Outcome::fail);
        if (verdict == nullptr) continue;
        verdict->message = message_of(s, docket, s.circuit().components[component], valve);
        verdict->witness = witness_of(s, docket, component, valve);
    }
}

void judge(const Situation& s, Docket& docket) {
    if (s.loops.loops.empty()) return;
    s.graph.work += s.region.edges.size();
    for (Index i = 0; i < s.region.components.size(); ++i) {
        const Index first = s.region.first_edge[i];
        const auto edges = s.region.edges.subspan(first, s.region.first_edge[i + 1] - first);
        if (std::any_of(edges.begin(), edges.end(), is_inlet))
            judge_valve(s, docket, s.region.components[i], edges, first);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule flushing_side{
    .info = {.id = "flushing-side",
             .family = "Flushing and cooling",
             .question = "Does the flushing valve take its oil from the low side, whichever side "
                         "is high?",
             .why = "A flushing valve that opens the high side lets the working pressure off to "
                    "the reservoir: the drive loses its force, a load runs away, and the line "
                    "behind the valve bursts. One that opens nothing lets the loop's oil get hot.",
             .decided =
                 "With the valve shifted as the pressures of the state shift it: exactly "
                 "one inlet is open, and it is on the low main side of the loop. A valve between "
                 "the sides of a loop is asked about that loop alone, whatever others "
                 "share a line with it.",
             .data = "joins",
             .subject = "each flushing valve with an inlet on a main side of a loop",
             .states = "moving",
             .level = Level::error,
             .remedy = "Join one inlet of the flushing valve to each main side of the same loop.",
             .sources = sources},
    .asked = moving_states,
    .judge = judge};

}  // namespace loopwright
