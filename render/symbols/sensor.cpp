#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN10: what it measures above, its signal below.
void draw_sensor(Strokes& strokes) {
    const double half = valve_half;
    strokes.box(-half, -half, half, half);
    strokes.line({-half, half}, {half, -half});
    const std::string_view what = strokes.circuit().choice(strokes.component(), "measures");
    const std::string_view letter = what == "pressure"      ? "p"
                                    : what == "temperature" ? "T"
                                    : what == "flow"        ? "q"
                                    : what == "level"       ? "h"
                                                            : "c";
    strokes.text({-1, -1}, letter, letter_mm);
    strokes.text({1, 1}, "U", letter_mm);
    strokes.stub("P", {0, valve_port}, Side::down, {0, half});
    strokes.keep_upright();
}

}  // namespace loopwright
