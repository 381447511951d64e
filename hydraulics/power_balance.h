#pragma once

#include <vector>

#include <loopwright/hydraulics/operating_point.h>

namespace loopwright::hydraulics {

/// For each shaft the torque that its prime mover gives, or, where it has none, that its loads and
/// brakes take; N.m, of a rod N.
std::vector<double> shaft_torques(const Model& model, const SteadyState& state);

/// Power that each component and line turns into heat, W; those that lose nothing are left out.
std::vector<Loss> losses(const Circuit& circuit, const Model& model, const SteadyState& state);

/// Power that a gearbox loses, W; `gear` into the network's table.
double lost_in_gear(const Model& model, const SteadyState& state, std::size_t gear);

/// Largest flow that is not accounted for at a node, over the largest flow.
double mass_residual(const Model& model, const SteadyState& state);

/// What prime movers put in, less loads, losses and what reservoirs under pressure take, over the
/// largest of these.
double energy_residual(const Model& model, const SteadyState& state);

}  // namespace loopwright::hydraulics
