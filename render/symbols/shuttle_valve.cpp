#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe CV6: the ball lies free between its two seats.
void draw_shuttle_valve(Strokes& strokes) {
    strokes.box(-shuttle_half, -1, shuttle_half, 1);
    for (const double out : {-1.0, 1.0})
        strokes.path({{out * (shuttle_seat - seat_depth), -seat_depth},
                      {out * shuttle_seat, 0},
                      {out * (shuttle_seat - seat_depth), seat_depth}});
    strokes.circle({0, 0}, ball_radius);
    strokes.stub("A", {-valve_port, 0}, Side::left, {-shuttle_seat, 0});
    strokes.stub("B", {valve_port, 0}, Side::right, {shuttle_seat, 0});
    strokes.stub("C", {0, -check_port}, Side::up, {0, -1});
}

}  // namespace loopwright
