#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe SV1. Filled where it stands closed: a house convention. Whether it is locked is written
// beside it.
void draw_shut_off_valve(Strokes& strokes) {
    const Paint fill = strokes.is("position", "closed") ? Paint::ink : Paint::none;
    strokes.shape({{-bow_x, -bow_y}, {0, 0}, {-bow_x, bow_y}}, fill);
    strokes.shape({{bow_x, -bow_y}, {0, 0}, {bow_x, bow_y}}, fill);
    strokes.stub("A", {-bow_port, 0}, Side::left, {-bow_x, 0});
    strokes.stub("B", {bow_port, 0}, Side::right, {bow_x, 0});
}

}  // namespace loopwright
