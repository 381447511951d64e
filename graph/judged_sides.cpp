#include <loopwright/graph/judged_sides.h>

#include <algorithm>

namespace loopwright {

namespace {

void add_sections(const Situation& situation, std::span<const Section> sections,
                  std::span<const KnownLoop> known, std::vector<JudgedSide>& sides) {
    for (const Section& section : sections) {
        const KnownLoop& loop = known[section.known_loop];
        if (!situation.judges(loop.first_pump)) continue;
        const StateSet states = situation.states & loop.states();
        const StateSet alike_states = situation.alike.states & loop.states();
        const auto& nodes = section.nodes;
        const bool vented = std::any_of(nodes.begin(), nodes.end(),
                                        [&](Index n) { return situation.feeds.vented[n] != 0; });
        if (states == 0 || vented) continue;
        sides.push_back({.role = SideRole::section,
                         .named_after = section.named_after,
                         .first_pump = loop.first_pump,
                         .nodes = nodes,
                         .states = states,
                         .alike_states = alike_states,
                         .alike_low_states = alike_states});
    }
}

void join_siblings(std::vector<JudgedSide>& sides) {
    for (Index begin = 0; begin < sides.size();) {
        Index end = begin;
        while (end < sides.size() && sides[end].first_pump == sides[begin].first_pump) ++end;
        const Range all{begin, end};
        for (; begin < end; ++begin) sides[begin].siblings = all;
    }
}

}  // namespace

void find_judged_sides(const Situation& situation, std::span<const Section> sections,
                       std::span<const KnownLoop> known, std::vector<JudgedSide>& sides) {
    sides.clear();
    const LoopSet& loops = situation.loops;
    for (Index i = 0; i < loops.loops.size(); ++i) {
        const Loop& loop = loops.loops[i];
        if (!situation.judges(loop.first_pump) || situation.loop_states[i] == 0) continue;
        const auto low_states = [&](const LoopSide& side) {
            if (side.letter == High::neither) return situation.alike.loop_states[i];
            const LowStates& low = situation.alike.low_states[i];
            return side.letter == High::a ? low.a : low.b;
        };
        for (const LoopSide& side : loops.sides_of(loop))
            sides.push_back({.role = side.role,
                             .named_after = side.named_after,
                             .first_pump = loop.first_pump,
                             .loop = i,
                             .nodes = loops.nodes_of(side),
                             .states = situation.loop_states[i],
                             .may_be_low = situation.highs[i] == High::neither ||
                                           side.letter != situation.highs[i],
                             .alike_states = situation.alike.loop_states[i],
                             .alike_low_states = low_states(side)});
    }
    if (!sections.empty()) {
        add_sections(situation, sections, known, sides);
        std::stable_sort(sides.begin(), sides.end(), [](const JudgedSide& a, const JudgedSide& b) {
            return a.first_pump < b.first_pump;
        });
    }
    join_siblings(sides);
}

}  // namespace loopwright
