#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// No recipe of its own: a box that leads P to CF at rest, held there by its spring and pushed back
// by the pressure at CF; house.
void draw_priority_valve(Strokes& strokes) {
    const double half = valve_half;
    const double x = port_pitch / 2;
    strokes.stub("P", {0, valve_port}, Side::down, {0, half});
    strokes.stub("CF", {-x, -priority_port}, Side::up, {-x, -half});
    strokes.stub("EF", {x, -priority_port}, Side::up, {x, -half});
    strokes.box(-half, -half, half, half);
    strokes.arrow({0, half}, {-x, -half});
    strokes.blocked({x, -half}, 1);
    strokes.dot({-x, -pilot_reach});
    strokes.path({{-x, -pilot_reach}, {-pilot_reach, -pilot_reach}, {-pilot_reach, 0}, {-half, 0}},
                 Dash::dashed);
    strokes.spring({half, 0}, {half + spring_length, 0}, spring_half);
    if (strokes.has_port("LS")) {
        strokes.line({half, drain_y}, {drain_x, drain_y}, Dash::dashed);
        strokes.stub("LS", {drain_x, valve_port}, Side::down, {drain_x, drain_y}, Dash::dashed);
    }
}

}  // namespace loopwright
