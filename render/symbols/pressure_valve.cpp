#include <loopwright/render/symbols/pressure_valve.h>

#include <loopwright/render/symbols/check.h>
#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

namespace {

void draw_adjustment(Strokes& strokes, bool adjustable, double middle, double half) {
    if (adjustable) strokes.arrow({middle - half, half}, {middle + half, -half});
}

/// The spring, or the frame of a pilot stage with its triangle and its own spring.
void draw_spring_side(Strokes& strokes, const PressureValve& valve) {
    const double half = valve_half;
    if (valve.pilot_stage) {
        const double right = half + frame_length;
        const double base = half + small_triangle_side;
        strokes.box(half, -frame_height / 2, right, frame_height / 2);
        strokes.triangle({half, 0}, Side::left, small_triangle_side);
        strokes.spring({base, 0}, {right, 0}, spring_half);
        draw_adjustment(strokes, valve.adjustable, (base + right) / 2, framed_adjustment_half);
        return;
    }
    strokes.spring({half, 0}, {half + spring_length, 0}, spring_half);
    draw_adjustment(strokes, valve.adjustable, half + spring_length / 2, adjustment_half);
}

/// Beside the valve, on the side where no pilot comes in.
void draw_check_beside(Strokes& strokes, bool on_the_right) {
    const double x = on_the_right ? beside_right : beside_left;
    const CheckEnds ends =
        draw_check(strokes, {x, 0}, Side::up, strokes.is_given("check-opening-pressure"));
    strokes.path({{0, beside_y}, {x, beside_y}, ends.inlet});
    strokes.path({ends.outlet, {x, -beside_y}, {0, -beside_y}});
    strokes.dot({0, beside_y});
    strokes.dot({0, -beside_y});
}

}  // namespace

void draw_pressure_valve(Strokes& strokes, const PressureValve& valve) {
    const double half = valve_half;
    const double port = valve.check ? checked_port : valve_port;
    const bool external = strokes.has_port("X");
    strokes.stub(valve.above, {0, -port}, Side::up, {0, -half});
    strokes.stub(valve.below, {0, port}, Side::down, {0, half});
    strokes.box(-half, -half, half, half);
    const double x = valve.open_at_rest ? 0.0 : relief_arrow_x;
    strokes.arrow({x, -half}, {x, half});
    if (external) strokes.stub("X", {-valve_port, 1.0}, Side::left, {-half, 1.0}, Dash::dashed);
    if (!external || valve.piloted_by_both) {
        const double y = valve.piloted_from_below ? pilot_reach : -pilot_reach;
        strokes.dot({0, y});
        strokes.path({{0, y}, {-pilot_reach, y}, {-pilot_reach, 0}, {-half, 0}}, Dash::dashed);
    }
    if (strokes.has_port("Y")) {
        strokes.line({half, drain_y}, {drain_x, drain_y}, Dash::dashed);
        const double end = valve.check ? checked_drain_port : valve_port;
        strokes.stub("Y", {drain_x, end}, Side::down, {drain_x, drain_y}, Dash::dashed);
    }
    if (valve.check) draw_check_beside(strokes, external);
    draw_spring_side(strokes, valve);
}

}  // namespace loopwright
