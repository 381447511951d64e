#include <loopwright/render/label_room.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <stdexcept>
#include <utility>

#include <loopwright/render/hoses.h>
#include <loopwright/render/label_text.h>

namespace loopwright {

namespace {

constexpr double quarter = 0.25;
constexpr double clear = 0.3;         // M, round every text
constexpr double stroke_half = 0.25;  // M, kept free on each side of a line
constexpr double leader_half = 0.1;
// By so much nearer to its own symbol than to any other a text must stand.
constexpr double clearly = 0.25;
// How far off a text with a leader may stand: the nearer the better.
constexpr double apart[] = {16.0, 64.0, 1024.0};
// Room for text round the whole drawing.
constexpr double surroundings = 40.0;

Box grown(const Box& box, double by) {
    return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}
double down_to_quarter(double v) { return std::floor(v / quarter) * quarter; }

/// The straight way between two boxes.
double gap(const Box& a, const Box& b) {
    const double dx = std::max({a.left - b.right, b.left - a.right, 0.0});
    const double dy = std::max({a.top - b.bottom, b.top - a.bottom, 0.0});
    return std::hypot(dx, dy);
}

bool is_mark(const DrawnSymbol& symbol) { return symbol.placed.port != none; }

GridBox grid_box(const Box& box) {
    return {{static_cast<int>(std::lround(box.left / quarter)),
             static_cast<int>(std::lround(box.top / quarter))},
            {static_cast<int>(std::ceil(box.right / quarter - 1e-6)),
             static_cast<int>(std::ceil(box.bottom / quarter - 1e-6))}};
}

Point place_of(const DrawnSymbol& symbol) {
    return {symbol.placed.at.x * quarter, symbol.placed.at.y * quarter};
}

Box body_of(const DrawnSymbol& symbol) {
    const Point at = place_of(symbol);
    return moved(symbol.shape.body, at.x, at.y);
}

/// What the stub of a port covers.
Box stub_of(const DrawnSymbol& symbol, const PortAnchor& port) {
    const Box body = body_of(symbol);
    const double x = place_of(symbol).x + port.at.x;
    const double y = place_of(symbol).y + port.at.y;
    const double into_x = std::clamp(x, body.left, body.right);
    const double into_y = std::clamp(y, body.top, body.bottom);
    return grown(
        {std::min(x, into_x), std::min(y, into_y), std::max(x, into_x), std::max(y, into_y)},
        stroke_half);
}

Box extent_of(const std::vector<DrawnSymbol>& symbols, const Layout& layout) {
    Box box{0, 0, 0, 0};
    const auto widen = [&](const Box& other) {
        box.left = std::min(box.left, other.left);
        box.top = std::min(box.top, other.top);
        box.right = std::max(box.right, other.right);
        box.bottom = std::max(box.bottom, other.bottom);
    };
    for (const DrawnSymbol& symbol : symbols) widen(body_of(symbol));
    for (const Wire& wire : layout.wires) widen(run_box(wire.from, wire.to));
    return grown(box, surroundings);
}

/// Whether a straight leader meets a box: cut to the box's span, side by side (Liang, Barsky).
bool passes(const std::vector<GridPoint>& leader, const Box& box) {
    const double x = leader.front().x * quarter;
    const double y = leader.front().y * quarter;
    const double dx = leader.back().x * quarter - x;
    const double dy = leader.back().y * quarter - y;
    double from = 0.0;
    double to = 1.0;
    const auto cut = [&](double start, double step, double least, double most) {
        if (step == 0.0) {
            if (start <= least || start >= most) to = -1.0;
            return;
        }
        const double a = (least - start) / step;
        const double b = (most - start) / step;
        from = std::max(from, std::min(a, b));
        to = std::min(to, std::max(a, b));
    };
    cut(x, dx, box.left, box.right);
    cut(y, dy, box.top, box.bottom);
    return from < to;
}

std::vector<GridPoint> leader_between(const Box& text, const Box& body) {
    const auto nearest = [](const Box& box, double x, double y) {
        return Point{std::clamp(x, box.left, box.right), std::clamp(y, box.top, box.bottom)};
    };
    const Point from = nearest(text, (body.left + body.right) / 2, (body.top + body.bottom) / 2);
    const Point to = nearest(body, from.x, from.y);
    const auto grid = [](Point q) {
        return GridPoint{static_cast<int>(std::lround(q.x / quarter)),
                         static_cast<int>(std::lround(q.y / quarter))};
    };
    return {grid(from), grid(to)};
}

/// Whether a point is on a run.
template <class LevelOrUpright>
bool holds(const LevelOrUpright& run, GridPoint point) {
    return std::min(run.from.x, run.to.x) <= point.x && point.x <= std::max(run.from.x, run.to.x) &&
           std::min(run.from.y, run.to.y) <= point.y && point.y <= std::max(run.from.y, run.to.y);
}

}  // namespace

Box snapped(const Box& box) {
    const double left = down_to_quarter(box.left);
    const double top = down_to_quarter(box.top);
    return {left, top, left + box.right - box.left, top + box.bottom - box.top};
}

Box moved(const Box& box, double x, double y) {
    return {box.left + x, box.top + y, box.right + x, box.bottom + y};
}

Box letter_box(const Circuit& circuit, Point at, const PortAnchor& port) {
    const std::string letter(circuit.ports[port.port].letter);
    const double half = text_width_m(letter, label_text_height) / 2;
    return {at.x + port.letter.x - half, at.y + port.letter.y - 1.1, at.x + port.letter.x + half,
            at.y + port.letter.y + 0.1};
}

Box run_box(GridPoint from, GridPoint to) {
    return grown({std::min(from.x, to.x) * quarter, std::min(from.y, to.y) * quarter,
                  std::max(from.x, to.x) * quarter, std::max(from.y, to.y) * quarter},
                 stroke_half);
}

Box beside_run(Point at, bool level, bool first, const LabelText& text) {
    constexpr double off = 0.5;
    const double width = std::ceil(text.width / quarter) * quarter;
    const double height = std::round(text.height / quarter) * quarter;
    if (level && first)
        return {at.x, at.y - stroke_half - height, at.x + width, at.y - stroke_half};
    if (level) return {at.x, at.y + off, at.x + width, at.y + off + height};
    if (first) return {at.x + off, at.y, at.x + off + width, at.y + height};
    return {at.x - off - width, at.y, at.x - off, at.y + height};
}

Box with_air(const Box& box, bool level) {
    constexpr double air = 0.5;
    return level ? Box{box.left - air, box.top, box.right + air, box.bottom}
                 : Box{box.left, box.top - air, box.right, box.bottom + air};
}

LabelRoom::LabelRoom(const Circuit& circuit, Layout& layout)
    : LabelRoom(circuit, layout, drawn_symbols(circuit, layout)) {}

LabelRoom::LabelRoom(const Circuit& circuit, Layout& layout,
                     const std::vector<DrawnSymbol>& symbols)
    : LabelRoom(circuit, layout, symbols, extent_of(symbols, layout)) {}

LabelRoom::LabelRoom(const Circuit& circuit, Layout& layout, std::vector<DrawnSymbol> symbols,
                     const Box& extent)
    : circuit_(circuit),
      layout_(layout),
      symbols_(std::move(symbols)),
      extent_(extent),
      room_(extent) {
    for (const DrawnSymbol& symbol : symbols_) take_symbol(symbol);
    take_runs();
}

void LabelRoom::take_symbol(const DrawnSymbol& symbol) {
    room_.take(grown(body_of(symbol), stroke_half));
    for (const PortAnchor& port : symbol.shape.ports) {
        room_.take(stub_of(symbol, port));
        if (!is_mark(symbol)) room_.take(letter_box(circuit_, place_of(symbol), port));
    }
}

void LabelRoom::take_runs() {
    for (const Wire& wire : layout_.wires) {
        room_.take(run_box(wire.from, wire.to));
        if (wire.sag != 0) room_.take(arc_room(wire));
    }
    for (const ShaftRun& run : layout_.shafts) room_.take(grown(run_box(run.from, run.to), 0.25));
    for (const Joint& joint : layout_.joints) room_.take(grown(run_box(joint.at, joint.at), 0.25));
    for (const FrameBox& frame : layout_.frames) {
        const GridPoint a = frame.box.from;
        const GridPoint b = frame.box.to;
        for (const Box& side : {run_box(a, {b.x, a.y}), run_box({a.x, b.y}, b),
                                run_box(a, {a.x, b.y}), run_box({b.x, a.y}, b)})
            room_.take(side);
    }
}

void LabelRoom::take_labels() {
    for (const LabelBox& label : layout_.labels) {
        room_.take({label.box.from.x * quarter, label.box.from.y * quarter,
                    label.box.to.x * quarter, label.box.to.y * quarter});
        take_leader(label.leader);
    }
}

bool LabelRoom::put(const WantedLabel& wanted, const Box& box, std::vector<GridPoint> leader) {
    if (!room_.is_free(grown(box, clear))) return false;
    const double middle = (box.left + box.right) / 2;
    LabelBox label = wanted.label;
    label.right_aligned = middle < wanted.axis - 2.0 && box.right <= wanted.axis + 1.0;
    label.leader = std::move(leader);
    take_leader(label.leader);
    put_here(std::move(label), box);
    return true;
}

/// No later text stands on a leader.
void LabelRoom::take_leader(const std::vector<GridPoint>& leader) {
    if (leader.empty()) return;
    const GridPoint a = leader.front();
    const GridPoint b = leader.back();
    const int steps = std::max(std::abs(b.x - a.x), std::abs(b.y - a.y));
    for (int i = 0; i <= steps; ++i) {
        const double part = steps == 0 ? 0.0 : static_cast<double>(i) / steps;
        const double x = (a.x + (b.x - a.x) * part) * quarter;
        const double y = (a.y + (b.y - a.y) * part) * quarter;
        room_.take(grown({x, y, x, y}, leader_half));
    }
}

void LabelRoom::put_here(LabelBox label, const Box& box) {
    room_.take(box);
    label.box = grid_box(box);
    layout_.labels.push_back(std::move(label));
}

Box LabelRoom::body(int part) const { return body_of(symbols_[static_cast<std::size_t>(part)]); }

bool LabelRoom::has_letter_or_leader(const Box& box) const {
    const auto overlaps = [&](const Box& other) {
        return box.left < other.right && other.left < box.right && box.top < other.bottom &&
               other.top < box.bottom;
    };
    for (const DrawnSymbol& symbol : symbols_)
        for (const PortAnchor& port : symbol.shape.ports)
            if (!is_mark(symbol) && overlaps(letter_box(circuit_, place_of(symbol), port)))
                return true;
    return std::any_of(layout_.labels.begin(), layout_.labels.end(), [&](const LabelBox& label) {
        return !label.leader.empty() && passes(label.leader, box);
    });
}

bool LabelRoom::misleads(int part, const Box& box) const {
    const double own = gap(box, body(part));
    for (int p = 0; p < static_cast<int>(symbols_.size()); ++p)
        if (p != part && gap(box, body(p)) < own + clearly) return true;
    return false;
}

void LabelRoom::put_apart(const WantedLabel& wanted) {
    for (const double reach : apart)
        if (try_within(wanted, reach, 2)) return;
    throw std::logic_error("no room for a label");
}

bool LabelRoom::try_within(const WantedLabel& wanted, double reach, int most_patience) {
    const Box& body = wanted.target;
    const double width = wanted.width;
    const double height = wanted.height;
    struct Try {
        double cost = 0.0;
        Box box = {};
    };
    std::vector<Try> tries;
    const double cx = (body.left + body.right) / 2;
    const double cy = (body.top + body.bottom) / 2;
    const double reach_x = reach + (body.right - body.left) / 2 + width;
    const double reach_y = reach + (body.bottom - body.top) / 2 + height;
    const double top = std::max(cy - reach_y, extent_.top);
    const double left = std::max(cx - reach_x, extent_.left);
    const double bottom = std::min(cy + reach_y, extent_.bottom) - height;
    const double right = std::min(cx + reach_x, extent_.right) - width;
    for (double y = top; y <= bottom; y += 1.0)
        for (double x = left; x <= right; x += 1.0) {
            const Box box = snapped({x, y, x + width, y + height});
            tries.push_back({gap(box, body), box});
        }
    std::stable_sort(tries.begin(), tries.end(),
                     [](const Try& a, const Try& b) { return a.cost < b.cost; });
    // Best a leader that passes nothing; then one that crosses lines and cannot be taken for a
    // piece of one; at last any.
    for (int patience = 0; patience <= most_patience; ++patience)
        for (const Try& t : tries) {
            if (!room_.is_free(grown(t.box, clear))) continue;
            std::vector<GridPoint> leader = leader_between(t.box, body);
            if (patience < 2 && passes_solid(wanted, leader)) continue;
            if (patience < 2 && runs_along_a_line(leader)) continue;
            if (patience < 1 && passes_line(leader)) continue;
            if (put(wanted, t.box, std::move(leader))) return true;
        }
    return false;
}

/// Whether a leader passes another symbol, a port letter or a text.
bool LabelRoom::passes_solid(const WantedLabel& wanted,
                             const std::vector<GridPoint>& leader) const {
    const auto hit = [&](const Box& box) { return passes(leader, box); };
    for (int p = 0; p < static_cast<int>(symbols_.size()); ++p) {
        const DrawnSymbol& symbol = symbols_[static_cast<std::size_t>(p)];
        const double off = wanted.clear_of_strokes ? leader_half : 0.0;
        if (p != wanted.part && hit(grown(body_of(symbol), off))) return true;
        if (p != wanted.part && wanted.clear_of_strokes &&
            std::any_of(symbol.shape.ports.begin(), symbol.shape.ports.end(),
                        [&](const PortAnchor& port) { return hit(stub_of(symbol, port)); }))
            return true;
        if (is_mark(symbol)) continue;
        for (const PortAnchor& port : symbol.shape.ports)
            if (hit(letter_box(circuit_, place_of(symbol), port))) return true;
    }
    return std::any_of(layout_.labels.begin(), layout_.labels.end(), [&](const LabelBox& l) {
        return hit({l.box.from.x * quarter, l.box.from.y * quarter, l.box.to.x * quarter,
                    l.box.to.y * quarter});
    });
}

/// Whether a leader passes a line or a shaft, the line that it leads to left out.
bool LabelRoom::passes_line(const std::vector<GridPoint>& leader) const {
    const auto hit = [&](const auto& run) {
        return !holds(run, leader.back()) && passes(leader, run_box(run.from, run.to));
    };
    return std::any_of(layout_.wires.begin(), layout_.wires.end(), hit) ||
           std::any_of(layout_.shafts.begin(), layout_.shafts.end(), hit);
}

/// Whether a leader could be taken for a piece of a line or of a frame's edge.
bool LabelRoom::runs_along_a_line(const std::vector<GridPoint>& leader) const {
    const GridPoint a = leader.front();
    const GridPoint b = leader.back();
    const auto along = [&](GridPoint from, GridPoint to) {
        return ((a.y == b.y && a.y == from.y && a.y == to.y) ||
                (a.x == b.x && a.x == from.x && a.x == to.x)) &&
               passes(leader, run_box(from, to));
    };
    return std::any_of(layout_.wires.begin(), layout_.wires.end(),
                       [&](const Wire& w) { return along(w.from, w.to); }) ||
           std::any_of(layout_.frames.begin(), layout_.frames.end(), [&](const FrameBox& frame) {
               const GridPoint p = frame.box.from;
               const GridPoint q = frame.box.to;
               return along(p, {q.x, p.y}) || along({p.x, q.y}, q) || along(p, {p.x, q.y}) ||
                      along({q.x, p.y}, q);
           });
}

}  // namespace loopwright
