#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

namespace {

void draw_rod(Strokes& strokes, double from, double to) { strokes.shaft_lines(from, to); }

/// A small rectangle on the piston's face, at each end that is slowed.
void draw_cushions(Strokes& strokes) {
    const bool both = strokes.is("cushion", "both");
    if (both || strokes.is("cushion", "cap"))
        strokes.box(piston_left - cushion_length, -cushion_half, piston_left, cushion_half);
    if (both || strokes.is("cushion", "rod"))
        strokes.box(piston_right, -cushion_half, piston_right + cushion_length, cushion_half);
}

}  // namespace

// Recipes CY1 to CY4, about the rod's axis.
void draw_cylinder(Strokes& strokes) {
    const bool two_rods = strokes.count("rods") == 2;
    const double end = cylinder_half_length;
    const double half = cylinder_half_height;
    strokes.stub("A", {-cylinder_port_x, cylinder_port_y}, Side::down, {-cylinder_port_x, half});
    strokes.stub("B", {cylinder_port_x, cylinder_port_y}, Side::down, {cylinder_port_x, half});
    strokes.box(-end, -half, end, half);
    strokes.line({piston_left, -half}, {piston_left, half});
    strokes.line({piston_right, -half}, {piston_right, half});
    draw_cushions(strokes);
    draw_rod(strokes, piston_right, rod_end);
    if (two_rods) draw_rod(strokes, piston_left, -rod_end);
    if (strokes.is("action", "single") && strokes.is_yes("spring-return"))
        strokes.spring({piston_right, 0}, {end, 0}, spring_half * 2);
    strokes.shaft({rod_end, 0}, Side::right);
    if (two_rods) strokes.shaft({-rod_end, 0}, Side::left);
}

}  // namespace loopwright
