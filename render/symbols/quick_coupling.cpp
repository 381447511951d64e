#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipes CV8 and CV9: seats towards the joint, so that a parted half holds its line.
void draw_quick_coupling(Strokes& strokes) {
    const std::string_view valves = strokes.circuit().choice(strokes.component(), "valves");
    const double gap = strokes.is_yes("joined") ? 0.0 : parted_gap;
    for (const double side : {-1.0, 1.0}) {
        // Two cups with their backs to the lines.
        const double x = side * (cup_x + gap);
        strokes.path({{x - side * cup_depth, -cup_half},
                      {x, -cup_half / 2},
                      {x, cup_half / 2},
                      {x - side * cup_depth, cup_half}});
        double end = x;
        const bool closes = valves == "both" || (valves == "one" && side < 0);
        const double seat = x + side * coupling_seat;
        if (closes) {
            strokes.path({{seat + side * seat_depth, -seat_depth},
                          {seat, 0},
                          {seat + side * seat_depth, seat_depth}});
            // Joined, the ball is off its seat.
            const double ball = seat + side * (ball_radius + (gap > 0.0 ? 0.2 : 0.6));
            strokes.circle({ball, 0}, ball_radius);
            strokes.line({x, 0}, {seat, 0});
            end = ball + side * ball_radius;
        }
        strokes.stub(side < 0 ? "A" : "B", {side * coupling_port, 0},
                     side < 0 ? Side::left : Side::right, {end, 0});
    }
}

}  // namespace loopwright
