#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe HX6: cold, so that the oil goes past the cooler; warm oil pushes it over.
void draw_thermostatic_bypass(Strokes& strokes) {
    const double half = valve_half;
    const double x = port_pitch / 2;
    strokes.stub("A", {0, valve_port}, Side::down, {0, half});
    strokes.stub("B", {-x, -valve_port}, Side::up, {-x, -half});
    strokes.stub("C", {x, -valve_port}, Side::up, {x, -half});
    strokes.box(-half, -half, half, half);
    strokes.arrow({0, half}, {x, -half});
    strokes.blocked({-x, -half}, 1);
    strokes.spring({half, 0}, {half + spring_length, 0}, spring_half);
    // The bulb in the frame that acts against the spring.
    strokes.box(-half - frame_length, -frame_height / 2, -half, frame_height / 2);
    strokes.line({-half - bulb_stem, 0}, {-half, 0});
    strokes.circle({-half - bulb_stem, 0}, bulb_radius, Paint::ink);
}

}  // namespace loopwright
