#pragma once

#include <optional>

#include <loopwright/hydraulics/prime_mover.h>
#include <loopwright/parser/circuit.h>

/// What a circuit says of a prime mover.
namespace loopwright::hydraulics {

/// With which it brakes a load that drives it: its `braking-torque`, else its `braking-power` at
/// its highest speed. Nothing where the circuit says neither.
std::optional<Torque> braking_torque(const Circuit& circuit, const Component& mover);

/// Torque over speed as its table measures it; nothing where it has none.
std::optional<Grid> measured_full_load(const Circuit& circuit, Index mover);

/// Nothing where its power or its speed is not given.
std::optional<PrimeMover> rated_mover(const Circuit& circuit, Index mover);

}  // namespace loopwright::hydraulics
