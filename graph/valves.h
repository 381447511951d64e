#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/loops.h>
#include <loopwright/graph/states.h>

/// The valves of a region and how they stand: operated ones by position, hand valves as drawn,
/// flushing valves by the high side.
namespace loopwright {

/// More combinations of positions than this in one region are not gone through.
inline constexpr std::uint32_t most_combinations = 65'536;

/// Taken from region to region: it keeps its memory.
class ValveBoard {
  public:
    explicit ValveBoard(const FlowGraph& graph) : graph_(graph), circuit_(graph.circuit()) {}

    void begin(const Region& region);

    /// Number of combinations of positions; 1 if there are too many (see undecided()).
    std::uint32_t combination_count() const { return combinations_; }
    /// All operated valves where they have too many combinations, else empty.
    std::span<const Index> undecided() const { return undecided_; }
    std::span<const Index> valves() const { return components_; }
    /// Whether any of them is shifted by the pressures of the state.
    bool follows_pressure() const { return !shifted_by_pressure_.empty(); }
    /// The edges of those.
    std::span<const Index> shifted_by_pressure() const { return shifted_by_pressure_; }

    /// Where each valve stands in a combination (at rest where there are too many).
    void find_positions(std::uint32_t combination, std::vector<Index>& positions) const;
    /// What stands open with the valves so, flushing valves shut.
    void find_standing(std::span<const Index> positions, Standing& standing) const;

    /// Whether there are ways that are opened for towing.
    bool has_towing_ways() const { return !towing_ways_.empty(); }
    void open_towing_ways(Standing& standing) const;

    /// Told that a valve commands a loop: one of its paths is a passage of the loop or leads to a
    /// section of it. `loop`: any number that stands for the loop.
    void note_command(Index component, Index loop);
    bool any_commands() const;

    /// The states that allow these positions: at rest while nothing is operated; commanding valves
    /// at rest in neutral; in motion the positions declared `in` the state, if there are any.
    StateSet allowed_states(std::span<const Index> positions) const;
    /// The same for one loop while all others stand in neutral, so at rest what commands only them.
    StateSet allowed_states_apart(std::span<const Index> positions, Index loop) const;

    /// Shifts flushing valves to the low side of the loop that they stand on, shuttle valves to
    /// their higher inlet, and piloted valves where the pilot hangs on the side that is high.
    void set_by_pressure(const LoopSet& loops, std::span<const High> highs,
                         Standing& standing) const;
    /// Sets all that pressure shifts open, which is more than ever stands open at once,
    /// or shut.
    void set_all_shifted(Standing& standing, bool open) const;

  private:
    struct Valve {
        Index component = none;
        Range edges = {};
        std::vector<Index> loops = {};  ///< that it commands
    };

    Index rest_position(Index component) const;
    StateSet allowed_by(std::size_t valve, Index position) const;
    void shift_flushing(const LoopSet& loops, std::span<const High> highs,
                        Standing& standing) const;
    /// The passage that leads from the end on the low side; none where the valve stays centred.
    Index end_on_low_side(const Valve& valve, const LoopSet& loops, std::span<const High> highs,
                          const Standing& standing) const;
    Index first_edge_of(const Edge& edge) const;
    bool is_high(Index node, const LoopSet& loops, std::span<const High> highs,
                 const Standing& standing) const;

    const FlowGraph& graph_;
    const Circuit& circuit_;
    const Region* region_ = nullptr;
    Standing base_;
    std::vector<Valve> valves_;
    std::vector<Valve> flushing_;
    std::vector<Index> piloted_;              // edges: of piloted and shuttle valves
    std::vector<Index> shifted_by_pressure_;  // these, and all edges of flushing valves
    std::vector<Index> towing_ways_;          // edges
    std::vector<Index> components_;
    std::vector<Index> undecided_;
    std::uint32_t combinations_ = 1;
};

}  // namespace loopwright
