#include <loopwright/render/symbols/conditioner.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

namespace {

/// Dashed taps before and behind the element to a pressure gauge or a switch.
void draw_indicator(Strokes& strokes, bool electrical) {
    const double r = indicator_radius;
    const double y = indicator_y;
    for (const double side : {-1.0, 1.0}) {
        strokes.dot({side * tap_x, 0});
        strokes.path({{side * tap_x, 0}, {side * tap_x, y}, {side * r, y}}, Dash::dashed);
    }
    if (!electrical) {
        strokes.circle({0, y}, r);
        const double reach = 0.6 * r;
        strokes.line({-reach, y + reach}, {reach, y - reach});
        strokes.head({-reach, y + reach}, {reach, y - reach}, 0.7);
        return;
    }
    // An open contact: two terminals, the blade off the second.
    strokes.box(-r, y - r, r, y + r);
    strokes.line({0, y + r}, {0, y + 0.4 * r});
    strokes.line({0, y + 0.4 * r}, {-0.5 * r, y - 0.45 * r});
    strokes.line({0, y - 0.4 * r}, {0, y - r});
}

}  // namespace

// Recipes FI1 to FI4: a dashed line across the flow.
void draw_filter(Strokes& strokes) {
    draw_conditioner(strokes, strokes.is_given("bypass"), strokes.is_yes("one-way"));
    strokes.line({0, -diamond}, {0, diamond}, Dash::dashed);
    if (!strokes.is("clogging-indicator", "none"))
        draw_indicator(strokes, strokes.is("clogging-indicator", "electrical"));
}

}  // namespace loopwright
