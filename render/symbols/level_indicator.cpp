#include <loopwright/render/symbols/instrument.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipes IN4 and IN5.
void draw_level_indicator(Strokes& strokes) {
    draw_instrument(strokes);
    strokes.line({-instrument_radius, 0}, {instrument_radius, 0});
    // A contact above the level; house.
    if (strokes.is_yes("switched")) {
        strokes.line({-contact_x, -contact_y}, {0, -contact_y});
        strokes.line({0, -contact_y}, {contact_x, -contact_y - contact_lift});
    }
}

}  // namespace loopwright
