#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// What a motor turns is no item of the standard: a box with a word, as recipe SH5.
void draw_load(Strokes& strokes) {
    const double half = load_half;
    strokes.box(-half, -half, half, half);
    strokes.text({0, 0}, "load", letter_mm);
    strokes.shaft({-half, 0}, Side::left);
    strokes.free_shaft({-half, 0}, Side::left);
    strokes.keep_upright();
}

}  // namespace loopwright
