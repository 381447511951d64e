#include <algorithm>
#include <cmath>

#include <loopwright/render/loop_bench.h>

namespace loopwright {

namespace {

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

class BelowPlacer : LoopBench {
  public:
    explicit BelowPlacer(LoopState& state) : LoopBench(state), state_(state) {}

    void place() {
        add_trunks();
        place_drains();
        add_drain_trunks();
        place_marks();
    }

  private:
    void place_drains() {
        std::vector<Box> taken;
        for (const Column& column : plan_.columns)
            for (const Slot& slot : column.slots)
                for (const int p : slot.parts) taken.push_back(placed_box(p, 2.0));
        for (Slot& slot : plan_.drains) {
            const int from = source_x(slot);
            const bool leftwards = from > right_ / 2;
            if (leftwards) turn_drain(state_, slot, true);
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

    LoopState& state_;
};

}  // namespace

void place_below(LoopState& state) { BelowPlacer(state).place(); }

}  // namespace loopwright
