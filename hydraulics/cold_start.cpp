#include <loopwright/hydraulics/point_worker.h>

namespace loopwright::hydraulics {

std::optional<OperatingPoint> cold_start(const Circuit& circuit) {
    const std::optional<PointFigures> figures = PointFigures::cold_start(circuit);
    if (!figures) return std::nullopt;
    const FlowGraph graph(circuit);
    return work_out(graph, *figures, standings(graph, {&*figures, 1}).front(), false);
}

}  // namespace loopwright::hydraulics
