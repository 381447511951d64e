#include <algorithm>
#include <cmath>

#include <loopwright/render/loop_bench.h>
#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

// How far the charge line lies above the machines' axis: the charge pump's outlet and two modules.
constexpr int charge_above_axis = 6;
constexpr int least_zone = 9;
// From one axis to the next below, where one shaft's machines stand behind another's.
constexpr int axis_drop = 5;
// Above a machine in a stack.
constexpr int machine_gap = 3;
// Ports nearer than this in their rows face one another.
constexpr double facing = 2.5;

class LoopStacker : LoopBench {
  public:
    using LoopBench::LoopBench;

    void set_levels() {
        int upper = least_zone;
        int lower = least_zone;
        int full = 0;
        int above_axis = 0;
        int below_axis = 0;
        for (const Column& column : plan_.columns) {
            const bool pump_column = is_axis(column);
            for (const Slot& slot : column.slots) {
                const int height = height_of(slot);
                if (slot.zone == Zone::upper) upper = std::max(upper, height + 2 * spacing_.row);
                if (slot.zone == Zone::lower) lower = std::max(lower, height + 2 * spacing_.row);
                if (slot.zone != Zone::full) continue;
                if (!pump_column) {
                    full = std::max(full, height + 2 * spacing_.row);
                    continue;
                }
                const int p = slot.parts.front();
                above_axis = std::max(above_axis, -top(p) + spacing_.row);
                int below = bottom(p) + drop(p);
                for (const Slot& under : column.slots)
                    if (under.zone == Zone::under)
                        below += gap_between(p, under.parts.front()) + height_of(under);
                below_axis = std::max(below_axis, below + spacing_.row);
            }
        }
        charge_ = 0;
        const bool pump_here =
            std::any_of(plan_.columns.begin(), plan_.columns.end(), [&](const Column& column) {
                return role(column.slots.front().parts.front()) == PartRole::charge_pump;
            });
        axis_ = plan_.has_charge && pump_here ? charge_ + charge_above_axis : charge_;
        a_ = std::min(charge_ - upper, axis_ - above_axis);
        b_ = std::max(charge_ + lower, axis_ + below_axis);
        if (b_ - a_ < full) {
            // A tall bridge or a stack of actuators: room on both sides.
            const int more = full - (b_ - a_);
            a_ -= more / 2;
            b_ += more - more / 2;
        }
    }

    void stack_column(const Column& column) {
        for (const Slot& slot : column.slots) stack(slot);
        for (const Slot& slot : column.slots)
            if (slot.zone == Zone::under) put_under(slot);
    }

  private:
    /// Columns of single machines on the common axis.
    bool is_axis(const Column& column) {
        const auto& parts = column.slots.front().parts;
        return column.slots.front().zone == Zone::full && parts.size() == 1 &&
               is_machine(parts.front());
    }

    int height_of(const Slot& slot) {
        int height = 0;
        for (std::size_t i = 0; i < slot.parts.size(); ++i) {
            height += bottom(slot.parts[i]) - top(slot.parts[i]);
            if (i > 0) height += gap_between(slot.parts[i - 1], slot.parts[i]);
        }
        return height;
    }

    /// Room between parts that stand on one another. Where ports of different nets face one
    /// another each line needs a row of its own to get out.
    int gap_between(int above, int below) {
        int gap = std::max(spacing_.stack, is_machine(below) ? machine_gap : 0);
        gap += frame_room * frames_between(sketch_.circuit(), sketch_.component(above).assembly,
                                           sketch_.component(below).assembly);
        return another_net_faces(above, below) ? std::max(gap, spacing_.stack + 2) : gap;
    }

    bool another_net_faces(int above, int below) {
        const int shift = shift_to(above, below);
        for (std::size_t i = 0; i < part(above).shape.ports.size(); ++i)
            for (std::size_t j = 0; j < part(below).shape.ports.size(); ++j) {
                const PortAnchor& upper = part(above).shape.ports[i];
                const PortAnchor& lower = part(below).shape.ports[j];
                if (upper.side == Side::down && lower.side == Side::up &&
                    std::abs(upper.at.x - lower.at.x - shift) < facing &&
                    sketch_.net_at(above, i) != sketch_.net_at(below, j))
                    return true;
            }
        return false;
    }

    /// Stands the parts of a slot on one another, about x = 0.
    void stack(const Slot& slot) {
        const int height = height_of(slot);
        int y = 0;
        switch (slot.zone) {
            case Zone::upper:
                y = charge_ - spacing_.row - height;
                break;
            case Zone::lower:
                y = charge_ + spacing_.row;
                break;
            case Zone::full:
                y = (a_ + b_ - height) / 2;
                break;
            case Zone::below:
                y = b_ + spacing_.row;
                break;
            case Zone::level_a:
                move(slot.parts.front(), 0, a_);
                return;
            case Zone::level_b:
                move(slot.parts.front(), 0, b_);
                return;
            case Zone::level_charge:
                move(slot.parts.front(), 0, charge_);
                return;
            case Zone::drain:
            case Zone::under:
                return;
        }
        // In the middle of the zone; parts of an assembly near the charge line, so that its frame
        // stays small.
        const bool framed = sketch_.component(slot.parts.front()).assembly != none;
        if (slot.zone == Zone::upper && !framed) y = (a_ + charge_ - height) / 2;
        if (slot.zone == Zone::lower && !framed && hangs_on_b(slot))
            y = (charge_ + b_ - height) / 2;
        if (slot.zone == Zone::full && is_machine(slot.parts.front()) && on_axes(slot)) return;
        // Stacked actuators share the height evenly.
        const int share = is_machine(slot.parts.front())
                              ? std::max(0, b_ - a_ - 2 * spacing_.row - height) /
                                    (static_cast<int>(slot.parts.size()) + 1)
                              : 0;
        y -= share * (static_cast<int>(slot.parts.size()) - 1) / 2;
        int x = 0;
        for (std::size_t i = 0; i < slot.parts.size(); ++i) {
            const int p = slot.parts[i];
            if (i > 0) {
                x += shift_to(slot.parts[i - 1], p);
                y += gap_between(slot.parts[i - 1], p) + share;
            }
            move(p, x, y - top(p));
            y += bottom(p) - top(p);
        }
    }

    /// How far below the common axis a machine stands.
    int drop(int p) const {
        const auto lower = plan_.lower_axes.find(p);
        return lower == plan_.lower_axes.end() ? 0 : lower->second * axis_drop;
    }

    bool hangs_on_b(const Slot& slot) {
        for (const int p : slot.parts)
            for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a)
                if (on(sketch_.net_at(p, a), NetRole::side_b)) return true;
        return false;
    }

    /// A machine alone on the common axis; loads and what stands on shafts level with the actuators
    /// that turn them.
    bool on_axes(const Slot& slot) {
        const PartRole r = role(slot.parts.front());
        const bool turned = r == PartRole::load || r == PartRole::on_shaft;
        if (!turned && slot.parts.size() > 1) return false;
        int next = a_;
        for (const int p : slot.parts) {
            int y = axis_ + drop(p);
            if (turned)
                for (const TrainPart& one : roles_.train_of(p))
                    if (role(one.part) == PartRole::loop_actuator && part(one.part).placed)
                        y = part(one.part).at.y;
            if (slot.parts.size() > 1) y = std::max(y, next - top(p));
            move(p, 0, y);
            next = y + bottom(p) + 2;
        }
        return true;
    }

    /// How far a part must be shifted so that its upper port stands below the port it is joined to.
    int shift_to(int above, int below) {
        for (std::size_t i = 0; i < part(above).shape.ports.size(); ++i)
            for (std::size_t j = 0; j < part(below).shape.ports.size(); ++j)
                if (sketch_.net_at(above, i) >= 0 &&
                    sketch_.net_at(above, i) == sketch_.net_at(below, j) &&
                    part(above).shape.ports[i].side == Side::down &&
                    part(below).shape.ports[j].side == Side::up)
                    return static_cast<int>(std::lround(part(above).shape.ports[i].at.x -
                                                        part(below).shape.ports[j].at.x));
        return 0;
    }

    void put_under(const Slot& slot) {
        int y = part(slot.host).at.y + bottom(slot.host);
        int x = part(slot.host).at.x;
        int above = slot.host;
        for (const int p : slot.parts) {
            x += shift_to(above, p);
            y += gap_between(above, p);
            move(p, x, y - top(p));
            y += bottom(p) - top(p);
            above = p;
        }
    }
};

}  // namespace

void set_levels(LoopState& state) { LoopStacker(state).set_levels(); }

void stack_column(LoopState& state, const Column& column) {
    LoopStacker(state).stack_column(column);
}

}  // namespace loopwright
