#pragma once

#include <optional>
#include <span>
#include <vector>

#include <loopwright/hydraulics/fluid.h>
#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/standing.h>
#include <loopwright/hydraulics/steady_state.h>

namespace loopwright::hydraulics {

/// What warms the oil of a loop, and what it exchanges.
struct LoopHeat {
    Index first_pump = none;  ///< component that the loop is named after
    double heat = 0.0;        ///< W into its oil
    double exchange = 0.0;    ///< m3/s that comes in, and as much goes out
    /// K, its oil mixed well. Nothing where none is exchanged: it is warmed on and on.
    std::optional<double> temperature = {};
};

/// What a machine, a line or the passage of a component has of a loop's heat, W, or of what comes
/// into it, m3/s.
struct LoopTerm {
    Index machine = none;  ///< component
    Index line = none;
    Index passage = none;
    double value = 0.0;
};
struct LoopTerms {
    std::vector<LoopTerm> heat = {};
    std::vector<LoopTerm> exchange = {};
};

/// The terms of one of `loops`.
LoopTerms loop_terms(const Model& model, const SteadyState& state, std::span<const PointLoop> loops,
                     std::size_t loop);

/// Heat of each loop at an oil temperature of the reservoir, K. Into its oil go the losses of its
/// machines but for those that warm their housings' oil (`heat_into_housing`), and those of the
/// lines and valves between its sides and into them. What comes in comes at the reservoir's
/// temperature; flushing and leakage go out at the loop's own. Loops that share oil are one body.
/// Coolers inside a loop are not counted, on the safe side.
std::vector<LoopHeat> loop_heats(const Model& model, const SteadyState& state, const Fluid& fluid,
                                 std::span<const PointLoop> loops, double oil);

}  // namespace loopwright::hydraulics
