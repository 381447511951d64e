#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN9: an open contact against an adjustable spring.
void draw_pressure_switch(Strokes& strokes) {
    const double half = valve_half;
    strokes.box(-half, -half, half, half);
    strokes.line({0, -1.5}, {0, -0.5});
    strokes.line({0, 1.0}, {-0.8, -0.5});
    strokes.line({0, 1.0}, {0, 1.5});
    strokes.stub("P", {0, valve_port}, Side::down, {0, half});
    strokes.spring({half, 0}, {half + spring_length, 0}, spring_half);
    const double middle = half + spring_length / 2;
    strokes.arrow({middle - adjustment_half, adjustment_half},
                  {middle + adjustment_half, -adjustment_half});
    strokes.keep_upright();
}

}  // namespace loopwright
