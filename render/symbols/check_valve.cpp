#include <loopwright/render/symbols/check.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

CheckEnds draw_check(Strokes& strokes, Point centre, Side towards, bool spring) {
    // Worked out for flow upwards, then laid level where it flows to the right.
    const auto at = [&](double x, double y) {
        return towards == Side::right ? Point{centre.x - y, centre.y + x}
                                      : Point{centre.x + x, centre.y + y};
    };
    strokes.circle(centre, ball_radius);
    strokes.path({at(-seat_arm_x, seat_arm_y), at(0, seat_apex), at(seat_arm_x, seat_arm_y)});
    CheckEnds ends{at(0, seat_apex), at(0, -ball_radius)};
    if (spring) {
        const Point far = at(0, -check_spring_end);
        strokes.spring(ends.outlet, far, check_spring_half);
        ends.outlet = far;
    }
    return ends;
}

// Recipes CV1 to CV4: free flow upwards, the inlet A below.
void draw_check_valve(Strokes& strokes) {
    const CheckEnds ends =
        draw_check(strokes, {0, 0}, Side::up, strokes.is_given("opening-pressure"));
    strokes.stub("A", {0, check_port}, Side::down, ends.inlet);
    strokes.stub("B", {0, -check_port}, Side::up, ends.outlet);
    // Recipe CV3 acts on the seat, CV4 on the ball.
    const double y = strokes.is("pilot", "opens") ? check_pilot_y : -check_pilot_y;
    strokes.stub("X", {check_port, y}, Side::right, {ball_radius, y}, Dash::dashed);
}

}  // namespace loopwright
