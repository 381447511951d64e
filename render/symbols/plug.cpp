#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe LN4.
void draw_plug(Strokes& strokes) {
    for (const double side : {-1.0, 1.0})
        strokes.line({-cross_half, -side * cross_half}, {cross_half, side * cross_half});
    strokes.stub("P", {0, check_port}, Side::down, {0, 0});
}

}  // namespace loopwright
