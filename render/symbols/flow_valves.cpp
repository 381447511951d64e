#include <loopwright/render/symbols/flow_valves.h>

#include <numbers>

#include <loopwright/render/symbols/check.h>
#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

void draw_throttle_arcs(Strokes& strokes, Point at) {
    constexpr double third = std::numbers::pi / 3;
    strokes.arc({at.x - throttle_x, at.y}, throttle_radius, -third, third);
    strokes.arc({at.x + throttle_x, at.y}, throttle_radius, 2 * third, 4 * third);
}

void draw_throttle_arrow(Strokes& strokes, Point at) {
    strokes.arrow({at.x - throttle_arrow, at.y + throttle_arrow},
                  {at.x + throttle_arrow, at.y - throttle_arrow});
}

void draw_checked_frame(Strokes& strokes) {
    const double x = flow_check_x;
    const CheckEnds ends =
        draw_check(strokes, {x, 0}, Side::up, strokes.is_given("check-opening-pressure"));
    strokes.path({{0, pilot_reach}, {x, pilot_reach}, ends.inlet});
    strokes.path({ends.outlet, {x, -pilot_reach}, {0, -pilot_reach}});
    strokes.dot({0, pilot_reach});
    strokes.dot({0, -pilot_reach});
}

}  // namespace loopwright
