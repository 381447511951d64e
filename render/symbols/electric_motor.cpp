#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe EN2: a circle with M is an electric motor.
void draw_electric_motor(Strokes& strokes) {
    strokes.circle({0, 0}, converter_radius);
    strokes.text({0, 0}, "M", large_letter_mm);
    strokes.shaft({converter_radius, 0}, Side::right);
    strokes.free_shaft({converter_radius, 0}, Side::right);
    strokes.keep_upright();
}

}  // namespace loopwright
