#include <loopwright/render/symbols/pressure_valve.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipes PV6, open at rest and piloted from its outlet, and PV7 with the return port beside P.
void draw_reducing_valve(Strokes& strokes) {
    if (!strokes.has_port("T")) {
        draw_pressure_valve(strokes, {.above = "P",
                                      .below = "A",
                                      .open_at_rest = true,
                                      .piloted_from_below = true,
                                      .adjustable = strokes.is_yes("adjustable")});
        return;
    }
    const double half = valve_half;
    const double x = port_pitch / 2;
    strokes.stub("A", {0, -valve_port}, Side::up, {0, -half});
    strokes.stub("P", {-x, valve_port}, Side::down, {-x, half});
    strokes.stub("T", {x, valve_port}, Side::down, {x, half});
    strokes.box(-half, -half, half, half);
    strokes.arrow({-x, half}, {0, -half});
    strokes.blocked({x, half}, -1);
    strokes.dot({0, -pilot_reach});
    strokes.path({{0, -pilot_reach}, {-pilot_reach, -pilot_reach}, {-pilot_reach, 0}, {-half, 0}},
                 Dash::dashed);
    strokes.spring({half, 0}, {half + spring_length, 0}, spring_half);
    if (strokes.is_yes("adjustable")) {
        const double middle = half + spring_length / 2;
        strokes.arrow({middle - adjustment_half, adjustment_half},
                      {middle + adjustment_half, -adjustment_half});
    }
}

}  // namespace loopwright
