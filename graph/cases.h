#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/loops.h>
#include <loopwright/graph/states.h>

/// The states of one combination of valve positions, put together where nothing tells them apart.
namespace loopwright {

/// A flow direction and a high side, and the states they stand for.
struct Case {
    Direction direction = Direction::none;
    High high = High::neither;
    bool drive = true;
    StateSet states = 0;
};

inline constexpr std::array<Case, 5> cases = {{
    {.states = bit(State::neutral)},
    {.direction = Direction::forward,
     .high = High::a,
     .states = bit(State::drive_forward) | bit(State::lost_signal)},
    {.direction = Direction::forward,
     .high = High::b,
     .drive = false,
     .states = bit(State::overrun_forward) | bit(State::lost_signal)},
    {.direction = Direction::reverse,
     .high = High::b,
     .states = bit(State::drive_reverse) | bit(State::lost_signal)},
    {.direction = Direction::reverse,
     .high = High::a,
     .drive = false,
     .states = bit(State::overrun_reverse) | bit(State::lost_signal)},
}};

/// Which side of a loop is high. One-way pumps have no reverse: driving, their outlet is high;
/// overrunning, their inlet.
High high_of(const Region& region, const LoopSet& loops, const Loop& loop, const Case& one);

/// Cases that share one situation.
struct CaseGroup {
    Case first = {};
    const LoopSet* loops = nullptr;
    std::vector<High> highs = {};  ///< for each loop
    StateSet states = 0;
    std::uint32_t alike = 0;  ///< number of those that differ in the high sides only
};

/// Groups the cases of one combination after another in the same memory.
class CaseGroups {
  public:
    /// `loops`: by direction; directions may share a set. `allowed`: the states to group.
    void find(const Region& region, const std::array<const LoopSet*, 3>& loops, StateSet allowed);

    /// Numbers of those alike come in ascending order of their firsts.
    std::span<const CaseGroup> groups() const { return {groups_.data(), count_}; }
    /// The states of all groups with that number.
    StateSet states_alike(std::uint32_t number) const { return alike_states_[number]; }
    /// Those of them in which side a (b) of a loop may be low.
    StateSet states_low(std::uint32_t number, std::size_t loop, High side) const;

  private:
    std::array<CaseGroup, cases.size()> groups_ = {};
    std::size_t count_ = 0;
    std::array<StateSet, cases.size()> alike_states_ = {};
};

}  // namespace loopwright
