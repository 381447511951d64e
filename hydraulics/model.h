#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/duty.h>
#include <loopwright/hydraulics/fluid.h>
#include <loopwright/hydraulics/network.h>

/// The network of a circuit at a duty point, and what each of its parts stands for.
namespace loopwright::hydraulics {

/// Joins two ports without any loss that is known: a line without bore and length, an open valve.
struct Link {
    Index from = none;     ///< port
    Index to = none;       ///< port
    Index line = none;     ///< of the circuit; none: through a component
    Index passage = none;  ///< then of this passage
};

/// Of a figure that is not given, what is taken in its place.
struct Assumption {
    std::string of;    ///< "F1.pressure-drop"
    std::string text;  ///< "no loss", "0.61"
    std::string source;
};

/// A branch's place in the circuit.
struct BranchOwner {
    Index line = none;
    Index passage = none;
    Index from = none;  ///< port
    Index to = none;    ///< port
};

/// The ports of a machine or cylinder; none: it has no such one, or leaks inside.
struct MachineOwner {
    Index component = none;
    Index a = none;
    Index b = none;
    Index housing = none;
};

struct Model {
    Network network = {};
    std::vector<Index> node_of_port = {};    ///< none: no oil of the network stands there
    std::vector<Index> shaft_of_shaft = {};  ///< network's by circuit's
    // In the order of the network's tables:
    std::vector<BranchOwner> branches = {};
    std::vector<MachineOwner> machines = {};
    std::vector<MachineOwner> cylinders = {};
    std::vector<Index> movers = {};             ///< components
    std::vector<Index> gears = {};              ///< components
    std::vector<Index> loads = {};              ///< components
    std::vector<std::string> node_names = {};   ///< by node: a port on it
    std::vector<std::string> shaft_names = {};  ///< by shaft
    std::vector<Link> links = {};
    std::vector<Assumption> assumptions = {};
    /// Data without which there is nothing to solve, as "P1.displacement"; then the network is not
    /// whole.
    std::vector<std::string> missing = {};
    /// What the point and the shafts ask for that cannot all be; then there is nothing to solve.
    std::string contradiction = {};

    bool is_whole() const { return missing.empty() && contradiction.empty(); }
};

/// `open`: of each passage in which senses it stands open at the point (`standings`).
Model model_of(const FlowGraph& graph, const PointFigures& point,
               std::span<const std::uint8_t> open, const Oil& oil);

/// Puts shafts, machines and loads as they are at another point into a whole model: one of the same
/// circuit, its valves standing the same, at the same oil temperature. The ways of the oil stay,
/// and with them node names and branches; assumptions and missing data are those of the shafts
/// only.
void renew_shafts(Model& model, const FlowGraph& graph, const PointFigures& point);

}  // namespace loopwright::hydraulics
