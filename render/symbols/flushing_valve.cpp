#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/symbols/valve_row.h>

namespace loopwright {

using namespace metrics;

namespace {

constexpr double port_x = port_pitch / 2;

/// A and B through restrictions to F.
void draw_open_centre(Strokes& strokes) {
    constexpr double meet = 0.75;
    for (const double x : {-port_x, port_x}) {
        strokes.path({{x, -valve_half}, {x, meet}, {0, meet}});
        strokes.throttle_mark({x, -valve_half / 3}, 0, 1);
    }
    strokes.line({0, meet}, {0, valve_half});
    strokes.dot({0, meet});
}

/// The pilot from a side's port to the end of the row on that side, where it pushes.
void draw_pilot(Strokes& strokes, const ValveRow& row, RowEnd end) {
    const double out = end == RowEnd::left ? -1.0 : 1.0;
    const double at = row.end(end);
    const double base = at + out * small_triangle_side * 0.8660254037844386;
    const double aside = at + out * (small_triangle_side + 0.5);
    strokes.dot({out * port_x, flushing_pilot_y});
    strokes.path({{out * port_x, flushing_pilot_y},
                  {aside, flushing_pilot_y},
                  {aside, -pilot_y},
                  {base, -pilot_y}},
                 Dash::dashed);
    strokes.triangle({at, -pilot_y}, end == RowEnd::left ? Side::right : Side::left,
                     small_triangle_side);
}

}  // namespace

// Recipe FL1. The pilot of the higher side pushes its box onto the ports, and that box leads the
// other, lower side to F.
void draw_flushing_valve(Strokes& strokes) {
    const ValveRow row{.left = 1, .right = 1};
    strokes.stub("A", {-port_x, -valve_port}, Side::up, {-port_x, -valve_half});
    strokes.stub("B", {port_x, -valve_port}, Side::up, {port_x, -valve_half});
    strokes.stub("F", {0, valve_port}, Side::down, {0, valve_half});
    draw_boxes(strokes, row);
    strokes.arrow({-row.width + port_x, -valve_half}, {-row.width, valve_half});
    strokes.blocked({-row.width - port_x, -valve_half}, 1);
    strokes.arrow({row.width - port_x, -valve_half}, {row.width, valve_half});
    strokes.blocked({row.width + port_x, -valve_half}, 1);
    if (strokes.is("centre", "open")) {
        draw_open_centre(strokes);
    } else {
        strokes.blocked({-port_x, -valve_half}, 1);
        strokes.blocked({port_x, -valve_half}, 1);
        strokes.blocked({0, valve_half}, -1);
    }
    for (const RowEnd end : {RowEnd::left, RowEnd::right}) {
        draw_row_spring(strokes, row, end, 0);
        draw_pilot(strokes, row, end);
    }
}

}  // namespace loopwright
