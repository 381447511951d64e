#include <loopwright/render/symbols/instrument.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN1.
void draw_gauge(Strokes& strokes) {
    draw_instrument(strokes);
    strokes.arrow({-pointer, pointer}, {pointer, -pointer});
}

}  // namespace loopwright
