#include <algorithm>
#include <optional>

#include <loopwright/render/loop_bench.h>

namespace loopwright {

namespace {

class LoopTurner : LoopBench {
  public:
    using LoopBench::LoopBench;

    void turn() {
        for (Column& column : plan_.columns)
            for (Slot& slot : column.slots) turn_slot(slot);
        for (const Slot& slot : plan_.drains) turn_drain(slot, false);
    }

    void turn_drain(const Slot& slot, bool leftwards) {
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

  private:
    void finish_part(int p) {
        sketch_.hang_marks(p);
        plan_label(sketch_, p, role(p));
    }

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
            if (role(p) == PartRole::on_shaft) turn_on_shaft(sketch_, roles_, p);
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
};

}  // namespace

void turn_loop(LoopState& state) { LoopTurner(state).turn(); }

void turn_drain(LoopState& state, const Slot& slot, bool leftwards) {
    LoopTurner(state).turn_drain(slot, leftwards);
}

}  // namespace loopwright
