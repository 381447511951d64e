#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipe LN1. All ports are the dot itself; sides only say which way a line may leave.
void draw_junction(Strokes& strokes) {
    constexpr Side sides[] = {Side::left, Side::right, Side::up, Side::down};
    strokes.circle({0, 0}, metrics::joint_radius, Paint::ink);
    const Component& component = strokes.component();
    for (Index p = component.ports.begin; p < component.ports.end; ++p)
        strokes.anchor(p, {0, 0}, sides[(p - component.ports.begin) % 4]);
}

}  // namespace loopwright
