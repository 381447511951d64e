#pragma once

#include <vector>

#include <loopwright/hydraulics/operating_point.h>

namespace loopwright::hydraulics {

/// Torque that a load takes from its shaft, N.m, of a rod N; positive against positive speed.
double torque_of(const Network& network, const NetworkLoad& load, const SteadyState& state);

/// For each shaft the torque that its prime mover gives, or, where it has none, that its loads and
/// brakes take; N.m, of a rod N.
std::vector<double> shaft_torques(const Model& model, const SteadyState& state);

/// The same with what it passes on to gearboxes where it has no prime mover: from its machines to
/// all else on it, below nothing where that drives them.
/// `torques`: the former.
std::vector<double> carried_torques(const Model& model, const SteadyState& state,
                                    std::vector<double> torques);

/// Power that each component and line turns into heat, W; those that lose nothing are left out.
std::vector<Loss> losses(const Circuit& circuit, const Model& model, const SteadyState& state);

/// All that goes into the oil, and all that gearboxes lose, W; however little a part has of it.
double lost_in_oil(const Model& model, const SteadyState& state);
double lost_in_gears(const Model& model, const SteadyState& state);

/// Power that a branch, a machine, a gearbox of the network's tables loses, W; and a cylinder.
double lost_in_branch(const Model& model, const SteadyState& state, std::size_t i);
double lost_in_machine(const Model& model, const SteadyState& state, std::size_t i);
double lost_in_gear(const Model& model, const SteadyState& state, std::size_t i);
double lost_in_cylinder(const NetworkCylinder& one, const SteadyState& state);

/// What a cylinder does in a steady state.
CylinderLaw law_of(const NetworkCylinder& one, const SteadyState& state);

/// Largest flow that is not accounted for at a node, over the largest flow.
double mass_residual(const Model& model, const SteadyState& state);

/// What prime movers put in, less loads, losses and what reservoirs under pressure take, over the
/// largest of these.
double energy_residual(const Model& model, const SteadyState& state);

}  // namespace loopwright::hydraulics
