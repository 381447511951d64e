#include <cmath>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe MO4: half a circle with a flat side, triangles inwards, the shaft out of the flat side.
void draw_semi_rotary_actuator(Strokes& strokes) {
    constexpr double quarter = 1.5707963267948966;
    const double x = semi_rotary_port_x;
    const double rim = std::sqrt(converter_radius * converter_radius - x * x);
    const double apex = semi_rotary_base - small_triangle_side * std::sqrt(3.0) / 2;
    strokes.stub("A", {x, -machine_port}, Side::up, {x, -rim});
    strokes.stub("B", {x, machine_port}, Side::down, {x, rim});
    strokes.arc({0, 0}, converter_radius, quarter, 3 * quarter);
    strokes.line({0, -converter_radius}, {0, converter_radius});
    strokes.triangle({x, -apex}, Side::down, small_triangle_side);
    strokes.triangle({x, apex}, Side::up, small_triangle_side);
    strokes.shaft_lines(0, converter_radius);
    strokes.shaft({converter_radius, 0}, Side::right);
    strokes.free_shaft({converter_radius, 0}, Side::right);
}

}  // namespace loopwright
