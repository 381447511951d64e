#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include <loopwright/graph/drives.h>
#include <loopwright/graph/pipes.h>
#include <loopwright/parser/circuit.h>

/// The circuit as a graph of ways for oil.
///
/// Joint    ports that lines and junctions (and housings, and reservoirs) make one
/// Node     a joint as one region sees it
/// Edge     a passage through a component between two nodes, of any class but `joined`
/// FlowArc      an edge seen from one of its ends
/// Region   nodes that hang together without passing through a reservoir. A way for oil starts or
///          ends at a reservoir and never passes through one, so regions are decided one by one;
///          each has its own copy of a reservoir that it touches.
///
/// One graph for all states: what stands open in a state is a byte for each edge (`Standing`).
namespace loopwright {

struct Edge {
    Index from = none;       ///< node of the region
    Index to = none;         ///< node of the region; equal to `from` where the component is shorted
    Index passage = none;    ///< of the circuit
    Index component = none;  ///< of the circuit
    double opening = 0.0;    ///< Pa; NaN: needs one and none is given
    PassageClass passage_class = PassageClass::joined;
    Shift shift = Shift::never;
    bool both_ways = false;
    bool bypass = false;
    bool locked = false;          ///< hand valves only
    bool for_towing = false;      ///< opened to move the machine with the prime mover stopped
    bool meant_for_loop = false;  ///< a two-way pump, or a machine declared closed-loop
    Part part = Part::plumbing;
};

struct FlowArc {
    Index to = none;
    Index edge : 31 = 0;
    Index backward : 1 = 0;  ///< against the passage's own sense
};

/// One byte an edge: in which senses it stands open.
using Standing = std::vector<std::uint8_t>;
inline constexpr std::uint8_t open_forward = 1;
inline constexpr std::uint8_t open_backward = 2;

/// The senses in which an edge that is open lets oil through.
inline std::uint8_t ways_of(const Edge& edge) {
    return edge.both_ways ? open_forward | open_backward : open_forward;
}

inline bool stands_open(const Standing& standing, const FlowArc& arc) {
    return (standing[arc.edge] & (arc.backward != 0 ? open_backward : open_forward)) != 0;
}

/// The same against the arc: whether oil gets from its far end to its near one.
inline bool stands_open_back(const Standing& standing, const FlowArc& arc) {
    return (standing[arc.edge] & (arc.backward != 0 ? open_forward : open_backward)) != 0;
}

/// A line, and where it stands in a region.
struct LineEnd {
    Index line = none;
    Index port = none;
    Index node = none;
};

struct Region {
    Index node_count = 0;
    std::span<const Index> joints = {};               ///< for each node its joint
    std::span<const Index> reservoirs = {};           ///< nodes that are reservoirs
    std::span<const std::uint8_t> is_reservoir = {};  ///< for each node
    std::span<const Edge> edges = {};
    std::span<const Index> machines = {};     ///< the edges through working chambers, ascending
    std::span<const Index> arc_offsets = {};  ///< node_count + 1
    std::span<const FlowArc> arcs = {};
    std::span<const Index> components = {};  ///< with a passage here, in file order
    std::span<const Index> first_edge = {};  ///< for each of `components`, and one more
    /// Ports on its nodes, reservoirs apart, of components without passages (brakes, accumulators,
    /// instruments), each in one region.
    std::span<const Index> guests = {};
    std::span<const LineEnd> lines = {};  ///< each line on its nodes, once

    std::span<const FlowArc> arcs_of(Index node) const {
        return arcs.subspan(arc_offsets[node], arc_offsets[node + 1] - arc_offsets[node]);
    }
};

/// Immutable once made; keeps a reference to the circuit.
class FlowGraph {
  public:
    explicit FlowGraph(const Circuit& circuit);
    FlowGraph(const FlowGraph&) = delete;
    FlowGraph& operator=(const FlowGraph&) = delete;

    const Circuit& circuit() const { return circuit_; }
    const std::vector<Region>& regions() const { return regions_; }

    Index joint_count() const { return joint_count_; }
    /// Equal for ports that are one joint.
    Index joint_of(Index port) const { return joint_of_port_[port]; }
    const std::vector<Index>& joint_of_port() const { return joint_of_port_; }
    /// The node of a port in the region its component belongs to, or is a guest of.
    Index node_of(Index port) const { return node_of_port_[port]; }
    /// The region that a component's passages are in; `none` for one without passages.
    Index region_of(Index component) const { return region_of_component_[component]; }
    const Drives& drives() const { return drives_; }
    /// On a shaft that a prime mover turns, through gearboxes and engaged clutches too.
    bool turned(Index component) const { return drives_.turned(component); }
    /// The part that a component plays here: a pump/motor unit is a pump where a prime mover turns
    /// it, else an actuator.
    Part part(Index component) const { return parts_[component]; }
    /// All components of a kind with that part, in file order.
    std::span<const Index> components_with(Part part) const {
        const auto p = static_cast<std::size_t>(part);
        return {by_part_.data() + by_part_offsets_[p],
                by_part_offsets_[p + 1] - by_part_offsets_[p]};
    }

    /// The lines that join at a port: seldom more than one (inside and outside an assembly).
    std::span<const Index> lines_of(Index port) const {
        return {port_lines_.data() + port_line_offsets_[port],
                port_line_offsets_[port + 1] - port_line_offsets_[port]};
    }

    bool on_reservoir(Index port) const { return reservoir_joint_[joint_of_port_[port]] != 0; }

    /// Whether an accumulator stands on a joint.
    bool has_accumulator(Index joint) const {
        return has_accumulators() && accumulator_joint_[joint] != 0;
    }
    bool has_accumulators() const { return !accumulator_joint_.empty(); }

    /// What gas keeps over the oil of a reservoir's joint, Pa over ambient: of several reservoirs
    /// the least; 0 where one of them is vented.
    double gas_pressure(Index joint) const {
        return has_pressurised() ? gas_pressure_[joint] : 0.0;
    }
    bool has_pressurised() const { return !gas_pressure_.empty(); }

    /// The ports of a joint in file order.
    std::span<const Index> ports_of(Index joint) const {
        return {joint_ports_.data() + joint_port_offsets_[joint],
                joint_port_offsets_[joint + 1] - joint_port_offsets_[joint]};
    }

    /// What lines and fittings join, made when first asked for.
    const Pipes& pipes() const {
        if (!pipes_) pipes_.emplace(circuit_);
        return *pipes_;
    }

    /// Visits of nodes and edges since construction, for the tests of cost.
    mutable std::uint64_t work = 0;

  private:
    void find_parts();
    void find_joints();
    void find_gas_pressures();
    void find_regions();
    void fill_regions();
    void find_lines(std::span<const Index> region_of_joint, std::span<const Index> node_of_joint);

    static constexpr std::size_t part_count = static_cast<std::size_t>(Part::device) + 1;

    const Circuit& circuit_;
    Drives drives_;
    std::vector<Part> parts_;     // by component
    std::vector<Index> by_part_;  // components
    std::array<Index, part_count + 1> by_part_offsets_ = {};
    Index joint_count_ = 0;
    std::vector<Index> joint_of_port_;
    std::vector<std::uint8_t> reservoir_joint_;
    std::vector<std::uint8_t> accumulator_joint_;  // empty where there is none
    std::vector<double> gas_pressure_;             // by joint; empty where all are vented
    std::vector<Index> joint_port_offsets_;
    std::vector<Index> joint_ports_;
    std::vector<Index> port_line_offsets_;
    std::vector<Index> port_lines_;
    std::vector<Index> region_of_component_;
    std::vector<Index> node_of_port_;
    mutable std::optional<Pipes> pipes_;

    // Storage that the regions' spans look into.
    std::vector<Index> joints_;
    std::vector<Index> reservoirs_;
    std::vector<std::uint8_t> is_reservoir_;
    std::vector<Edge> edges_;
    std::vector<Index> machines_;
    std::vector<Index> arc_offsets_;
    std::vector<FlowArc> arcs_;
    std::vector<Index> components_;
    std::vector<Index> first_edge_;
    std::vector<Index> guests_;
    std::vector<LineEnd> lines_;
    std::vector<Region> regions_;
};

}  // namespace loopwright
