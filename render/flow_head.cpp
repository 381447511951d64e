#include <loopwright/render/flow_head.h>

#include <algorithm>
#include <cmath>

namespace loopwright {

namespace {

constexpr double quarter = 0.25;
// Quarter modules that stay free at the ends of its run.
constexpr int free_ends[] = {2, 1};

/// Whether a stroke comes into a box of quarter modules, its edges counted in.
template <class Stroke>
bool meets(const Stroke& stroke, const GridBox& box) {
    return std::max(stroke.from.x, stroke.to.x) >= box.from.x &&
           std::min(stroke.from.x, stroke.to.x) <= box.to.x &&
           std::max(stroke.from.y, stroke.to.y) >= box.from.y &&
           std::min(stroke.from.y, stroke.to.y) <= box.to.y;
}

/// Whether a head there meets nothing but its own run.
bool is_clear(const StraightRun& run, GridPoint at, const Layout& layout, const LabelRoom& room) {
    const GridBox box{{at.x - flow_head_half, at.y - flow_head_half},
                      {at.x + flow_head_half, at.y + flow_head_half}};
    const auto inside = [&](const Wire& wire) {
        const bool level = run.from.y == run.to.y;
        return level ? wire.from.y == wire.to.y && wire.from.y == run.from.y
                     : wire.from.x == wire.to.x && wire.from.x == run.from.x;
    };
    if (std::any_of(layout.wires.begin(), layout.wires.end(),
                    [&](const Wire& wire) { return !inside(wire) && meets(wire, box); }))
        return false;
    const Box around{box.from.x * quarter, box.from.y * quarter, box.to.x * quarter,
                     box.to.y * quarter};
    if (room.has_letter_or_leader(around)) return false;
    // Nor a dot: of a joint or where a hose begins.
    const auto near = [&](GridPoint dot) {
        return std::max(std::abs(dot.x - at.x), std::abs(dot.y - at.y)) < 2 * flow_head_half;
    };
    if (std::any_of(layout.joints.begin(), layout.joints.end(),
                    [&](const Joint& joint) { return near(joint.at); }) ||
        std::any_of(layout.wires.begin(), layout.wires.end(), [&](const Wire& wire) {
            return wire.sag != 0 && (near(wire.from) || near(wire.to));
        }))
        return false;
    if (std::any_of(layout.shafts.begin(), layout.shafts.end(),
                    [&](const ShaftRun& shaft) { return meets(shaft, box); }))
        return false;
    return std::none_of(layout.frames.begin(), layout.frames.end(), [&](const FrameBox& frame) {
        const GridPoint a = frame.box.from;
        const GridPoint b = frame.box.to;
        return meets(StraightRun{a, {b.x, a.y}}, box) || meets(StraightRun{{a.x, b.y}, b}, box) ||
               meets(StraightRun{a, {a.x, b.y}}, box) || meets(StraightRun{{b.x, a.y}, b}, box);
    });
}

}  // namespace

std::optional<FlowArrow> flow_head_on(Index line, std::span<const StraightRun> runs,
                                      const Layout& layout, const LabelRoom& room) {
    for (const int ends : free_ends)
        for (const StraightRun& run : runs) {
            const GridPoint way{(run.to.x > run.from.x) - (run.to.x < run.from.x),
                                (run.to.y > run.from.y) - (run.to.y < run.from.y)};
            const int length = std::abs(run.to.x - run.from.x) + std::abs(run.to.y - run.from.y);
            const int slack = length - 2 * (flow_head_half + ends);
            for (int off = 0; slack >= 0 && off <= slack / 2; ++off)
                for (const int sign : {1, -1}) {
                    const int along = length / 2 + sign * off;
                    const GridPoint at{run.from.x + way.x * along, run.from.y + way.y * along};
                    if (!is_clear(run, at, layout, room)) continue;
                    return FlowArrow{
                        line,
                        {at.x - way.x * flow_head_half, at.y - way.y * flow_head_half},
                        {at.x + way.x * flow_head_half, at.y + way.y * flow_head_half}};
                }
        }
    return std::nullopt;
}

}  // namespace loopwright
