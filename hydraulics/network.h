#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/hydraulics/brake.h>
#include <loopwright/hydraulics/cylinder.h>
#include <loopwright/hydraulics/element.h>
#include <loopwright/hydraulics/flow_control.h>
#include <loopwright/hydraulics/gear.h>
#include <loopwright/hydraulics/loads.h>
#include <loopwright/hydraulics/machine.h>
#include <loopwright/hydraulics/measured_drop.h>
#include <loopwright/hydraulics/measured_machine.h>
#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/orifice.h>
#include <loopwright/hydraulics/pipe.h>
#include <loopwright/hydraulics/prime_mover.h>
#include <loopwright/hydraulics/stroke_control.h>
#include <loopwright/hydraulics/valves.h>

/// The steady state of a circuit as equations, free of the circuit's words.
///
/// Node     where oil has one pressure; what flows in flows out
/// Branch   a way for oil between two nodes whose flow is an unknown of its own
/// Machine  displaces oil between two nodes and leaks to a third; stands on a shaft
/// Shaft    turns at one speed; the torques on it are in balance
/// All in SI; pressures in Pa over the atmosphere.
namespace loopwright::hydraulics {

/// Of each what is known from the start is fixed: the reservoir's pressure, the speed of a prime
/// mover that nothing slows down.
struct Node {
    std::optional<double> pressure = {};
    double guess = 0.0;
};
struct Shaft {
    std::optional<double> speed = {};  ///< rad/s
    double guess = 0.0;
    /// A rod's: the speed is in m/s and what stands for a torque is a force.
    bool straight = false;
    Index mover = none;  ///< the prime mover that turns it, where its torque is an unknown

    /// By a prime mover, or held still.
    bool is_driven() const { return speed.has_value() || mover != none; }
};

/// Loses pressure by its flow.
struct Resistance {
    enum class Law : std::uint8_t { pipe, orifice, element, measured };
    Law law = Law::pipe;
    Pipe pipe = {};
    Orifice orifice = {};
    Element element = {};
    std::optional<MeasuredDrop> measured = {};
};
struct Spring {
    SpringValve valve = {};
    Index chamber = none;  ///< node of its spring chamber
    Index pilot = none;    ///< node; none: it has none
};
/// The share of a flow that a leg of a divider takes.
struct Leg {
    Index divider = none;
    double share = 0.0;
};

struct Branch {
    enum class Kind : std::uint8_t { resistance, spring, control, leg };
    Kind kind = Kind::resistance;
    Index from = none;
    Index to = none;
    Resistance resistance = {};
    Spring spring = {};
    FlowControl control = {};
    Leg leg = {};
};

/// Shares the oil of its common port over legs: the branches that name it, in the order of the
/// table. A spool throttles all legs but that with the highest pressure; of a rotary divider the
/// legs are coupled machines, so that the powers are in balance.
struct Divider {
    bool rotary = false;
    Index node = none;
};

struct NetworkMachine {
    Machine machine = {};
    std::optional<MeasuredMachine> measured = {};  ///< its tables, in place of `machine`
    Index a = none;                                ///< node
    Index b = none;                                ///< node
    Index housing = none;
    Index shaft = none;
    double stroke = 1.0;  ///< set displacement over the largest; its sign says the sense
    StrokeControl control = {};
    Index sensed = none;  ///< node whose pressure a load-sensing control feels
    Index mover = none;   ///< the prime mover that an anti-stall control spares
};

inline MachineLaw law_of(const NetworkMachine& one, const MachineState& state) {
    return one.measured ? machine_law(*one.measured, state) : machine_law(one.machine, state);
}

/// A prime mover whose speed gives way to its load, or that some pump's control spares.
struct NetworkMover {
    PrimeMover mover = {};
    Index shaft = none;
    Speed setting = {};   ///< of its governor
    bool spared = false;  ///< some control takes strokes back for it
};

/// A cylinder: speed of the rod and forces in place of those of a shaft.
struct NetworkCylinder {
    Cylinder cylinder = {};
    Index a = none;
    Index b = none;  ///< none: single-acting
    Index shaft = none;
};

struct NetworkGear {
    Gear gear = {};
    Index in = none;   ///< shaft
    Index out = none;  ///< shaft
};

/// What stands on a shaft and takes torque from it.
struct NetworkLoad {
    enum class Kind : std::uint8_t { constant, opposing, vehicle, brake };
    Kind kind = Kind::constant;
    Index shaft = none;
    Torque torque = {};  ///< of a constant or opposing one
    Vehicle vehicle = {};
    Brake brake = {};
    Index brake_node = none;
    /// The search begins with the brake off, as who moves a machine does: from standstill it would
    /// hold the shaft, and what turns it would take the pressure that is to release it.
    bool off_at_first = false;
};

struct Network {
    Oil oil = {};
    std::vector<Node> nodes = {};
    std::vector<Shaft> shafts = {};
    std::vector<Branch> branches = {};
    std::vector<Divider> dividers = {};
    std::vector<NetworkMachine> machines = {};
    std::vector<NetworkCylinder> cylinders = {};
    std::vector<NetworkMover> movers = {};
    std::vector<NetworkGear> gears = {};
    std::vector<NetworkLoad> loads = {};
};

/// Which unknowns a network has and which of them each equation reads: networks of one shape have
/// the same `Equations` but for figures.
std::vector<Index> shape_of(const Network& network);

}  // namespace loopwright::hydraulics
