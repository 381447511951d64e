#include <loopwright/render/symbols/instrument.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN3.
void draw_thermometer(Strokes& strokes) {
    draw_instrument(strokes);
    strokes.line({0, -stem_top}, {0, stem_bottom});
    strokes.circle({0, stem_bottom}, bulb_radius, Paint::ink);
}

}  // namespace loopwright
