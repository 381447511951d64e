#include <algorithm>
#include <cmath>
#include <set>

#include <loopwright/render/frame_rooms.h>
#include <loopwright/render/loop_bench.h>
#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

// How far down places are looked for, M.
constexpr int deepest = 200;

class BelowPlacer : LoopBench {
  public:
    explicit BelowPlacer(LoopState& state)
        : LoopBench(state), state_(state), rooms_(state.sketch, state.block.parts) {}

    void place() {
        add_trunks();
        place_drains();
        clear_frames();
        add_drain_trunks();
        place_marks();
    }

  private:
    Index home(const Slot& slot) { return sketch_.component(slot.parts.front()).assembly; }

    /// First those that belong inside a frame, then those that must stand outside.
    void place_drains() {
        for (const Column& column : plan_.columns)
            for (const Slot& slot : column.slots)
                for (const int p : slot.parts) {
                    taken_.push_back(p);
                    if (slot.zone == Zone::under) under_.insert(p);
                }
        for (const bool framed : {true, false})
            for (Slot& slot : plan_.drains)
                if ((home(slot) != none) == framed) place_drain(slot);
    }

    void place_drain(Slot& slot) {
        const Box* frame = rooms_.around(home(slot));
        int from = source_x(slot);
        if (frame != nullptr && (from < frame->left || from > frame->right))
            from = static_cast<int>((frame->left + frame->right) / 2);
        const bool leftwards = from > right_ / 2;
        if (leftwards) turn_drain(state_, slot, true);
        for (const bool strict : {true, false})
            for (int down = 0; down < deepest; down += 4)
                for (int shift = 0; shift < right_; ++shift)
                    for (const int way : {leftwards ? -1 : 1, leftwards ? 1 : -1}) {
                        // What has no frame stands on one side of where it comes from.
                        if (way != (leftwards ? -1 : 1) && (frame == nullptr || !strict)) continue;
                        lay_out_drain(slot, from + way * (3 + shift), leftwards,
                                      b_ + spacing_.row + down);
                        if (!is_free(slot, strict)) continue;
                        for (const int p : slot.parts) {
                            taken_.push_back(p);
                            rooms_.add(p);
                        }
                        return;
                    }
    }

    /// Clear of everything, and strictly also of the frames of others, while none of others gets
    /// into its own.
    bool is_free(const Slot& slot, bool strict) {
        return std::all_of(slot.parts.begin(), slot.parts.end(), [&](int p) {
            const Box own = placed_box(p, 0.0);
            const Index assembly = sketch_.component(p).assembly;
            if (strict && rooms_.is_foreign(assembly, own)) return false;
            const bool framed = strict && assembly != none;
            if (framed && rooms_.hits_frame(assembly, sketch_.body(p))) return false;
            const Box frame = framed ? rooms_.grown(assembly, sketch_.body(p)) : own;
            return std::none_of(taken_.begin(), taken_.end(), [&](int other) {
                return overlap(own, placed_box(other, 2.0)) ||
                       (framed && under_.count(other) == 0 &&
                        !is_inside(sketch_.circuit(), sketch_.component(other).assembly,
                                   assembly) &&
                        overlap(frame, placed_box(other, 0.0)));
            });
        });
    }

    /// Moves out of frames downwards what does not belong there: parts in suction lines, and the
    /// reservoir marks of parts inside.
    void clear_frames() {
        for (const Column& column : plan_.columns)
            for (const Slot& slot : column.slots)
                if (slot.zone == Zone::under) lower(slot);
        hang_outside(sketch_, rooms_, block_.parts, {b_});
    }

    void lower(const Slot& slot) {
        const auto stands_well = [&](int p) {
            const Box own = placed_box(p, 0.0);
            return !rooms_.is_foreign(sketch_.component(p).assembly, own) && is_off_levels(own) &&
                   std::none_of(taken_.begin(), taken_.end(), [&](int other) {
                       return std::find(slot.parts.begin(), slot.parts.end(), other) ==
                                  slot.parts.end() &&
                              overlap(own, placed_box(other, 1.0));
                   });
        };
        if (std::none_of(slot.parts.begin(), slot.parts.end(), [&](int p) {
                return rooms_.is_foreign(sketch_.component(p).assembly, placed_box(p, 0.0));
            }))
            return;
        for (int down = 0; down < deepest; ++down) {
            if (std::all_of(slot.parts.begin(), slot.parts.end(), stands_well)) return;
            for (const int p : slot.parts) move(p, part(p).at.x, part(p).at.y + 1);
        }
    }

    /// No level line may run through a symbol.
    bool is_off_levels(const Box& box) const {
        return b_ <= box.top - 1.0 || b_ >= box.bottom + 1.0;
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
    FrameRooms rooms_;
    std::vector<int> taken_ = {};
    std::set<int> under_ = {};  // of those in suction lines, which can go lower
};

}  // namespace

void place_below(LoopState& state) { BelowPlacer(state).place(); }

}  // namespace loopwright
