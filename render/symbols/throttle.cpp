#include <loopwright/render/symbols/flow_valves.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipes FV1 and FV3: what it passes hangs on viscosity.
void draw_throttle(Strokes& strokes) {
    draw_throttle_arcs(strokes, {0, 0});
    strokes.stub("A", {0, throttle_port}, Side::down, {0, 0});
    strokes.stub("B", {0, -throttle_port}, Side::up, {0, 0});
    if (strokes.is_yes("adjustable")) draw_throttle_arrow(strokes, {0, 0});
}

}  // namespace loopwright
