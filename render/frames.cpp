#include <loopwright/render/frames.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include <loopwright/render/label_room.h>
#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

constexpr double frame_gap = 1.5;
// Between a frame and one inside it: room for port letters.
constexpr double frame_step = 2.0;
// Between two beside one another: room for the port letters of both.
constexpr double frames_apart = 1.0;
constexpr double foreign_gap = 0.75;
constexpr double letter_gap = 0.25;
// Lines, not stubs, pass through a frame.
constexpr double stub_gap = 0.5;
constexpr double quarter = 0.25;

// An edge moves outwards where it stands better, M.
constexpr double edge_step = 1.0;
constexpr double edge_reach = 24.0;
constexpr double cost_outwards = 0.3;  // a module
// Lines along an edge must be told from it.
constexpr double beside_edge = 1.0;
constexpr double cost_beside = 3.0;    // a module
constexpr double cost_crossing = 4.0;  // of a line that belongs inside
constexpr double cost_cutting = 4.0;   // a label

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
Box joined(const Box& a, const Box& b) {
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}
Box grown(const Box& box, double by) {
    return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}
Box box_of(GridPoint a, GridPoint b) {
    return {std::min(a.x, b.x) * quarter, std::min(a.y, b.y) * quarter,
            std::max(a.x, b.x) * quarter, std::max(a.y, b.y) * quarter};
}
/// Grown to edges half a module off the grid, so that no line runs along them.
Box off_grid(const Box& box) {
    return {std::floor(box.left - 0.5) + 0.5, std::floor(box.top - 0.5) + 0.5,
            std::ceil(box.right - 0.5) + 0.5, std::ceil(box.bottom - 0.5) + 0.5};
}
GridBox grid_box(const Box& box) {
    return {{static_cast<int>(std::floor(box.left / quarter)),
             static_cast<int>(std::floor(box.top / quarter))},
            {static_cast<int>(std::ceil(box.right / quarter)),
             static_cast<int>(std::ceil(box.bottom / quarter))}};
}

/// The ends of a part's stubs and the letters beside them.
std::vector<Box> stubs_of(const Circuit& circuit, const SketchPart& part, double gap) {
    std::vector<Box> out;
    for (const PortAnchor& port : part.shape.ports) {
        const Point at{part.at.x + port.at.x, part.at.y + port.at.y};
        out.push_back(grown({at.x, at.y, at.x, at.y}, gap));
        if (!part.is_mark())
            out.push_back(grown(letter_box(circuit, part.place(), port), letter_gap));
    }
    return out;
}

/// One assembly's frames.
class Framer {
  public:
    Framer(const Circuit& circuit, const Sketch& sketch, const Layout& layout, Index assembly)
        : circuit_(circuit), layout_(layout), assembly_(assembly) {
        for (int p = 0; p < static_cast<int>(sketch.parts.size()); ++p) {
            const SketchPart& part = sketch.parts[static_cast<std::size_t>(p)];
            if (part.label_width > 0.0)
                labels_.push_back({part.label.left + part.at.x, part.label.top + part.at.y,
                                   part.label.right + part.at.x, part.label.bottom + part.at.y});
            const Index home = circuit.components[part.component].assembly;
            if (part.is_mark() || !is_inside(circuit, home, assembly)) {
                foreign_.push_back(grown(sketch.body(p), foreign_gap));
                for (const Box& stub : stubs_of(circuit, part, 0.0)) foreign_.push_back(stub);
            } else if (home == assembly) {
                Box box = grown(sketch.body(p), frame_gap);
                for (const Box& stub : stubs_of(circuit, part, stub_gap)) box = joined(box, stub);
                own_.push_back(off_grid(box));
            }
        }
        for (const FrameBox& frame : layout.frames) {
            const Box box = box_of(frame.box.from, frame.box.to);
            if (circuit.assemblies[frame.assembly].parent == assembly)
                own_.push_back(grown(box, frame_step));
            else if (!is_inside(circuit, frame.assembly, assembly))
                foreign_.push_back(grown(box, frames_apart));
        }
    }

    std::vector<FrameBox> frames() {
        while (join_nearest()) {
        }
        std::vector<FrameBox> out;
        for (Box& box : own_) {
            for (double Box::*edge : {&Box::left, &Box::top, &Box::right, &Box::bottom})
                settle(box, edge);
            out.push_back({assembly_, grid_box(box)});
        }
        return out;
    }

  private:
    /// Whether a box holds nothing foreign that those it grew from did not hold.
    bool is_clear(const Box& box, const Box& from, const Box& and_from) const {
        return std::none_of(foreign_.begin(), foreign_.end(), [&](const Box& other) {
            return overlap(other, box) && !overlap(other, from) && !overlap(other, and_from);
        });
    }
    /// Whether a box that grew stays clear of the assembly's other frames.
    bool is_apart(const Box& box, const Box& from) const {
        return std::none_of(own_.begin(), own_.end(), [&](const Box& other) {
            return overlap(other, box) && !overlap(other, from);
        });
    }

    /// Joins the two boxes that need the least room more, as long as nobody else gets inside.
    bool join_nearest() {
        double least = std::numeric_limits<double>::max();
        std::size_t first = 0;
        std::size_t second = 0;
        for (std::size_t i = 0; i < own_.size(); ++i)
            for (std::size_t j = i + 1; j < own_.size(); ++j) {
                const Box both = joined(own_[i], own_[j]);
                const double size = (both.right - both.left) + (both.bottom - both.top) -
                                    (own_[i].right - own_[i].left) - (own_[j].right - own_[j].left);
                if (size >= least || !is_clear(both, own_[i], own_[j])) continue;
                least = size;
                first = i;
                second = j;
            }
        if (first == second) return false;
        own_[first] = joined(own_[first], own_[second]);
        own_.erase(own_.begin() + static_cast<std::ptrdiff_t>(second));
        return true;
    }

    /// Moves one edge outwards to where lines along it, inner lines across it and labels under it
    /// are fewest.
    void settle(Box& box, double Box::*edge) const {
        const double outwards = edge == &Box::left || edge == &Box::top ? -1.0 : 1.0;
        const double start = box.*edge;
        double least = std::numeric_limits<double>::max();
        double best = start;
        for (double by = 0.0; by <= edge_reach; by += edge_step) {
            Box moved = box;
            moved.*edge = start + outwards * by;
            if (!is_clear(moved, box, box) || !is_apart(moved, box)) break;
            const double cost = cost_outwards * by + cost_of(moved, edge);
            if (cost >= least) continue;
            least = cost;
            best = moved.*edge;
        }
        box.*edge = best;
    }

    double cost_of(const Box& box, double Box::*edge) const {
        const bool upright = edge == &Box::left || edge == &Box::right;
        const double at = box.*edge;
        double cost = 0.0;
        const auto add = [&](const Box& run, bool inner) {
            const double near = upright ? run.left : run.top;
            const double far = upright ? run.right : run.bottom;
            const double from =
                std::max(upright ? run.top : run.left, upright ? box.top : box.left);
            const double to =
                std::min(upright ? run.bottom : run.right, upright ? box.bottom : box.right);
            if (near == far && from < to && std::abs(near - at) < beside_edge)
                cost += cost_beside * (to - from);
            if (inner && near < at && at < far && from <= to) cost += cost_crossing;
        };
        for (const Box& label : labels_) {
            const double near = upright ? label.left : label.top;
            const double far = upright ? label.right : label.bottom;
            if (near < at && at < far && overlap(label, box)) cost += cost_cutting;
        }
        for (const Wire& wire : layout_.wires)
            add(box_of(wire.from, wire.to),
                is_inside(circuit_, circuit_.lines[wire.line].assembly, assembly_));
        for (const ShaftRun& run : layout_.shafts) add(box_of(run.from, run.to), false);
        for (const FrameBox& frame : layout_.frames) {
            const GridPoint a = frame.box.from;
            const GridPoint b = frame.box.to;
            for (const Box& side : {box_of(a, {b.x, a.y}), box_of({a.x, b.y}, b),
                                    box_of(a, {a.x, b.y}), box_of({b.x, a.y}, b)})
                add(side, false);
        }
        return cost;
    }

    const Circuit& circuit_;
    const Layout& layout_;
    Index assembly_;
    std::vector<Box> labels_;
    std::vector<Box> own_;
    std::vector<Box> foreign_;
};

}  // namespace

void place_frames(const Circuit& circuit, const Sketch& sketch, Layout& layout) {
    // Assemblies stand before what is inside them: inner frames first.
    for (auto a = static_cast<Index>(circuit.assemblies.size()); a-- > 0;)
        for (const FrameBox& frame : Framer(circuit, sketch, layout, a).frames())
            layout.frames.push_back(frame);
}

}  // namespace loopwright
