#include <algorithm>
#include <cmath>

#include <loopwright/render/label_room.h>
#include <loopwright/render/label_text.h>

namespace loopwright {

namespace {

constexpr double quarter = 0.25;
// A text beside an upright run may stand over by so much at each end.
constexpr double overhang = 0.5;

double down_to_quarter(double v) { return std::floor(v / quarter) * quarter; }

/// Beside the longest run that has room; where none has, apart with a leader.
void place_line_id(const Circuit& circuit, Index line, Layout& layout, LabelRoom& room) {
    const LabelText text = line_text(circuit, circuit.lines[line]);
    std::vector<const Wire*> runs;
    for (const Wire& wire : layout.wires)
        if (wire.line == line && wire.sag == 0) runs.push_back(&wire);
    const auto length = [](const Wire* w) {
        return std::abs(w->to.x - w->from.x) + std::abs(w->to.y - w->from.y);
    };
    std::stable_sort(runs.begin(), runs.end(),
                     [&](const Wire* a, const Wire* b) { return length(a) > length(b); });
    for (const Wire* wire : runs) {
        const bool level = wire->from.y == wire->to.y;
        const double x0 = std::min(wire->from.x, wire->to.x) * quarter;
        const double x1 = std::max(wire->from.x, wire->to.x) * quarter;
        const double y0 = std::min(wire->from.y, wire->to.y) * quarter;
        const double y1 = std::max(wire->from.y, wire->to.y) * quarter;
        const double span = level ? x1 - x0 - text.width : y1 - y0 - text.height;
        if (span < (level ? 1.0 : -2 * overhang)) continue;
        for (double along = 0.0; along <= std::max(0.0, span / 2); along += 1.0)
            for (const double sign : {1.0, -1.0})
                for (const bool first : {true, false}) {
                    const double mid = down_to_quarter(span / 2 + sign * along);
                    const Box box = beside_run({x0 + (level ? mid : 0.0), y0 + (level ? 0.0 : mid)},
                                               level, first, text);
                    if (!room.is_free(with_air(box, level))) continue;
                    room.put_here({.line = line, .right_aligned = !level && !first}, box);
                    return;
                }
    }
    if (runs.empty()) return;
    const double x = (runs.front()->from.x + runs.front()->to.x) * quarter / 2;
    const double y = (runs.front()->from.y + runs.front()->to.y) * quarter / 2;
    room.put_apart({.label = {.line = line},
                    .width = text.width,
                    .height = text.height,
                    .target = {x, y, x, y}});
}

}  // namespace

void place_line_labels(const Circuit& circuit, Layout& layout, LabelRoom& room) {
    for (Index line = 0; line < circuit.lines.size(); ++line)
        place_line_id(circuit, line, layout, room);
}

}  // namespace loopwright
