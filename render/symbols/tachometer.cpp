#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN7: on the shaft, which goes on behind it.
void draw_tachometer(Strokes& strokes) {
    strokes.circle({0, 0}, instrument_radius);
    strokes.text({0, 0}, "n", letter_mm);
    strokes.shaft({-instrument_radius, 0}, Side::left);
    strokes.shaft({instrument_radius, 0}, Side::right);
    strokes.free_shaft({-instrument_radius, 0}, Side::left);
    strokes.keep_upright();
}

}  // namespace loopwright
