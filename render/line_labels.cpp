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

int length(const StraightRun& run) {
    return std::abs(run.to.x - run.from.x) + std::abs(run.to.y - run.from.y);
}

/// The longest piece of a run between the edges of frames: a leader to where a line passes an edge
/// is taken for that of a port's letter.
StraightRun between_frames(const StraightRun& run, const Layout& layout) {
    const bool level = run.from.y == run.to.y;
    const auto along = [level](GridPoint p) { return level ? p.x : p.y; };
    std::vector<int> cuts{along(run.from), along(run.to)};
    const int least = std::min(cuts[0], cuts[1]);
    const int most = std::max(cuts[0], cuts[1]);
    for (const FrameBox& frame : layout.frames)
        for (const GridPoint edge : {frame.box.from, frame.box.to})
            if (along(edge) > least && along(edge) < most) cuts.push_back(along(edge));
    std::sort(cuts.begin(), cuts.end());
    std::size_t longest = 1;
    for (std::size_t i = 2; i < cuts.size(); ++i)
        if (cuts[i] - cuts[i - 1] > cuts[longest] - cuts[longest - 1]) longest = i;
    StraightRun piece = run;
    (level ? piece.from.x : piece.from.y) = cuts[longest - 1];
    (level ? piece.to.x : piece.to.y) = cuts[longest];
    return piece;
}

/// Beside the longest run that has room; where none has, apart with a leader.
void place_line_id(const Circuit& circuit, Index line, const Layout& layout, LabelRoom& room) {
    const LabelText text = line_text(circuit, circuit.lines[line]);
    std::vector<StraightRun> runs;
    for (const Wire& wire : layout.wires)
        if (wire.line == line && wire.sag == 0) runs.push_back({wire.from, wire.to});
    longest_first(runs);
    if (put_beside(runs, text, {.line = line}, room) || runs.empty()) return;
    const Box target = middle_of(between_frames(runs.front(), layout));
    room.put_apart(
        {.label = {.line = line}, .width = text.width, .height = text.height, .target = target});
}

}  // namespace

void longest_first(std::vector<StraightRun>& runs) {
    std::stable_sort(runs.begin(), runs.end(), [](const StraightRun& a, const StraightRun& b) {
        return length(a) > length(b);
    });
}

Box middle_of(const StraightRun& run) {
    const double x = (run.from.x + run.to.x) * quarter / 2;
    const double y = (run.from.y + run.to.y) * quarter / 2;
    return {x, y, x, y};
}

bool put_beside(std::span<const StraightRun> runs, const LabelText& text, LabelBox label,
                LabelRoom& room) {
    for (const StraightRun& run : runs) {
        const bool level = run.from.y == run.to.y;
        const double x0 = std::min(run.from.x, run.to.x) * quarter;
        const double x1 = std::max(run.from.x, run.to.x) * quarter;
        const double y0 = std::min(run.from.y, run.to.y) * quarter;
        const double y1 = std::max(run.from.y, run.to.y) * quarter;
        const double span = level ? x1 - x0 - text.width : y1 - y0 - text.height;
        if (span < (level ? 1.0 : -2 * overhang)) continue;
        for (double along = 0.0; along <= std::max(0.0, span / 2); along += 1.0)
            for (const double sign : {1.0, -1.0})
                for (const bool first : {true, false}) {
                    const double mid = down_to_quarter(span / 2 + sign * along);
                    const Box box = beside_run({x0 + (level ? mid : 0.0), y0 + (level ? 0.0 : mid)},
                                               level, first, text);
                    if (!room.is_free(with_air(box, level))) continue;
                    label.right_aligned = !level && !first;
                    room.put_here(std::move(label), box);
                    return true;
                }
    }
    return false;
}

void place_line_labels(const Circuit& circuit, const Layout& layout, LabelRoom& room) {
    for (Index line = 0; line < circuit.lines.size(); ++line)
        place_line_id(circuit, line, layout, room);
}

}  // namespace loopwright
