#include <loopwright/render/symbols/conditioner.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe FI5: as a filter, in a suction line.
void draw_strainer(Strokes& strokes) {
    draw_conditioner(strokes, strokes.is_given("bypass"), false);
    strokes.line({0, -diamond}, {0, diamond}, Dash::dashed);
}

}  // namespace loopwright
