#include <cmath>
#include <numbers>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipes AU1 to AU6: the gas is the open triangle; always upright.
void draw_accumulator(Strokes& strokes) {
    const double r = accumulator_radius;
    for (const double x : {-r, r}) strokes.line({x, -r}, {x, r});
    strokes.arc({0, -r}, r, std::numbers::pi, 2 * std::numbers::pi);
    strokes.arc({0, r}, r, 0, std::numbers::pi);
    strokes.stub("A", {0, accumulator_port}, Side::down, {0, 2 * r});
    strokes.keep_upright();
    if (strokes.is("charge", "spring")) {
        strokes.spring({0, -2 * r}, {0, -separator_y}, spring_half);
        strokes.line({-r, -separator_y}, {r, -separator_y});
        return;
    }
    strokes.shape({{-gas_half, -gas_top}, {gas_half, -gas_top}, {0, -gas_apex}});
    if (strokes.is("separator", "piston")) {
        for (const double y : {-separator_y, separator_y}) strokes.line({-r, y}, {r, y});
    } else if (strokes.is("separator", "diaphragm")) {
        strokes.path({{-r, 0}, {-r / 2, -diaphragm_sag}, {r / 2, -diaphragm_sag}, {r, 0}});
    } else if (strokes.is("separator", "bladder")) {
        // The bag hangs from the upper half circle.
        const double top = -r - std::sqrt(r * r - bag_half * bag_half);
        strokes.path(
            {{-bag_half, top}, {-bag_half, 0}, {0, bag_bottom}, {bag_half, 0}, {bag_half, top}});
    }
}

}  // namespace loopwright
