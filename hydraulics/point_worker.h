#pragma once

#include <span>

#include <loopwright/hydraulics/operating_point.h>

namespace loopwright::hydraulics {

/// One point worked out. `open`: what stands open there (`standings`). The result's id is the
/// circuit's own text.
OperatingPoint work_out(const FlowGraph& graph, const PointFigures& point,
                        std::span<const std::uint8_t> open, bool working);

/// Fills in what a solution means for the circuit.
void read_solution(const FlowGraph& graph, const Model& model, const SteadyState& state,
                   OperatingPoint& out);

}  // namespace loopwright::hydraulics
