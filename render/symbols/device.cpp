#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// No item of the standard: a box with its ports in turn on the left and on the right, in the order
// of the file, and a question mark where its inside is unknown; house.
void draw_device(Strokes& strokes) {
    const Component& component = strokes.component();
    const auto ports = static_cast<int>(component.ports.size());
    const int rows = ports < 2 ? 1 : (ports + 1) / 2;
    for (int i = 0; i < ports; ++i) {
        const int row = i / 2;
        const double y = port_pitch * row - (rows - 1);
        const double side = i % 2 == 0 ? -1.0 : 1.0;
        strokes.stub(component.ports.begin + static_cast<Index>(i), {side * valve_port, y},
                     i % 2 == 0 ? Side::left : Side::right, {side * valve_half, y});
    }
    strokes.box(-valve_half, -rows, valve_half, rows);
    if (strokes.is("inside", "unknown")) strokes.text({0, 0}, "?", large_letter_mm);
}

}  // namespace loopwright
