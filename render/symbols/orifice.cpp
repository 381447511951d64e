#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe FV2: does not depend on viscosity. The line passes between the chevrons.
void draw_orifice(Strokes& strokes) {
    strokes.orifice({0, 0});
    strokes.stub("A", {0, check_port}, Side::down, {0, 0});
    strokes.stub("B", {0, -check_port}, Side::up, {0, 0});
}

}  // namespace loopwright
