#include <loopwright/render/symbols/instrument.h>

#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

void draw_instrument(Strokes& strokes) {
    strokes.circle({0, 0}, instrument_radius);
    strokes.stub("P", {0, valve_port}, Side::down, {0, instrument_radius});
    strokes.keep_upright();
}

}  // namespace loopwright
