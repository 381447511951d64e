#include <algorithm>
#include <cmath>
#include <optional>

#include <loopwright/render/loop_columns.h>
#include <loopwright/render/place.h>

namespace loopwright {

namespace {

// How far the charge line lies above the machines' axis: the charge pump's outlet and two modules.
constexpr int charge_above_axis = 6;
constexpr int least_zone = 9;
// From the middle of a column to the middle of the next.
constexpr int least_column_step = 5;

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

class LoopPlacer {
  public:
    LoopPlacer(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing)
        : sketch_(sketch),
          roles_(roles),
          block_(block),
          spacing_(spacing),
          plan_(columns_of(sketch, roles, block)) {}

    void place() {
        for (Column& column : plan_.columns)
            for (Slot& slot : column.slots) turn_slot(slot);
        for (Slot& slot : plan_.drains) turn_drain(slot, false);
        set_levels();
        place_columns();
        add_trunks();
        place_drains();
        add_drain_trunks();
        place_marks();
    }

  private:
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }
    SketchPart& part(int p) { return sketch_.parts[static_cast<std::size_t>(p)]; }
    const RoleOfNet& net_role(int n) const { return roles_.net[static_cast<std::size_t>(n)]; }
    bool on(int n, NetRole r) const {
        return n >= 0 && net_role(n).role == r &&
               (net_role(n).loop < 0 || net_role(n).loop == block_.loop);
    }
    bool is_machine(int p) { return !part(p).shape.shafts.empty(); }

    void finish_part(int p) {
        sketch_.hang_marks(p);
        plan_label(sketch_, p, role(p));
    }

    // ---- attitudes

    void turn_slot(Slot& slot) {
        for (std::size_t i = 0; i < slot.parts.size(); ++i) {
            const int p = slot.parts[i];
            std::vector<PortWish> wishes;
            for (int a = 0; a < static_cast<int>(part(p).rest.ports.size()); ++a) {
                const std::optional<PortWish> wish = wish_of(slot, i, a);
                if (wish) wishes.push_back(*wish);
            }
            turn_to_wishes(sketch_, p, wishes);
            if (is_machine(p)) mirror_machine(p);
            if (role(p) == PartRole::flushing_valve) mirror_flushing(p);
            finish_part(p);
        }
    }

    std::optional<PortWish> wish_of(const Slot& slot, std::size_t i, int anchor) {
        const int p = slot.parts[i];
        const int n = sketch_.net_at(p, static_cast<std::size_t>(anchor));
        if (n < 0) return std::nullopt;
        const bool level = slot.zone == Zone::level_a || slot.zone == Zone::level_b ||
                           slot.zone == Zone::level_charge;
        if (level) {
            const NetRole own = slot.zone == Zone::level_a   ? NetRole::side_a
                                : slot.zone == Zone::level_b ? NetRole::side_b
                                                             : NetRole::charge;
            if (!on(n, own)) return std::nullopt;
            return PortWish{anchor, leads_in(p, n) ? Side::left : Side::right, 2};
        }
        if (is_machine(p)) {
            if (on(n, NetRole::side_a) || on(n, NetRole::charge))
                return PortWish{anchor, Side::up, 2};
            if (on(n, NetRole::side_b) || on(n, NetRole::suction))
                return PortWish{anchor, Side::down, 2};
            return std::nullopt;
        }
        if (on(n, NetRole::side_a)) return PortWish{anchor, Side::up, 3};
        if (on(n, NetRole::side_b))
            return PortWish{anchor, slot.zone == Zone::below ? Side::up : Side::down, 2};
        if (on(n, NetRole::charge))
            return PortWish{anchor, slot.zone == Zone::lower ? Side::up : Side::down, 2};
        for (std::size_t j = 0; j < slot.parts.size(); ++j) {
            if (j == i) continue;
            for (std::size_t a = 0; a < part(slot.parts[j]).rest.ports.size(); ++a)
                if (sketch_.net_at(slot.parts[j], a) == n)
                    return PortWish{anchor, j < i ? Side::up : Side::down, 2};
        }
        if (slot.zone == Zone::under && touches(slot.host, n)) return PortWish{anchor, Side::up, 2};
        return PortWish{anchor, Side::down, 1};
    }

    bool touches(int p, int net) {
        for (std::size_t a = 0; a < part(p).rest.ports.size(); ++a)
            if (sketch_.net_at(p, a) == net) return true;
        return false;
    }

    /// Whether the net comes to an in-line part from the pump's side: it was numbered before.
    bool leads_in(int p, int n) {
        std::size_t own = 0;
        std::size_t first = plan_.columns.size();
        for (std::size_t c = 0; c < plan_.columns.size(); ++c)
            for (const Slot& slot : plan_.columns[c].slots)
                for (const int q : slot.parts) {
                    if (q == p) own = c;
                    if (q != p && touches(q, n)) first = std::min(first, c);
                }
        return first < own;
    }

    /// Case ports away from the loop, so that drains do not cross the working lines.
    void mirror_machine(int p) {
        const bool pump = role(p) == PartRole::loop_pump;
        const bool actuator = role(p) == PartRole::loop_actuator;
        if (!pump && !actuator) return;
        Attitude attitude = part(p).attitude;
        const auto drains_at = [&]() {
            double sum = 0.0;
            for (const PortAnchor& port : part(p).shape.ports)
                if (sketch_.circuit().ports[port.port].use == PortUse::drain) sum += port.at.x;
            return sum;
        };
        const bool left = pump ? spacing_.mirror_pumps : spacing_.mirror_actuators;
        const double at = drains_at();
        if (at == 0.0 || (at < 0.0) == left) return;
        attitude.mirrored = !attitude.mirrored;
        sketch_.turn(p, attitude);
    }

    /// The port of line B to the left, so that its line passes the body on the far side of the
    /// motor.
    void mirror_flushing(int p) {
        double a = 0.0;
        double b = 0.0;
        for (std::size_t i = 0; i < part(p).shape.ports.size(); ++i) {
            const int n = sketch_.net_at(p, i);
            if (on(n, NetRole::side_a)) a = part(p).shape.ports[i].at.x;
            if (on(n, NetRole::side_b)) b = part(p).shape.ports[i].at.x;
        }
        if (b <= a) return;
        Attitude attitude = part(p).attitude;
        attitude.mirrored = !attitude.mirrored;
        sketch_.turn(p, attitude);
    }

    void turn_drain(Slot& slot, bool leftwards) {
        const Side in = leftwards ? Side::right : Side::left;
        const Side out = leftwards ? Side::left : Side::right;
        for (std::size_t i = 0; i < slot.parts.size(); ++i) {
            const int p = slot.parts[i];
            std::vector<PortWish> wishes;
            for (int a = 0; a < static_cast<int>(part(p).rest.ports.size()); ++a) {
                const int n = sketch_.net_at(p, static_cast<std::size_t>(a));
                if (n < 0) continue;
                const bool before =
                    i == 0 ? on(n, NetRole::housing) : touches(slot.parts[i - 1], n);
                wishes.push_back({a, before ? in : out, 2});
            }
            turn_to_wishes(sketch_, p, wishes);
            finish_part(p);
        }
    }

    // ---- levels

    int top(int p) { return static_cast<int>(std::floor(sketch_.extent(p).top)); }
    int bottom(int p) { return static_cast<int>(std::ceil(sketch_.extent(p).bottom)); }

    int height_of(const Slot& slot) {
        int height = 0;
        for (const int p : slot.parts) height += bottom(p) - top(p);
        return height + gap_in(slot) * (static_cast<int>(slot.parts.size()) - 1);
    }
    /// Room between parts that stand on one another.
    int gap_in(const Slot& slot) { return is_machine(slot.parts.front()) ? 3 : 2; }

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
                int below = bottom(p);
                for (const Slot& under : column.slots)
                    if (under.zone == Zone::under) below += 2 + height_of(under);
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

    /// Columns of single machines on the common axis.
    bool is_axis(const Column& column) {
        const auto& parts = column.slots.front().parts;
        return column.slots.front().zone == Zone::full && parts.size() == 1 &&
               is_machine(parts.front());
    }

    // ---- columns

    void place_columns() {
        int last = -(1 << 20);
        for (Column& column : plan_.columns) {
            for (Slot& slot : column.slots) stack(slot);
            for (Slot& slot : column.slots)
                if (slot.zone == Zone::under) put_under(slot);
            const std::vector<Solid> own = solids_of(column);
            // As far left as what is there allows, but right of the column before.
            int x = last + least_column_step;
            for (const Solid& there : solids_)
                for (const Solid& solid : own)
                    if (there.box.top < solid.box.bottom + 1.0 &&
                        solid.box.top < there.box.bottom + 1.0)
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

    /// What takes room in a row of columns: a symbol, a label, the way of a line to its level.
    struct Solid {
        enum class What : std::uint8_t { body, label, lane } what = What::body;
        Box box = {};
    };

    double room_between(const Solid& a, const Solid& b) const {
        if (a.what == Solid::What::body && b.what == Solid::What::body) return spacing_.column;
        return std::max(1.5, spacing_.column - 1.5);
    }

    std::vector<Solid> solids_of(const Column& column) {
        std::vector<Solid> out;
        for (const Slot& slot : column.slots)
            for (const int p : slot.parts) {
                const SketchPart& s = part(p);
                const auto add = [&](Solid::What what, const Box& box) {
                    out.push_back({what,
                                   {box.left + s.at.x, box.top + s.at.y, box.right + s.at.x,
                                    box.bottom + s.at.y}});
                };
                add(Solid::What::body, s.shape.body);
                if (s.label_width > 0.0) add(Solid::What::label, s.label);
                for (std::size_t a = 0; a < s.shape.ports.size(); ++a) {
                    const Point at = s.shape.ports[a].at;
                    const int n = sketch_.net_at(p, a);
                    double to = at.y;
                    if (s.shape.ports[a].side == Side::up)
                        to = on(n, NetRole::side_a)   ? a_ - s.at.y
                             : on(n, NetRole::charge) ? charge_ - s.at.y
                                                      : at.y;
                    if (s.shape.ports[a].side == Side::down)
                        to = on(n, NetRole::side_b)   ? b_ - s.at.y
                             : on(n, NetRole::charge) ? charge_ - s.at.y
                                                      : at.y;
                    add(Solid::What::lane, {at.x, std::min(at.y, to), at.x, std::max(at.y, to)});
                }
                for (const int mark : s.marks) {
                    const Cell at = part(mark).at;
                    out.push_back(
                        {Solid::What::body, {at.x - 1.0, at.y - 2.0, at.x + 1.0, at.y + 1.0}});
                }
            }
        return out;
    }

    /// Stands the parts of a slot on one another, about x = 0.
    void stack(const Slot& slot) {
        const int height = height_of(slot);
        const int gap = gap_in(slot);
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
        if (slot.zone == Zone::upper) y = (a_ + charge_ - height) / 2;
        if (slot.zone == Zone::lower && hangs_on_b(slot)) y = (charge_ + b_ - height) / 2;
        if (slot.parts.size() == 1 && slot.zone == Zone::full && is_machine(slot.parts.front())) {
            move(slot.parts.front(), 0, axis_);
            return;
        }
        if (role(slot.parts.front()) == PartRole::load) {
            place_loads(slot);
            return;
        }
        // Stacked actuators share the height evenly.
        const int share = is_machine(slot.parts.front())
                              ? std::max(0, b_ - a_ - 2 * spacing_.row - height) /
                                    (static_cast<int>(slot.parts.size()) + 1)
                              : 0;
        y -= share * (static_cast<int>(slot.parts.size()) - 1) / 2;
        int x = 0;
        for (std::size_t i = 0; i < slot.parts.size(); ++i) {
            const int p = slot.parts[i];
            if (i > 0) x += shift_to(slot.parts[i - 1], p);
            move(p, x, y - top(p));
            y += bottom(p) - top(p) + gap + share;
        }
    }

    bool hangs_on_b(const Slot& slot) {
        for (const int p : slot.parts)
            for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a)
                if (on(sketch_.net_at(p, a), NetRole::side_b)) return true;
        return false;
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

    /// Each load level with the actuator that turns it.
    void place_loads(const Slot& slot) {
        int next = a_;
        for (const int p : slot.parts) {
            int y = axis_;
            const Component& component = sketch_.component(p);
            if (component.shaft != none)
                for (const Index c :
                     sketch_.circuit().components_of(sketch_.circuit().shafts[component.shaft]))
                    if (const int q = sketch_.part_of(c);
                        q >= 0 && role(q) == PartRole::loop_actuator)
                        y = part(q).at.y;
            y = std::max(y, next - top(p));
            move(p, 0, y);
            next = y + bottom(p) + 2;
        }
    }

    void put_under(const Slot& slot) {
        int y = part(slot.host).at.y + bottom(slot.host) + 2;
        int x = part(slot.host).at.x;
        for (std::size_t i = 0; i < slot.parts.size(); ++i) {
            const int p = slot.parts[i];
            x += shift_to(i == 0 ? slot.host : slot.parts[i - 1], p);
            move(p, x, y - top(p));
            y += bottom(p) - top(p) + 2;
        }
    }

    void move(int p, int x, int y) { sketch_.move_to(p, {x, y}); }

    // ---- below, and the level stretches

    void place_drains() {
        std::vector<Box> taken;
        for (const Column& column : plan_.columns)
            for (const Slot& slot : column.slots)
                for (const int p : slot.parts) taken.push_back(placed_box(p, 2.0));
        for (Slot& slot : plan_.drains) {
            const int from = source_x(slot);
            const bool leftwards = from > right_ / 2;
            if (leftwards) turn_drain(slot, true);
            for (int down = 0;; down += 4) {
                int shift = 0;
                for (; shift < right_; ++shift) {
                    lay_out_drain(slot, from + (leftwards ? -3 - shift : 3 + shift), leftwards,
                                  b_ + spacing_.row + down);
                    const bool free =
                        std::none_of(slot.parts.begin(), slot.parts.end(), [&](int p) {
                            const Box own = placed_box(p, 0.0);
                            return std::any_of(taken.begin(), taken.end(),
                                               [&](const Box& box) { return overlap(own, box); });
                        });
                    if (free) break;
                }
                if (shift < right_) break;
            }
            for (const int p : slot.parts) taken.push_back(placed_box(p, 2.0));
        }
    }

    Box placed_box(int p, double room) {
        const Box box = sketch_.extent(p);
        const Cell at = part(p).at;
        return {box.left + at.x - room, box.top + at.y - room, box.right + at.x + room,
                box.bottom + at.y + room};
    }

    /// Where the drain comes from: the machine port on its net, else the middle.
    int source_x(const Slot& slot) {
        for (const int p : slot.parts)
            for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a) {
                const int n = sketch_.net_at(p, a);
                if (n < 0 || !on(n, NetRole::housing)) continue;
                int least = right_ + 1;
                for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                    if (part(end.part).placed && !part(end.part).is_mark() && is_machine(end.part))
                        least = std::min(least, sketch_.cell(end).x);
                if (least <= right_) return least;
            }
        return right_ / 2;
    }

    void lay_out_drain(const Slot& slot, int x, bool leftwards, int upper_edge) {
        int above = 0;
        for (const int p : slot.parts) above = std::max(above, -top(p));
        for (const int p : slot.parts) {
            const Box box = sketch_.extent(p);
            const int left = static_cast<int>(std::floor(box.left));
            const int right = static_cast<int>(std::ceil(box.right));
            move(p, leftwards ? x - right : x - left, upper_edge + above);
            x += leftwards ? -(right - left + spacing_.column) : right - left + spacing_.column;
        }
    }

    void add_trunks() {
        for (std::size_t n = 0; n < sketch_.nets.size(); ++n) {
            const int net = static_cast<int>(n);
            if (on(net, NetRole::side_a)) add_trunk(n, a_);
            if (on(net, NetRole::side_b)) add_trunk(n, b_);
            if (on(net, NetRole::charge)) add_trunk(n, charge_);
        }
    }

    /// A level stretch over all ends in this block.
    void add_trunk(std::size_t n, int y) {
        int left = 1 << 30;
        int right = -(1 << 30);
        for (const SketchEnd& end : sketch_.nets[n].ends) {
            if (part(end.part).block != part(block_.parts.front()).block ||
                part(end.part).is_mark())
                continue;
            const int x = sketch_.cell(end).x;
            left = std::min(left, x);
            right = std::max(right, x);
        }
        if (right - left >= 2) sketch_.nets[n].trunks.push_back({{left, y}, {right, y}});
    }

    /// Housings joined to one another: a level stretch below the block.
    void add_drain_trunks() {
        int y = b_ + 2;
        if (spacing_.drains_below) {
            double lowest = b_;
            for (const int p : block_.parts)
                if (part(p).placed) lowest = std::max(lowest, placed_box(p, 0.0).bottom);
            y = static_cast<int>(std::ceil(lowest)) + 2;
        }
        for (std::size_t n = 0; n < sketch_.nets.size(); ++n) {
            if (!on(static_cast<int>(n), NetRole::housing)) continue;
            int machines = 0;
            for (const SketchEnd& end : sketch_.nets[n].ends)
                if (part(end.part).block == part(block_.parts.front()).block &&
                    is_machine(end.part))
                    ++machines;
            if (machines < 2) continue;
            add_trunk(n, y);
            y += 2;
        }
    }

    /// Marks that several ends share: below the middle of their net.
    void place_marks() {
        int y = b_ + 6;
        for (const int p : block_.parts)
            if (part(p).placed) y = std::max(y, static_cast<int>(placed_box(p, 0.0).bottom) + 6);
        std::vector<int> used;
        for (const int mark : plan_.marks) {
            const int n = sketch_.net_at(mark, 0);
            int sum = 0;
            int count = 0;
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                if (end.part != mark && part(end.part).placed) {
                    sum += sketch_.cell(end).x;
                    ++count;
                }
            int x = count > 0 ? sum / count : 0;
            while (
                std::any_of(used.begin(), used.end(), [&](int u) { return std::abs(u - x) < 6; }))
                ++x;
            used.push_back(x);
            move(mark, x, y);
        }
    }

    Sketch& sketch_;
    const Roles& roles_;
    Block& block_;
    const Spacing& spacing_;
    LoopColumns plan_;
    std::vector<Solid> solids_;
    int charge_ = 0;
    int axis_ = 0;
    int a_ = 0;
    int b_ = 0;
    int right_ = 0;
};

}  // namespace

void place_loop(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing) {
    LoopPlacer(sketch, roles, block, spacing).place();
}

}  // namespace loopwright
