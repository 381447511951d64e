#include <loopwright/render/labels.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

#include <loopwright/render/label_text.h>
#include <loopwright/render/occupancy.h>
#include <loopwright/render/place.h>

namespace loopwright {

namespace {

constexpr double quarter = 0.25;
constexpr double clear = 0.3;         // M, round every text
constexpr double stroke_half = 0.25;  // M, kept free on each side of a line
constexpr double small_shift = 3.0;
// How far off a text with a leader may stand: the nearer the better.
constexpr double apart[] = {16.0, 64.0, 1024.0};
// Room for text round the whole drawing.
constexpr double surroundings = 40.0;

Box grown(const Box& box, double by) {
    return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}
Box moved(const Box& box, double x, double y) {
    return {box.left + x, box.top + y, box.right + x, box.bottom + y};
}
double down_to_quarter(double v) { return std::floor(v / quarter) * quarter; }

Box run_box(GridPoint from, GridPoint to) {
    return grown({std::min(from.x, to.x) * quarter, std::min(from.y, to.y) * quarter,
                  std::max(from.x, to.x) * quarter, std::max(from.y, to.y) * quarter},
                 stroke_half);
}

GridBox grid_box(const Box& box) {
    return {{static_cast<int>(std::lround(box.left / quarter)),
             static_cast<int>(std::lround(box.top / quarter))},
            {static_cast<int>(std::ceil(box.right / quarter - 1e-6)),
             static_cast<int>(std::ceil(box.bottom / quarter - 1e-6))}};
}

class LabelPlacer {
  public:
    LabelPlacer(const Circuit& circuit, const Sketch& sketch, const Roles& roles, Layout& layout)
        : circuit_(circuit),
          sketch_(sketch),
          roles_(roles),
          layout_(layout),
          extent_(extent_of(sketch, layout)),
          room_(extent_) {}

    void place() {
        take_obstacles();
        std::vector<int> waiting;
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p)
            if (!part(p).is_mark() && part(p).label_width > 0.0 && !try_planned(p))
                waiting.push_back(p);
        for (const int p : waiting)
            if (!try_near(p)) place_apart(p, part(p).label_width, part(p).label_height);
        place_reservoir_labels();
        for (Index line = 0; line < circuit_.lines.size(); ++line) place_line_id(line);
    }

  private:
    const SketchPart& part(int p) const { return sketch_.parts[static_cast<std::size_t>(p)]; }
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }

    static Box extent_of(const Sketch& sketch, const Layout& layout) {
        Box box{0, 0, 0, 0};
        const auto widen = [&](const Box& other) {
            box.left = std::min(box.left, other.left);
            box.top = std::min(box.top, other.top);
            box.right = std::max(box.right, other.right);
            box.bottom = std::max(box.bottom, other.bottom);
        };
        for (int p = 0; p < static_cast<int>(sketch.parts.size()); ++p) widen(sketch.body(p));
        for (const Wire& wire : layout.wires) widen(run_box(wire.from, wire.to));
        return grown(box, surroundings);
    }

    void take_obstacles() {
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p) {
            const SketchPart& s = part(p);
            room_.take(grown(sketch_.body(p), stroke_half));
            for (const PortAnchor& port : s.shape.ports) {
                const double x = s.at.x + port.at.x;
                const double y = s.at.y + port.at.y;
                const double into_x =
                    std::clamp(x, s.at.x + s.shape.body.left, s.at.x + s.shape.body.right);
                const double into_y =
                    std::clamp(y, s.at.y + s.shape.body.top, s.at.y + s.shape.body.bottom);
                room_.take(grown({std::min(x, into_x), std::min(y, into_y), std::max(x, into_x),
                                  std::max(y, into_y)},
                                 stroke_half));
                if (!s.is_mark()) room_.take(letter_box(s, port));
            }
        }
        for (const Wire& wire : layout_.wires) room_.take(run_box(wire.from, wire.to));
        for (const ShaftRun& run : layout_.shafts)
            room_.take(grown(run_box(run.from, run.to), 0.25));
        for (const Joint& joint : layout_.joints)
            room_.take(grown(run_box(joint.at, joint.at), 0.25));
        for (const FrameBox& frame : layout_.frames) {
            const GridPoint a = frame.box.from;
            const GridPoint b = frame.box.to;
            for (const Box& side : {run_box(a, {b.x, a.y}), run_box({a.x, b.y}, b),
                                    run_box(a, {a.x, b.y}), run_box({b.x, a.y}, b)})
                room_.take(side);
        }
    }

    Box letter_box(const SketchPart& s, const PortAnchor& port) const {
        const std::string letter(circuit_.ports[port.port].letter);
        const double half = text_width_m(letter, label_text_height) / 2;
        return {s.at.x + port.letter.x - half, s.at.y + port.letter.y - 1.1,
                s.at.x + port.letter.x + half, s.at.y + port.letter.y + 0.1};
    }

    bool accept(int p, const Box& box, std::vector<GridPoint> leader = {}) {
        if (!room_.is_free(grown(box, clear))) return false;
        const double middle = (box.left + box.right) / 2;
        room_.take(box);
        layout_.labels.push_back(
            {.component = part(p).component,
             .box = grid_box(box),
             .right_aligned = middle < part(p).at.x - 2.0 && box.right <= part(p).at.x + 1.0,
             .leader = std::move(leader)});
        return true;
    }

    Box snapped(const Box& box) const {
        const double left = down_to_quarter(box.left);
        const double top = down_to_quarter(box.top);
        return {left, top, left + box.right - box.left, top + box.bottom - box.top};
    }

    bool try_planned(int p) {
        return accept(p, snapped(moved(part(p).label, part(p).at.x, part(p).at.y)));
    }

    /// All places beside the symbol, each shifted a little, the least shift first.
    bool try_near(int p) {
        struct Try {
            double cost = 0.0;
            Box box = {};
        };
        std::vector<Try> tries;
        const std::vector<Box> places = label_places(part(p), role(p));
        for (std::size_t i = 0; i < places.size(); ++i)
            for (double dy = -small_shift; dy <= small_shift; dy += 0.5)
                for (double dx = -small_shift; dx <= small_shift; dx += 0.5)
                    tries.push_back(
                        {static_cast<double>(i) * 0.8 + std::abs(dx) + std::abs(dy),
                         snapped(moved(places[i], part(p).at.x + dx, part(p).at.y + dy))});
        std::stable_sort(tries.begin(), tries.end(),
                         [](const Try& a, const Try& b) { return a.cost < b.cost; });
        return std::any_of(tries.begin(), tries.end(),
                           [&](const Try& t) { return accept(p, t.box); });
    }

    /// Further off, with a leader from the text to the symbol.
    void place_apart(int p, double width, double height) {
        for (const double reach : apart)
            if (try_apart(p, width, height, reach)) return;
        throw std::logic_error("no room for the label of " +
                               std::string(circuit_.components[part(p).component].path));
    }

    bool try_apart(int p, double width, double height, double reach) {
        const Box body = sketch_.body(p);
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
                const double dx = std::max({body.left - box.right, box.left - body.right, 0.0});
                const double dy = std::max({body.top - box.bottom, box.top - body.bottom, 0.0});
                tries.push_back({dx + dy, box});
            }
        std::stable_sort(tries.begin(), tries.end(),
                         [](const Try& a, const Try& b) { return a.cost < b.cost; });
        // Best a leader that passes nothing; then one that crosses lines; at last any.
        for (const int patience : {0, 1, 2})
            for (const Try& t : tries) {
                if (!room_.is_free(grown(t.box, clear))) continue;
                std::vector<GridPoint> leader = leader_between(t.box, body);
                if (patience < 2 && passes_solid(p, leader)) continue;
                if (patience < 1 && passes_line(leader)) continue;
                if (accept(p, t.box, std::move(leader))) return true;
            }
        return false;
    }

    /// Whether a leader passes another symbol, a port letter or a text.
    bool passes_solid(int own, const std::vector<GridPoint>& leader) const {
        const auto hit = [&](const Box& box) { return passes(leader, box); };
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p) {
            if (p != own && hit(sketch_.body(p))) return true;
            if (part(p).is_mark()) continue;
            for (const PortAnchor& port : part(p).shape.ports)
                if (hit(letter_box(part(p), port))) return true;
        }
        return std::any_of(layout_.labels.begin(), layout_.labels.end(), [&](const LabelBox& l) {
            return hit({l.box.from.x * quarter, l.box.from.y * quarter, l.box.to.x * quarter,
                        l.box.to.y * quarter});
        });
    }

    bool passes_line(const std::vector<GridPoint>& leader) const {
        return std::any_of(layout_.wires.begin(), layout_.wires.end(),
                           [&](const Wire& w) { return passes(leader, run_box(w.from, w.to)); }) ||
               std::any_of(layout_.shafts.begin(), layout_.shafts.end(), [&](const ShaftRun& s) {
                   return passes(leader, run_box(s.from, s.to));
               });
    }

    /// Whether a straight leader meets a box: cut to the box's span, side by side (Liang, Barsky).
    static bool passes(const std::vector<GridPoint>& leader, const Box& box) {
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

    std::vector<GridPoint> leader_between(const Box& text, const Box& body) const {
        const auto nearest = [](const Box& box, double x, double y) {
            return Point{std::clamp(x, box.left, box.right), std::clamp(y, box.top, box.bottom)};
        };
        const Point from =
            nearest(text, (body.left + body.right) / 2, (body.top + body.bottom) / 2);
        const Point to = nearest(body, from.x, from.y);
        const auto grid = [](Point q) {
            return GridPoint{static_cast<int>(std::lround(q.x / quarter)),
                             static_cast<int>(std::lround(q.y / quarter))};
        };
        return {grid(from), grid(to)};
    }

    /// A reservoir is named at one of its marks; where there are several, at every mark.
    void place_reservoir_labels() {
        std::map<Index, std::vector<int>> marks;
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p)
            if (part(p).is_mark()) marks[part(p).component].push_back(p);
        for (auto& [component, own] : marks) {
            LabelText text = label_text(circuit_, circuit_.components[component]);
            const auto named = std::find_if(own.begin(), own.end(),
                                            [&](int p) { return try_mark_label(p, text); });
            if (named == own.end()) place_apart(own.front(), text.width, text.height);
            if (marks.size() < 2) return;
            own.erase(named == own.end() ? own.begin() : named);
            text = first_line(text);
            for (const int p : own)
                if (!try_mark_label(p, text)) place_apart(p, text.width, text.height);
        }
    }

    bool try_mark_label(int p, const LabelText& text) {
        const double w = text.width;
        const double h = text.height;
        const Cell at = part(p).at;
        for (const double dy : {0.0, 0.5, 1.0, -0.5, -1.0})
            for (const Box& box :
                 {Box{1.75, -h + 1.0, 1.75 + w, 1.0}, Box{-w / 2, 1.75, w / 2, 1.75 + h},
                  Box{-1.75 - w, -h + 1.0, -1.75, 1.0}, Box{1.75, 0.0, 1.75 + w, h},
                  Box{-1.75 - w, 0.0, -1.75, h}})
                if (accept(p, snapped(moved(box, at.x, at.y + dy)))) return true;
        return false;
    }

    void place_line_id(Index line) {
        const LabelText text = line_text(circuit_, circuit_.lines[line]);
        std::vector<const Wire*> runs;
        for (const Wire& wire : layout_.wires)
            if (wire.line == line) runs.push_back(&wire);
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
            if (span < 1.0) continue;
            for (double along = 0.0; along <= span / 2; along += 1.0)
                for (const double sign : {1.0, -1.0})
                    for (const bool first : {true, false}) {
                        const double mid = down_to_quarter(span / 2 + sign * along);
                        const Box snap =
                            beside_run({x0 + (level ? mid : 0.0), y0 + (level ? 0.0 : mid)}, level,
                                       first, text);
                        const Box air =
                            level ? Box{snap.left - 0.5, snap.top, snap.right + 0.5, snap.bottom}
                                  : Box{snap.left, snap.top - 0.5, snap.right, snap.bottom + 0.5};
                        if (!room_.is_free(air)) continue;
                        room_.take(snap);
                        layout_.labels.push_back({.line = line,
                                                  .box = grid_box(snap),
                                                  .right_aligned = !level && !first});
                        return;
                    }
        }
    }

    /// Room for a line's id above or below a level run, right or left of an upright one, as near
    /// as it may stand: on whole quarter modules, its ink half a module off the line.
    static Box beside_run(Point at, bool level, bool first, const LabelText& text) {
        constexpr double off = 0.5;
        const double width = std::ceil(text.width / quarter) * quarter;
        const double height = std::round(text.height / quarter) * quarter;
        if (level && first)
            return {at.x, at.y - stroke_half - height, at.x + width, at.y - stroke_half};
        if (level) return {at.x, at.y + off, at.x + width, at.y + off + height};
        if (first) return {at.x + off, at.y, at.x + off + width, at.y + height};
        return {at.x - off - width, at.y, at.x - off, at.y + height};
    }

    const Circuit& circuit_;
    const Sketch& sketch_;
    const Roles& roles_;
    Layout& layout_;
    Box extent_;
    Occupancy room_;
};

}  // namespace

void place_labels(const Circuit& circuit, const Sketch& sketch, const Roles& roles,
                  Layout& layout) {
    LabelPlacer(circuit, sketch, roles, layout).place();
}

}  // namespace loopwright
