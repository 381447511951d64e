#include <cmath>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe MP1: the circle of a pump with a lever.
void draw_hand_pump(Strokes& strokes) {
    strokes.stub("S", {0, machine_port}, Side::down, {0, converter_radius});
    strokes.stub("P", {0, -machine_port}, Side::up, {0, -converter_radius});
    strokes.circle({0, 0}, converter_radius);
    strokes.triangle({0, -converter_radius}, Side::up, triangle_side);
    const Point knob{lever_x, lever_y};
    const double length = std::hypot(knob.x - converter_radius, knob.y);
    strokes.line({converter_radius, 0},
                 {knob.x - (knob.x - converter_radius) * knob_radius / length,
                  knob.y - knob.y * knob_radius / length});
    strokes.circle(knob, knob_radius);
}

}  // namespace loopwright
