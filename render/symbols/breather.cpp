#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe RS7: a filter's diamond of 2, the dashed line across the way of the air, which leaves at
// an open triangle (LN5); a spring on the diamond where it holds pressure in the reservoir (house).
void draw_breather(Strokes& strokes) {
    const double half = breather_diamond;
    strokes.shape({{-half, 0}, {0, -half}, {half, 0}, {0, half}});
    strokes.line({-half, 0}, {half, 0}, Dash::dashed);
    const double mouth = -half - vent_stem;
    strokes.line({0, -half}, {0, mouth});
    strokes.shape({{-vent_half, mouth}, {vent_half, mouth}, {0, mouth - vent_height}});
    if (strokes.is_given("opening-pressure"))
        strokes.spring({half, 0}, {half + breather_spring, 0}, check_spring_half);
    strokes.stub("P", {0, breather_port}, Side::down, {0, half});
    strokes.keep_upright();
}

}  // namespace loopwright
