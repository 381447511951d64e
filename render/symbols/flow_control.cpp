#include <loopwright/render/symbols/flow_valves.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe FV5: a throttle in a box, the small arrow beside it says that it is compensated. From A,
// above, to B.
void draw_flow_control(Strokes& strokes) {
    const double half = valve_half;
    strokes.box(-half, -half, half, half);
    draw_throttle_arcs(strokes, {0, 0});
    strokes.line({0, -half}, {0, half});
    strokes.arrow({compensation_x, compensation_tail}, {compensation_x, compensation_head});
    strokes.stub("A", {0, -valve_port}, Side::up, {0, -half});
    strokes.stub("B", {0, valve_port}, Side::down, {0, half});
    if (strokes.is_yes("check")) draw_checked_frame(strokes);
    if (strokes.is_yes("adjustable")) draw_throttle_arrow(strokes, {0, 0});
}

}  // namespace loopwright
