#include <loopwright/render/hoses.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include <loopwright/render/label_room.h>

namespace loopwright {

namespace {

constexpr int quarters = 4;
constexpr double quarter = 0.25;
// The recipe's chord first; a shorter one where nothing else has room.
constexpr int chords[] = {4 * quarters, 3 * quarters, 2 * quarters};
// Straight line between a dot and the end of the run, so that no dot is taken for a joint.
constexpr int straight = quarters;
// Between the run and the room that the arc needs: more than the run itself takes.
constexpr double off = 0.5;
constexpr double clear = 0.25;

bool level(const Wire& wire) { return wire.from.y == wire.to.y; }

int length(const Wire& wire) {
    return std::abs(wire.to.x - wire.from.x) + std::abs(wire.to.y - wire.from.y);
}

/// The point so far along the wire.
GridPoint along(const Wire& wire, int by) {
    const auto step = [by](int from, int to) {
        return from == to ? from : from < to ? from + by : from - by;
    };
    return {step(wire.from.x, wire.to.x), step(wire.from.y, wire.to.y)};
}

/// The stretch of a wire that has room to sag, as near to its middle as may be.
std::optional<Wire> stretch(const Wire& wire, int chord, const LabelRoom& room) {
    const int slack = length(wire) - chord - 2 * straight;
    for (int off_middle = 0; off_middle <= slack / 2; off_middle += quarters)
        for (const int sign : {1, -1}) {
            const int start = straight + slack / (2 * quarters) * quarters + sign * off_middle;
            for (const int sag : {1, -1}) {
                const Wire found{wire.line, along(wire, start), along(wire, start + chord), sag};
                if (room.is_free(arc_room(found))) return found;
            }
        }
    return std::nullopt;
}

/// Cuts the stretch out of the wire.
void bend(std::size_t wire, const Wire& chord, Layout& layout) {
    const GridPoint end = layout.wires[wire].to;
    layout.wires[wire].to = chord.from;
    layout.wires.push_back(chord);
    layout.wires.push_back({chord.line, chord.to, end});
}

bool place_hose(std::vector<std::size_t> runs, LabelRoom& room, Layout& layout) {
    std::stable_sort(runs.begin(), runs.end(), [&](std::size_t a, std::size_t b) {
        return length(layout.wires[a]) > length(layout.wires[b]);
    });
    for (const int chord : chords)
        for (const std::size_t run : runs)
            if (const std::optional<Wire> found = stretch(layout.wires[run], chord, room)) {
                room.take(arc_room(*found));
                bend(run, *found, layout);
                return true;
            }
    return false;
}

}  // namespace

Box arc_room(const Wire& chord) {
    const double x0 = std::min(chord.from.x, chord.to.x) * quarter;
    const double x1 = std::max(chord.from.x, chord.to.x) * quarter;
    const double y0 = std::min(chord.from.y, chord.to.y) * quarter;
    const double y1 = std::max(chord.from.y, chord.to.y) * quarter;
    const double far = hose_sag + clear;
    if (level(chord))
        return chord.sag > 0 ? Box{x0, y0 + off, x1, y0 + far} : Box{x0, y0 - far, x1, y0 - off};
    return chord.sag > 0 ? Box{x0 + off, y0, x0 + far, y1} : Box{x0 - far, y0, x0 - off, y1};
}

GridBox sag_box(const Wire& chord) {
    const int by = chord.sag * static_cast<int>(hose_sag * quarters);
    GridBox box{{std::min(chord.from.x, chord.to.x), std::min(chord.from.y, chord.to.y)},
                {std::max(chord.from.x, chord.to.x), std::max(chord.from.y, chord.to.y)}};
    int& edge = level(chord) ? (by > 0 ? box.to.y : box.from.y) : (by > 0 ? box.to.x : box.from.x);
    edge += by;
    return box;
}

void place_hoses(const Circuit& circuit, const Bending& bending, Layout& layout) {
    if (bending.best.empty() && bending.other.empty()) return;
    LabelRoom room(circuit, layout);
    const auto by_line = [&](const std::vector<std::size_t>& wires) {
        std::vector<std::vector<std::size_t>> runs(circuit.lines.size());
        for (const std::size_t wire : wires) runs[layout.wires[wire].line].push_back(wire);
        return runs;
    };
    const auto best = by_line(bending.best);
    const auto other = by_line(bending.other);
    for (Index line = 0; line < circuit.lines.size(); ++line)
        if (!place_hose(best[line], room, layout)) place_hose(other[line], room, layout);
}

bool hoses_shown(const Circuit& circuit, const Layout& layout) {
    std::vector<char> sags(circuit.lines.size(), 0);
    for (const Wire& wire : layout.wires)
        if (wire.sag != 0) sags[wire.line] = 1;
    return std::all_of(layout.wires.begin(), layout.wires.end(), [&](const Wire& wire) {
        return !circuit.lines[wire.line].flexible || sags[wire.line] != 0;
    });
}

Arc hose_arc(Point from, Point to, double sag) {
    const double half = (std::abs(to.x - from.x) + std::abs(to.y - from.y)) / 2;
    const double depth = std::abs(sag);
    const double radius = (half * half + depth * depth) / (2 * depth);
    const double sign = sag > 0 ? 1.0 : -1.0;
    const Point normal = from.y == to.y ? Point{0.0, sign} : Point{sign, 0.0};
    const double back = radius - depth;
    const double middle = std::atan2(normal.y, normal.x);
    const double reach = std::asin(std::min(1.0, half / radius));
    return {
        .centre = {(from.x + to.x) / 2 - normal.x * back, (from.y + to.y) / 2 - normal.y * back},
        .radius = radius,
        .from = middle - reach,
        .to = middle + reach,
        .full = false};
}

}  // namespace loopwright
