#include <loopwright/render/symbols/conditioner.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe HX1: heat goes outwards.
void draw_cooler(Strokes& strokes) {
    draw_conditioner(strokes, strokes.is_given("bypass"), false);
    strokes.triangle({0, -diamond}, Side::up, small_triangle_side);
    strokes.triangle({0, diamond}, Side::down, small_triangle_side);
}

}  // namespace loopwright
