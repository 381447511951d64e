#include <loopwright/render/symbols/conditioner.h>

#include <loopwright/render/symbols/check.h>
#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

ConditionerAxis draw_conditioner(Strokes& strokes, bool bypass, bool one_way) {
    // A check behind the diamond pushes all that follows it outwards.
    const double further = one_way ? 2.0 : 0.0;
    ConditionerAxis axis{.outlet = diamond,
                         .branch = bypass ? branch_x + further : 0.0,
                         .port = (bypass ? branched_port : diamond_port) + further};
    strokes.shape({{-diamond, 0}, {0, -diamond}, {diamond, 0}, {0, diamond}});
    if (one_way) {
        const CheckEnds ends = draw_check(strokes, {series_check_x, 0}, Side::right, false);
        strokes.line({diamond, 0}, ends.inlet);
        axis.outlet = ends.outlet.x;
    }
    strokes.stub("A", {bypass ? -branched_port : -diamond_port, 0}, Side::left, {-diamond, 0});
    strokes.stub("B", {axis.port, 0}, Side::right, {axis.outlet, 0});
    if (bypass) {
        const double middle = (axis.branch - branch_x) / 2;
        const CheckEnds ends = draw_check(strokes, {middle, branch_y}, Side::right, true);
        strokes.dot({-branch_x, 0});
        strokes.path({{-branch_x, 0}, {-branch_x, branch_y}, ends.inlet});
        strokes.path({ends.outlet, {axis.branch, branch_y}, {axis.branch, 0}});
        strokes.dot({axis.branch, 0});
    }
    return axis;
}

}  // namespace loopwright
