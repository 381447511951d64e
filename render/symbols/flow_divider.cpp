#include <algorithm>

#include <loopwright/render/symbols/machine.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

namespace {

/// Whether the way to a leg leaves that to one farther out, off the middle, where all meet.
bool branches(int leg, int legs, double x) { return leg > 0 && leg + 1 < legs && x != 0.0; }

/// Recipe FV8: a box with a restriction in each branch.
void draw_spool(Strokes& strokes, int legs) {
    const double half = std::max(divider_half, static_cast<double>(legs));
    strokes.box(-half, -valve_half, half, valve_half);
    strokes.line({0, valve_half}, {0, 1});
    for (int i = 0; i < legs; ++i) {
        const double x = port_pitch * i - (legs - 1);
        strokes.path({{0, 1}, {x, 1}, {x, -valve_half}});
        strokes.throttle_mark({x, -valve_half / 3}, 0, 1);
        if (branches(i, legs, x)) strokes.dot({x, 1});
    }
    if (legs > 1) strokes.dot({0, 1});
}

/// Recipe FV10: motors of one size on a common shaft, both ways, since it joins the oil, too.
void draw_rotary(Strokes& strokes, int legs) {
    const auto middle = [&](int i) { return rotary_pitch * i - rotary_pitch / 2 * (legs - 1); };
    const double apex = inward_apex(rotary_radius, small_triangle_side);
    for (int i = 0; i < legs; ++i) {
        strokes.circle({middle(i), 0}, rotary_radius);
        strokes.triangle({middle(i), -apex}, Side::down, small_triangle_side);
        strokes.triangle({middle(i), apex}, Side::up, small_triangle_side);
        strokes.path(
            {{middle(i), rotary_radius}, {middle(i), rotary_joint_y}, {0, rotary_joint_y}});
        if (branches(i, legs, middle(i))) strokes.dot({middle(i), rotary_joint_y});
        if (i == 0) continue;
        for (const double y : {-shaft_half, shaft_half})
            strokes.line({middle(i - 1) + rotary_radius, y}, {middle(i) - rotary_radius, y});
    }
    strokes.dot({0, rotary_joint_y});
}

}  // namespace

// The legs above in the order of the file, P below.
void draw_flow_divider(Strokes& strokes) {
    const Component& component = strokes.component();
    const auto legs = static_cast<int>(component.ports.size()) - 1;
    const bool rotary = strokes.is("design", "rotary");
    const double pitch = rotary ? rotary_pitch : port_pitch;
    for (int i = 0; i < legs; ++i) {
        const double x = pitch * i - pitch / 2 * (legs - 1);
        strokes.stub(component.ports.begin + 1 + static_cast<Index>(i), {x, -valve_port}, Side::up,
                     {x, rotary ? -rotary_radius : -valve_half});
    }
    if (rotary) {
        strokes.stub("P", {0, rotary_port_y}, Side::down, {0, rotary_joint_y});
        draw_rotary(strokes, legs);
    } else {
        strokes.stub("P", {0, valve_port}, Side::down, {0, valve_half});
        draw_spool(strokes, legs);
    }
    strokes.keep_upright();
}

}  // namespace loopwright
