#include <loopwright/render/symbols/valve_row.h>

#include <cmath>

#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

namespace {

double outwards(RowEnd end) { return end == RowEnd::left ? -1.0 : 1.0; }

void draw_frame(Strokes& strokes, double at, double out, double y) {
    strokes.box(std::min(at, at + out * frame_length), y - frame_height / 2,
                std::max(at, at + out * frame_length), y + frame_height / 2);
}

}  // namespace

void draw_boxes(Strokes& strokes, const ValveRow& row) {
    for (int i = -row.left; i <= row.right; ++i)
        strokes.box((i - 0.5) * row.width, -valve_half, (i + 0.5) * row.width, valve_half);
}

void draw_row_spring(Strokes& strokes, const ValveRow& row, RowEnd end, double y) {
    const double at = row.end(end);
    strokes.spring({at, y}, {at + outwards(end) * spring_length, y}, spring_half);
}

// The stroke falls towards the valve: acting on it.
void draw_solenoid(Strokes& strokes, const ValveRow& row, RowEnd end, double y) {
    const double at = row.end(end);
    const double out = outwards(end);
    draw_frame(strokes, at, out, y);
    strokes.line({at + out * frame_length, y - frame_height / 2}, {at, y + frame_height / 2});
}

void draw_pilot_frame(Strokes& strokes, const ValveRow& row, RowEnd end, double y) {
    const double at = row.end(end);
    draw_frame(strokes, at, outwards(end), y);
    strokes.triangle({at, y}, end == RowEnd::left ? Side::right : Side::left, small_triangle_side);
}

// A rod to a pivot and the lever across it, a knob at its upper end.
void draw_lever(Strokes& strokes, const ValveRow& row, RowEnd end, double y) {
    const double at = row.end(end);
    const double out = outwards(end);
    const double pivot = at + out * 2.0;
    const Point knob{pivot + out * 0.9, y - 1.8};
    const double length = std::hypot(knob.x - pivot, knob.y - y);
    strokes.line({at, y}, {pivot, y});
    strokes.line({pivot - out * 0.35, y + 0.7}, {knob.x + (pivot - knob.x) * knob_radius / length,
                                                 knob.y + (y - knob.y) * knob_radius / length});
    strokes.circle(knob, knob_radius);
}

// A rod and a slanted plate with a short foot.
void draw_pedal(Strokes& strokes, const ValveRow& row, RowEnd end, double y) {
    const double at = row.end(end);
    const double out = outwards(end);
    strokes.line({at, y}, {at + out * 2.0, y});
    strokes.path({{at + out * 1.6, y - 1.2}, {at + out * 2.4, y + 1.2}, {at + out * 1.7, y + 1.2}});
}

void draw_detent(Strokes& strokes, const ValveRow& row, RowEnd end, double y, int positions,
                 int held) {
    const double at = row.end(end);
    const double out = outwards(end);
    const double quarter = detent_pitch / 4;
    std::vector<Point> points{{at, y}};
    for (int i = 0; i < positions; ++i) {
        const double notch = at + out * detent_pitch * (i + 1);
        points.push_back({notch - out * quarter, y});
        points.push_back({notch, y + detent_depth});
        points.push_back({notch + out * quarter, y});
    }
    points.push_back({at + out * detent_pitch * (positions + 0.75), y});
    strokes.path(std::move(points));
    const double notch = at + out * detent_pitch * (held + 1);
    strokes.line({notch, y + detent_depth}, {notch, y + detent_depth + 0.8});
}

}  // namespace loopwright
