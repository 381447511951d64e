#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

namespace {

/// What works the clutch, in a frame below it.
void draw_actuation(Strokes& strokes, double left_bar, double right_bar) {
    const bool hydraulic = strokes.is("actuation", "hydraulic");
    if (!hydraulic && !strokes.is("actuation", "electric")) return;
    const double half = frame_length / 2;
    const double top = clutch_frame_top;
    const double bottom = top + frame_height;
    strokes.box(-half, top, half, bottom);
    strokes.line({0, top}, {0, clutch_bar});
    strokes.line({left_bar, clutch_bar}, {right_bar, clutch_bar});
    if (hydraulic)
        strokes.triangle({0, top}, Side::up, small_triangle_side);
    else
        strokes.line({-half, bottom}, {half, top});
    strokes.stub("Z", {0, clutch_port_y}, Side::down, {0, bottom}, Dash::dashed);
}

}  // namespace

// No recipe of its own: two bars across the shafts as in SH2, apart where it is drawn parted.
void draw_clutch(Strokes& strokes) {
    const double bar = strokes.is_yes("engaged") ? bar_half : parted_bar;
    strokes.shaft_lines(-on_shaft_half, -bar);
    strokes.shaft_lines(bar, on_shaft_half);
    for (const double x : {-bar, bar}) strokes.line({x, -clutch_bar}, {x, clutch_bar});
    draw_actuation(strokes, -bar, bar);
    strokes.shaft({-on_shaft_half, 0}, Side::left);
    strokes.shaft({on_shaft_half, 0}, Side::right, true);
    strokes.free_shaft({-on_shaft_half, 0}, Side::left);
    strokes.free_shaft({on_shaft_half, 0}, Side::right, true);
}

}  // namespace loopwright
