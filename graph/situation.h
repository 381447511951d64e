#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/graph/feeds.h>
#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/loops.h>
#include <loopwright/graph/states.h>

/// A situation: one region in one state (or several that stand alike) with one set of positions of
/// its operated valves. Everything that rules ask of it is worked out once, and then const. Where
/// the states are stopped and towing, too, the feeds are those of the running ones.
namespace loopwright {

/// A side as a rule sees it.
struct JudgedSide {
    SideRole role = SideRole::main;
    Index named_after = none;  ///< port
    Index first_pump = none;   ///< of its loop
    Index loop = none;         ///< into LoopSet::loops; none for a section
    std::span<const Index> nodes = {};
    Range siblings = {};            ///< into Situation::sides: those of the same loop, itself too
    StateSet states = 0;            ///< those of the situation that its loop has
    bool may_be_low = true;         ///< low, neutral, or a section
    StateSet alike_states = 0;      ///< those of all alike situations that its loop has ...
    StateSet alike_low_states = 0;  ///< ... and in which it may be low
};

/// For the two sides of a loop the states in which they may be low.
struct LowStates {
    StateSet a = 0;
    StateSet b = 0;
};

/// The situations of one combination that differ only in which side is high and in how the
/// valves stand that pressure shifts (flushing, shuttle, piloted).
struct Alike {
    std::uint32_t number = 0;                    ///< of the group in its combination
    bool first = true;                           ///< whether this situation is the first of it
    StateSet states = 0;                         ///< of all of them
    std::span<const StateSet> loop_states = {};  ///< for each loop, those of `states` it has
    std::span<const LowStates> low_states = {};  ///< for each loop, those of `loop_states`
    bool same_feeds = false;         ///< the feeds and sides here are those of each of them
    const Standing* shut = nullptr;  ///< what stands open in each of them
    const Standing* wide = nullptr;  ///< all that stands open in any of them, and perhaps more
};

struct Situation {
    const FlowGraph& graph;
    const Region& region;
    const LoopSet& loops;
    StateSet states = 0;
    std::uint32_t combination = 0;                ///< number of the positions' combination
    std::span<const std::uint32_t> judging = {};  ///< find_judging_combinations
    std::span<const Index> valves = {};           ///< operated valves of the region, components
    std::span<const Index> positions = {};  ///< where each of them stands, into Circuit::positions
    std::span<const Index> undecided = {};  ///< valves, where they have too many combinations
    Turning turning = {};
    std::span<const High> highs = {};            ///< for each loop
    std::span<const StateSet> loop_states = {};  ///< for each loop, those of `states` that it has
    Index judged_pump = none;  ///< first pump of the only loop that is judged, the others standing
                               ///< in neutral; `none`: all loops, in the same state
    std::span<const std::uint8_t> resting = {};  ///< then, for each edge: machine of those others
    const Standing& standing;
    std::span<const JudgedSide> sides = {};  ///< main, intermediate, branches, sections; by loop
    const Feeds& feeds;
    SearchPool& searches;
    std::span<const std::uint8_t> looped =
        {};  ///< for each edge: machine with a loop in some state
    std::span<const std::uint8_t> open_part_ways = {};
    Alike alike = {};

    const Circuit& circuit() const { return graph.circuit(); }
    Direction direction() const { return turning.direction; }
    /// Whether the loop with this first pump is judged here.
    bool judges(Index first_pump) const { return judged_pump == none || judged_pump == first_pump; }
    /// Whether a machine is: unless it is in loops that only stand by.
    bool asks(Index edge) const { return judged_pump == none || resting[edge] == 0; }
    /// All sides of a side's loop.
    std::span<const JudgedSide> sides_of_loop(const JudgedSide& side) const {
        return sides.subspan(side.siblings.begin, side.siblings.size());
    }
};

/// Goes through all states of all regions, each situation worked out once, and returns the
/// structure found on the way. `judge` may be empty.
Structure for_each_situation(const FlowGraph& graph,
                             const std::function<void(const Situation&)>& judge);

/// The structure alone.
Structure structure_of(const Circuit& circuit);

}  // namespace loopwright
