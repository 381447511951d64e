#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipes SH6, SH7: bars at a shaft that runs through, worked by a cylinder below them. At rest a
// spring holds the bars on; one that pressure applies stands off.
void draw_brake(Strokes& strokes) {
    const bool spring_applied = !strokes.is("applied", "pressure");
    const double piston = spring_applied ? brake_piston : brake_off_piston;
    const double port = spring_applied ? brake_release_y : brake_apply_y;
    strokes.stub("Z", {brake_port_x, port}, Side::left, {-brake_cylinder_half, port});
    strokes.shaft_lines(-on_shaft_half, on_shaft_half);
    for (const double x : {-bar_half, bar_half}) {
        strokes.line({x, -bar_outer}, {x, -bar_inner});
        strokes.line({x, bar_inner}, {x, spring_applied ? piston : bar_outer});
        if (!spring_applied) strokes.line({x, brake_top + 0.5}, {x, piston});
    }
    strokes.box(-brake_cylinder_half, brake_top, brake_cylinder_half, brake_bottom);
    strokes.line({-brake_cylinder_half, piston}, {brake_cylinder_half, piston});
    if (spring_applied) strokes.spring({0, piston}, {0, brake_bottom}, spring_half);
    strokes.shaft({-on_shaft_half, 0}, Side::left);
    strokes.shaft({on_shaft_half, 0}, Side::right);
}

}  // namespace loopwright
