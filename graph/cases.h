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

    bool neutral() const { return direction == Direction::none && high == High::neither; }
};

/// What comes while the oil dies away and, with the prime mover off, while the machine is towed.
inline constexpr StateSet either_way = bit(State::lost_signal) | bit(State::towing);

inline constexpr std::array<Case, 7> cases = {{
    {.states = bit(State::neutral)},
    {.direction = Direction::forward,
     .high = High::a,
     .states = bit(State::drive_forward) | either_way},
    {.direction = Direction::forward,
     .high = High::b,
     .drive = false,
     .states = bit(State::overrun_forward) | either_way},
    {.direction = Direction::reverse,
     .high = High::b,
     .states = bit(State::drive_reverse) | either_way},
    {.direction = Direction::reverse,
     .high = High::a,
     .drive = false,
     .states = bit(State::overrun_reverse) | either_way},
    {.high = High::a, .states = bit(State::hold) | bit(State::stopped)},
    {.high = High::b, .states = bit(State::hold) | bit(State::stopped)},
}};

/// Which side of a loop is high. One-way pumps have no reverse: driving, their outlet is high;
/// overrunning, their inlet. At a standstill either can be.
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
    /// `pumps_turn_alike`: no pump stands or turns backwards in some of them.
    void find(const Region& region, const std::array<const LoopSet*, 3>& loops, StateSet allowed,
              bool pumps_turn_alike);

    /// Numbers of those alike come in ascending order of their firsts.
    std::span<const CaseGroup> groups() const { return {groups_.data(), count_}; }
    /// The states of all groups with that number.
    StateSet states_alike(std::uint32_t number) const { return alike_states_[number]; }
    /// Those of them in which side a (b) of a loop may be low, whose load pulls so that `pull`
    /// alone can be high (neither: both can).
    StateSet states_low(std::uint32_t number, std::size_t loop, High side, High pull) const;

  private:
    std::array<CaseGroup, cases.size()> groups_ = {};
    std::size_t count_ = 0;
    std::array<StateSet, cases.size()> alike_states_ = {};
};

}  // namespace loopwright
