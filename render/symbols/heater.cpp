#include <loopwright/render/symbols/conditioner.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe HX4: heat goes inwards.
void draw_heater(Strokes& strokes) {
    draw_conditioner(strokes, false, false);
    strokes.triangle({0, -heater_apex}, Side::down, small_triangle_side);
    strokes.triangle({0, heater_apex}, Side::up, small_triangle_side);
}

}  // namespace loopwright
