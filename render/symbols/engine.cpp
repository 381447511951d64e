#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe EN3: a square with M is a prime mover that is no electric motor.
void draw_engine(Strokes& strokes) {
    const double half = prime_mover_half;
    strokes.box(-half, -half, half, half);
    strokes.text({0, 0}, "M", large_letter_mm);
    strokes.shaft({half, 0}, Side::right);
    strokes.free_shaft({half, 0}, Side::right);
    strokes.keep_upright();
}

}  // namespace loopwright
