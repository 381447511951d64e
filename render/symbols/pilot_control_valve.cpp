#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// A directional valve that takes every position between its own (recipe DV6): two lines along the
// row say so.
void draw_pilot_control_valve(Strokes& strokes) {
    draw_directional_valve(strokes);
    const double half = valve_half;
    const double left = -3 * half;
    const double right = strokes.count("outlets") == 2 ? 3 * half : half;
    for (const double y : {-half - infinite_gap, half + infinite_gap})
        strokes.line({left, y}, {right, y});
}

}  // namespace loopwright
