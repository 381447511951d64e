#include <loopwright/graph/cases.h>

#include <algorithm>

namespace loopwright {

namespace {

bool alike_but_for_sides(const Region& region, const CaseGroup& a, const CaseGroup& b) {
    if (a.loops != b.loops &&
        (a.loops->edges != b.loops->edges || a.loops->machines != b.loops->machines ||
         a.loops->nodes != b.loops->nodes))
        return false;
    if (a.first.direction == b.first.direction) return true;
    // A two-way pump outside the loops turns with the direction.
    return std::none_of(region.machines.begin(), region.machines.end(), [&](Index e) {
        const Edge& edge = region.edges[e];
        return edge.part == Part::pump && edge.both_ways && a.loops->loop_of[e] == none;
    });
}

}  // namespace

High high_of(const Region& region, const LoopSet& loops, const Loop& loop, const Case& one) {
    if (one.high == High::neither || one.direction == Direction::none) return one.high;
    for (const Index e : loops.edges_of(loop)) {
        const Edge& edge = region.edges[e];
        if (edge.part == Part::pump && edge.both_ways &&
            edge.passage_class == PassageClass::displacement)
            return one.high;
    }
    return one.drive ? High::a : High::b;
}

StateSet CaseGroups::states_low(std::uint32_t number, std::size_t loop, High side,
                                High pull) const {
    StateSet states = 0;
    for (const CaseGroup& group : groups())
        if (group.alike == number && group.highs[loop] != side &&
            !pulled_away(pull, group.highs[loop]))
            states |= group.states;
    return states;
}

void CaseGroups::find(const Region& region, const std::array<const LoopSet*, 3>& loops,
                      StateSet allowed, bool pumps_turn_alike) {
    count_ = 0;
    std::uint32_t numbers = 0;
    for (const Case& one : cases) {
        const auto states = static_cast<StateSet>(one.states & allowed);
        if (states == 0) continue;
        CaseGroup& group = groups_[count_];  // perhaps
        group.first = one;
        group.loops = loops[static_cast<std::size_t>(one.direction)];
        group.states = states;
        group.alike = numbers;
        group.highs.clear();
        for (const Loop& loop : group.loops->loops)
            group.highs.push_back(high_of(region, *group.loops, loop, one));
        bool same = false;
        for (std::size_t i = 0; i < count_ && !same; ++i) {
            CaseGroup& other = groups_[i];
            if (!pumps_turn_alike &&
                (other.first.direction != one.direction || other.first.neutral() != one.neutral()))
                continue;
            if (other.alike != group.alike && !alike_but_for_sides(region, other, group)) continue;
            group.alike = other.alike;
            same = other.highs == group.highs;
            if (same) other.states |= states;
        }
        if (group.alike == numbers) alike_states_[numbers++] = 0;
        alike_states_[group.alike] |= states;
        if (!same) ++count_;
    }
}

}  // namespace loopwright
