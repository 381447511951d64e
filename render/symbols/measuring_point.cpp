#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN11: a branch with a closed connection; the circle is house.
void draw_measuring_point(Strokes& strokes) {
    strokes.circle({0, -cross_half}, cross_half);
    for (const double side : {-1.0, 1.0})
        strokes.line({-point_half, -cross_half - side * point_half},
                     {point_half, -cross_half + side * point_half});
    strokes.stub("P", {0, check_port}, Side::down, {0, 0});
}

}  // namespace loopwright
