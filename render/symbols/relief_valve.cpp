#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

namespace {

void draw_adjustment(Strokes& strokes, double middle, double half) {
    if (strokes.is_yes("adjustable")) strokes.arrow({middle - half, half}, {middle + half, -half});
}

}  // namespace

// Recipes PV1, PV1f and PV2. The inlet P above with the pilot taken from it, the arrow on the
// pilot's side (closed at rest), the spring on the other.
void draw_relief_valve(Strokes& strokes) {
    const double half = valve_half;
    strokes.stub("P", {0, -valve_port}, Side::up, {0, -half});
    strokes.stub("T", {0, valve_port}, Side::down, {0, half});
    strokes.box(-half, -half, half, half);
    strokes.arrow({relief_arrow_x, -half}, {relief_arrow_x, half});
    strokes.dot({0, -pilot_reach});
    strokes.path({{0, -pilot_reach}, {-pilot_reach, -pilot_reach}, {-pilot_reach, 0}, {-half, 0}},
                 Dash::dashed);
    if (strokes.is("operation", "pilot")) {
        // A frame with the pilot stage: its triangle acts on the main stage, its spring on it.
        const double right = half + frame_length;
        const double base = half + small_triangle_side;
        strokes.box(half, -frame_height / 2, right, frame_height / 2);
        strokes.triangle({half, 0}, Side::left, small_triangle_side);
        strokes.spring({base, 0}, {right, 0}, spring_half);
        draw_adjustment(strokes, (base + right) / 2, framed_adjustment_half);
        return;
    }
    strokes.spring({half, 0}, {half + spring_length, 0}, spring_half);
    draw_adjustment(strokes, half + spring_length / 2, adjustment_half);
}

}  // namespace loopwright
