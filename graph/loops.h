#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/parts.h>
#include <loopwright/graph/search.h>
#include <loopwright/graph/ways_round.h>

/// Loops and their sides as one region has them with its valves in one position and the flow in
/// one direction.
///
/// A way from one port of a pump round to the other past no machine short-circuits the loop if
/// oil can take it both ways. If it can take it one way only (a make-up check turned round lets the
/// one side into the other through the gallery), its checks are left out of the loop: the loop
/// works with its sides the other way up, and other rules find the fault. So it is with checks that
/// only the pressure at the end of the way opens: they are open while no oil can take it.
///
/// A loop is a biconnected part of a strongly connected part that holds a pump and an actuator,
/// over the passages that carry the full flow (displacement, switched, hand valve, check, element;
/// metering only where no loop closes without it), with reservoirs and all nodes open to one
/// taken out. A side is what hangs together of a loop without its machines.
namespace loopwright {

/// Which way the loop's oil goes round: forward when a two-way pump delivers at its port A.
/// One-way pumps always deliver at their outlet.
enum class Direction : std::uint8_t { none, forward, reverse };

/// Which of a loop's sides is at working pressure: a is the side at the first pump's port A (or
/// outlet), b the other.
enum class High : std::uint8_t { neither, a, b };

/// Whether a load that puts only side `pull` under pressure leaves `high` without.
constexpr bool pulled_away(High pull, High high) {
    return pull != High::neither && high != High::neither && pull != high;
}

struct Loop {
    Range pumps = {};      ///< into LoopSet::machines, components in file order
    Range actuators = {};  ///< into LoopSet::machines
    Range edges = {};      ///< into LoopSet::edges
    Range sides = {};      ///< into LoopSet::sides
    Index first_pump = none;
    bool shorted = false;          ///< oil gets round a pump both ways: there are no sides to judge
    bool turns_with_flow = false;  ///< another loop, or none, with the flow the other way
};

struct LoopSide {
    SideRole role = SideRole::main;
    High letter = High::neither;  ///< which of the two it is: high when the state says this letter
    Index loop = none;            ///< into LoopSet::loops
    Index named_after = none;     ///< port
    Range nodes = {};             ///< into LoopSet::nodes
};

struct LoopSet {
    std::vector<Loop> loops = {};  ///< by first pump in file order
    std::vector<LoopSide> sides = {};
    std::vector<Index> machines = {};
    std::vector<Index> edges = {};
    std::vector<Index> nodes = {};
    std::vector<std::uint8_t> on_main = {};  ///< for each node: on a main side of a sound loop
    std::vector<Index> loop_of = {};         ///< for each edge: the loop that keeps it, or none

    std::vector<Index> side_offsets = {};   ///< for each node, into sides_by_node
    std::vector<Index> sides_by_node = {};  ///< into sides; branches too

    std::span<const Index> sides_at(Index node) const {
        return {sides_by_node.data() + side_offsets[node],
                side_offsets[node + 1] - side_offsets[node]};
    }
    std::span<const Index> nodes_of(const LoopSide& side) const {
        return {nodes.data() + side.nodes.begin, side.nodes.size()};
    }
    std::span<const LoopSide> sides_of(const Loop& loop) const {
        return {sides.data() + loop.sides.begin, loop.sides.size()};
    }
    std::span<const Index> pumps_of(const Loop& loop) const {
        return {machines.data() + loop.pumps.begin, loop.pumps.size()};
    }
    std::span<const Index> actuators_of(const Loop& loop) const {
        return {machines.data() + loop.actuators.begin, loop.actuators.size()};
    }
    std::span<const Index> edges_of(const Loop& loop) const {
        return {edges.data() + loop.edges.begin, loop.edges.size()};
    }
};

/// Finds the loops of one region after another and keeps its scratch between them.
class LoopFinder {
  public:
    explicit LoopFinder(const FlowGraph& graph) : graph_(graph), ways_round_(graph) {}

    /// `at_tank[n]`: the node opens to a reservoir both ways through nothing that holds pressure.
    /// `resting[e]`, if not empty: this machine has no flow direction.
    void find(const Region& region, const Standing& standing,
              const std::vector<std::uint8_t>& at_tank, Direction direction,
              std::span<const std::uint8_t> resting, LoopSet& found);

  private:
    /// A loop before it is cut into sides.
    struct Found {
        Index first_pump = none;
        std::vector<Index> edges = {};
    };
    /// The machines' ports on a set of nodes.
    struct Touch {
        Index pump_port = none;
        Index actuator_port = none;
        bool pump_port_is_a = false;
        Range nodes = {};  // into members_
    };

    void collect(bool metering);
    void take(bool metering);
    bool pump_without_loop() const;
    void add(Found& found);
    void drop_loops_inside(std::size_t before);
    bool turns_with_flow(const Found& found) const;
    void take_out_ways_round(Found& found);
    void cut_into_sides(const Found& found, Index loop_index, bool branches);
    Range machines(const Found& found, Part part);
    void index_sides();
    const Edge& edge(Index e) const { return region_->edges[e]; }

    const FlowGraph& graph_;
    const Region* region_ = nullptr;
    const Standing* standing_ = nullptr;
    const std::vector<std::uint8_t>* at_tank_ = nullptr;
    LoopSet* set_ = nullptr;
    Direction direction_ = Direction::none;
    std::span<const std::uint8_t> resting_ = {};
    bool has_metering_ = false;

    PartFinder parts_;
    WaysRound ways_round_;
    DisjointSets sets_;
    std::vector<Found> found_;  // the first found_count_ count
    std::size_t found_count_ = 0;
    std::vector<std::uint8_t> looped_;  // edges of machines that have a loop
    std::vector<Index> kept_;
    std::vector<std::pair<Index, Index>> arcs_;
    std::vector<Index> inside_;
    std::vector<std::pair<Index, Index>> halves_;
    std::vector<std::uint8_t> holds_;
    std::vector<std::uint8_t> wanted_;
    std::vector<Index> found_of_part_;
    std::vector<std::uint8_t> in_wider_;  // edges of loops that close over metering passages only
    // By node: the last loop it was met in, its set's number, its side.
    std::vector<Index> mark_;
    std::vector<Index> slot_;
    std::vector<Index> side_;
    std::vector<Index> nodes_;    // of the loop at hand
    std::vector<Index> members_;  // the same, set by set
    std::vector<Touch> touches_;
};

/// The senses in which a displacement passage lets the loop's oil round: a two-way pump by the
/// direction, all others as they are built.
std::uint8_t displacement_ways(const Edge& edge, Direction direction);

}  // namespace loopwright
