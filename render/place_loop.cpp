#include <algorithm>
#include <cmath>

#include <loopwright/render/column_order.h>
#include <loopwright/render/loop_bench.h>
#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

// From the middle of a column to the middle of the next.
constexpr int least_column_step = 5;

class ColumnPlacer : LoopBench {
  public:
    explicit ColumnPlacer(LoopState& state) : LoopBench(state), state_(state) {}

    void place_columns() {
        int last = -(1 << 20);
        for (Column& column : plan_.columns) {
            stack_column(state_, column);
            const std::vector<Solid> own = solids_of(column);
            // As far left as what is there allows, but right of the column before.
            int x = last + least_column_step;
            for (const Solid& there : solids_)
                for (const Solid& solid : own)
                    if (there.column != solid.column || (there.box.top < solid.box.bottom + 1.0 &&
                                                         solid.box.top < there.box.bottom + 1.0))
                        x = std::max(
                            x, static_cast<int>(std::ceil(
                                   there.box.right + room_between(there, solid) - solid.box.left)));
            if (solids_.empty()) x = 0;
            for (Solid solid : own) {
                solid.box.left += x;
                solid.box.right += x;
                right_ = std::max(right_, static_cast<int>(std::ceil(solid.box.right)));
                solids_.push_back(solid);
            }
            for (const Slot& slot : column.slots)
                for (const int p : slot.parts) sketch_.move_to(p, {part(p).at.x + x, part(p).at.y});
            if (role(column.slots.front().parts.front()) == PartRole::loop_pump &&
                block_.axis_x == 0)
                block_.axis_x = x;
            last = x;
        }
        right_ += spacing_.column;
    }

  private:
    /// What takes room in a row of columns: a symbol, a label, the way of a line to its level.
    struct Solid {
        enum class What : std::uint8_t { body, label, lane } what = What::body;
        Box box = {};
        Index assembly = none;
        Index column = none;  ///< assembly of the column: frames are as high as all columns
    };

    double room_between(const Solid& a, const Solid& b) const {
        const int frames = frame_room * frames_between(sketch_.circuit(), a.assembly, b.assembly);
        if (a.what == Solid::What::body && b.what == Solid::What::body)
            return spacing_.column + frames;
        return std::max(1.5, spacing_.column - 1.5) + frames;
    }

    std::vector<Solid> solids_of(const Column& column) {
        std::vector<Solid> out;
        const Index home = assembly_of(sketch_, column);
        for (const Slot& slot : column.slots)
            for (const int p : slot.parts) {
                const SketchPart& s = part(p);
                const auto add = [&](Solid::What what, const Box& box) {
                    out.push_back({what,
                                   {box.left + s.at.x, box.top + s.at.y, box.right + s.at.x,
                                    box.bottom + s.at.y},
                                   sketch_.component(p).assembly,
                                   home});
                };
                add(Solid::What::body, s.shape.body);
                if (s.label_width > 0.0) add(Solid::What::label, s.label);
                for (std::size_t a = 0; a < s.shape.ports.size(); ++a)
                    add(Solid::What::lane, lane_of(p, a));
                for (const int mark : s.marks) {
                    const Cell at = part(mark).at;
                    out.push_back({Solid::What::body,
                                   {at.x - 1.0, at.y - 2.0, at.x + 1.0, at.y + 1.0},
                                   sketch_.component(p).assembly,
                                   home});
                }
            }
        return out;
    }

    /// The way from a port to the level line it belongs to, relative to the part; where the line
    /// lies behind the body, beside the body.
    Box lane_of(int p, std::size_t anchor) {
        const SketchPart& s = part(p);
        const PortAnchor& port = s.shape.ports[anchor];
        const int n = sketch_.net_at(p, anchor);
        const bool up = port.side == Side::up;
        const bool down = port.side == Side::down;
        double x = port.at.x;
        double to = port.at.y;
        if ((up || down) && on(n, NetRole::charge)) to = charge_ - s.at.y;
        if ((up || down) && on(n, NetRole::side_a)) to = a_ - s.at.y;
        if ((up || down) && on(n, NetRole::side_b)) to = b_ - s.at.y;
        if ((up && to > port.at.y) || (down && to < port.at.y))
            x = port.at.x <= 0.0 ? std::floor(s.shape.body.left) - 1.0
                                 : std::ceil(s.shape.body.right) + 1.0;
        return {x, std::min(port.at.y, to), x, std::max(port.at.y, to)};
    }

    LoopState& state_;
    std::vector<Solid> solids_;
};

}  // namespace

void place_loop(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing) {
    LoopState state{.sketch = sketch,
                    .roles = roles,
                    .block = block,
                    .spacing = spacing,
                    .plan = columns_of(sketch, roles, block)};
    turn_loop(state);
    set_levels(state);
    ColumnPlacer(state).place_columns();
    place_below(state);
}

}  // namespace loopwright
