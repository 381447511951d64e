#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include <loopwright/render/label_room.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/sketch.h>

namespace loopwright {

namespace {

constexpr double quarter = 0.25;
// Steps that a text moves along an edge or away from it.
constexpr double step = 0.5;
// So far from its frame a port letter still tells where it belongs, M.
constexpr double letter_reach = 1.5;
// Between a frame's name and the lines that pass beside it, M.
constexpr double name_apart = 2.0;

/// Where a wire passes through an edge of a frame.
struct Passing {
    Point at = {};        ///< M
    Side way = Side::up;  ///< the way out of the frame
    double reach = 0.0;   ///< M that the wire goes on straight outside
    Index line = none;
};

std::vector<Passing> passings(const GridBox& frame, const std::vector<Wire>& wires) {
    std::vector<Passing> out;
    const auto between = [](int v, int a, int b) { return v > a && v < b; };
    for (const Wire& wire : wires) {
        const auto add = [&](GridPoint at, Side way, int reach) {
            out.push_back({{at.x * quarter, at.y * quarter}, way, reach * quarter, wire.line});
        };
        const auto [left, right] = std::minmax(wire.from.x, wire.to.x);
        const auto [top, bottom] = std::minmax(wire.from.y, wire.to.y);
        if (between(left, frame.from.x, frame.to.x) && left == right) {
            if (between(frame.from.y, top, bottom))
                add({left, frame.from.y}, Side::up, frame.from.y - top);
            if (between(frame.to.y, top, bottom))
                add({left, frame.to.y}, Side::down, bottom - frame.to.y);
        }
        if (between(top, frame.from.y, frame.to.y) && top == bottom) {
            if (between(frame.from.x, left, right))
                add({frame.from.x, top}, Side::left, frame.from.x - left);
            if (between(frame.to.x, left, right))
                add({frame.to.x, top}, Side::right, right - frame.to.x);
        }
    }
    return out;
}

class FrameLabeller {
  public:
    FrameLabeller(const Circuit& circuit, const Sketch& sketch, const Layout& layout,
                  LabelRoom& room)
        : circuit_(circuit), sketch_(sketch), layout_(layout), room_(room) {}

    void label(const FrameBox& frame) {
        const std::vector<Passing> all = passings(frame.box, layout_.wires);
        for (const Passing& passing : all)
            if (const auto port = port_at(frame.assembly, passing))
                letter(frame.assembly, *port, passing);
        name(frame, all);
    }

  private:
    /// The declared port that the passing line comes from: of several on its net the nearest.
    std::optional<Assembly::DeclaredPort> port_at(Index assembly, const Passing& passing) const {
        std::optional<Assembly::DeclaredPort> found;
        double least = std::numeric_limits<double>::max();
        for (const Assembly::DeclaredPort& declared : circuit_.assemblies[assembly].ports) {
            const int n = sketch_.net_of_port(declared.port);
            if (n < 0) continue;
            const SketchNet& net = sketch_.nets[static_cast<std::size_t>(n)];
            if (std::find(net.lines.begin(), net.lines.end(), passing.line) == net.lines.end())
                continue;
            const double far = distance(net, declared.port, passing.at);
            if (found && far >= least) continue;
            least = far;
            found = declared;
        }
        return found;
    }

    /// From the port's place on the sheet; far where the port is a joint.
    double distance(const SketchNet& net, Index port, Point at) const {
        for (const SketchEnd& end : net.ends) {
            const SketchPart& part = sketch_.parts[static_cast<std::size_t>(end.part)];
            if (part.is_mark() ||
                part.shape.ports[static_cast<std::size_t>(end.anchor)].port != port)
                continue;
            const Cell cell = sketch_.cell(end);
            return std::abs(cell.x - at.x) + std::abs(cell.y - at.y);
        }
        return std::numeric_limits<double>::max();
    }

    void letter(Index assembly, const Assembly::DeclaredPort& port, const Passing& passing) {
        const LabelText text = small_text_of(std::string(port.letter));
        const LabelBox label{.port = port.port, .assembly = assembly};
        const bool level = passing.way == Side::left || passing.way == Side::right;
        const double length = level ? text.width : text.height;
        const double most = std::min(letter_reach, passing.reach - length);
        // Apart from other small words if there is room for that.
        for (const bool airy : {true, false})
            for (double off = step; off <= most; off += step)
                for (const bool first : {true, false}) {
                    const Box box = beside_run(beginning(passing, off, text), level, first, text);
                    if (!room_.is_free(airy ? with_air(box, level) : box)) continue;
                    room_.put_here(label, box);
                    return;
                }
        const Point at = passing.at;
        room_.put_apart({.label = label,
                         .width = text.width,
                         .height = text.height,
                         .target = {at.x, at.y, at.x, at.y}});
    }

    /// Where a text beside the passing line begins so that it ends `off` from the frame.
    static Point beginning(const Passing& passing, double off, const LabelText& text) {
        const double width = std::ceil(text.width / quarter) * quarter;
        const double height = std::round(text.height / quarter) * quarter;
        switch (passing.way) {
            case Side::up:
                return {passing.at.x, passing.at.y - off - height};
            case Side::down:
                return {passing.at.x, passing.at.y + off};
            case Side::left:
                return {passing.at.x - off - width, passing.at.y};
            case Side::right:
                return {passing.at.x + off, passing.at.y};
        }
        return passing.at;
    }

    /// Over the upper edge from the left, else under the lower one; apart from port letters, so
    /// that none is taken for the other.
    void name(const FrameBox& frame, const std::vector<Passing>& all) {
        const LabelText text = small_text_of(std::string(circuit_.assemblies[frame.assembly].path));
        const LabelBox label{.assembly = frame.assembly};
        const double left = frame.box.from.x * quarter;
        const double right = frame.box.to.x * quarter;
        for (const Side way : {Side::up, Side::down}) {
            const bool above = way == Side::up;
            const double y = (above ? frame.box.from.y : frame.box.to.y) * quarter;
            for (double x = left + step; x + text.width <= right; x += step) {
                const Box box = beside_run({x, y}, true, above, text);
                const bool beside_letter =
                    std::any_of(all.begin(), all.end(), [&](const Passing& passing) {
                        return passing.way == way && passing.at.x > box.left - name_apart &&
                               passing.at.x < box.right + name_apart;
                    });
                if (beside_letter || !room_.is_free(with_air(box, true))) continue;
                room_.put_here(label, box);
                return;
            }
        }
        const double top = frame.box.from.y * quarter;
        room_.put_apart({.label = label,
                         .width = text.width,
                         .height = text.height,
                         .target = {left, top, right, top}});
    }

    const Circuit& circuit_;
    const Sketch& sketch_;
    const Layout& layout_;
    LabelRoom& room_;
};

}  // namespace

void place_frame_labels(const Circuit& circuit, const Sketch& sketch, Layout& layout,
                        LabelRoom& room) {
    FrameLabeller labeller(circuit, sketch, layout, room);
    for (const FrameBox& frame : layout.frames) labeller.label(frame);
}

}  // namespace loopwright
