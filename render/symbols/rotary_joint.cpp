#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe CO1 as two pairs of bars, one turning in the other, with the lines through; house.
void draw_rotary_joint(Strokes& strokes) {
    const Component& component = strokes.component();
    const auto pairs = static_cast<int>(component.ports.size()) / 2;
    for (int i = 0; i < pairs; ++i) {
        const double y = port_pitch * i - (pairs - 1);
        const Index first = component.ports.begin + 2 * static_cast<Index>(i);
        strokes.stub(first, {-valve_port, y}, Side::left, {-joint_inner, y});
        strokes.stub(first + 1, {valve_port, y}, Side::right, {joint_inner, y});
        strokes.line({-joint_inner, y}, {joint_inner, y});
    }
    const double reach = pairs;
    for (const double side : {-1.0, 1.0})
        for (const double x : {joint_inner, joint_outer})
            strokes.path({{side * x, -reach}, {side * x, reach}});
}

}  // namespace loopwright
