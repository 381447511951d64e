#include <loopwright/render/symbols/flow_valves.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe FV4: throttled from A, above, to B; free back.
void draw_throttle_check(Strokes& strokes) {
    draw_throttle_arcs(strokes, {0, 0});
    strokes.stub("A", {0, -valve_port}, Side::up, {0, 0});
    strokes.stub("B", {0, valve_port}, Side::down, {0, 0});
    draw_checked_frame(strokes);
    if (strokes.is_yes("adjustable")) draw_throttle_arrow(strokes, {0, 0});
}

}  // namespace loopwright
