#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include <loopwright/render/frame_rooms.h>
#include <loopwright/render/nesting.h>
#include <loopwright/render/place.h>

namespace loopwright {

namespace {

// Layered drawing (K. Sugiyama, S. Tagawa, M. Toda, IEEE Trans. SMC 1981; cited from memory): rows
// by distance from the pumps, order in a row by the mean of the neighbours, places by least
// squares.
constexpr int order_sweeps = 6;
constexpr int place_sweeps = 8;

class FlowPlacer {
  public:
    FlowPlacer(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing)
        : sketch_(sketch), roles_(roles), block_(block), spacing_(spacing) {
        row_.assign(sketch.parts.size(), -1);
        for (const int p : block.parts) member_.push_back(p);
    }

    void place() {
        find_rows();
        order_rows();
        for (int round = 0; round < 2; ++round) {
            turn_parts();
            place_rows();
        }
        clear_frame();
    }

  private:
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }
    SketchPart& part(int p) { return sketch_.parts[static_cast<std::size_t>(p)]; }
    int& row(int p) { return row_[static_cast<std::size_t>(p)]; }
    bool in_block(int p) { return part(p).block == part(member_.front()).block; }
    bool is_machine(int p) { return !part(p).rest.shafts.empty(); }

    /// Neighbours through nets, in the order of ports. Suction and returns do not carry the flow
    /// on.
    template <typename Visit>
    void each_neighbour(int p, Visit visit) {
        for (std::size_t a = 0; a < part(p).rest.ports.size(); ++a) {
            const int n = sketch_.net_at(p, a);
            if (n < 0) continue;
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                if (end.part != p && in_block(end.part)) visit(end.part, n, a);
        }
    }

    void find_rows() {
        std::vector<int> queue;
        const auto start = [&](int p) {
            if (row(p) >= 0) return;
            row(p) = 0;
            queue.push_back(p);
        };
        for (const int p : member_)
            if (role(p) == PartRole::pump || role(p) == PartRole::charge_pump ||
                role(p) == PartRole::loop_pump)
                start(p);
        std::size_t done = 0;
        for (std::size_t next = 0;; ++next) {
            for (; done < queue.size(); ++done) {
                const int p = queue[done];
                each_neighbour(p, [&](int q, int n, std::size_t) {
                    if (row(q) >= 0 || role(q) == PartRole::suction) return;
                    if (roles_.net[static_cast<std::size_t>(n)].role == NetRole::suction) return;
                    row(q) = row(p) + 1;
                    queue.push_back(q);
                });
            }
            if (next >= member_.size()) break;
            const int p = member_[next];
            const bool later = role(p) == PartRole::prime_mover || role(p) == PartRole::load ||
                               role(p) == PartRole::on_shaft || role(p) == PartRole::suction ||
                               part(p).is_mark();
            if (!later) start(p);
        }
        // What turns with a machine stands beside it; suction parts below everything, marks too.
        for (const int p : member_) {
            if (row(p) >= 0 || part(p).is_mark()) continue;
            for (const TrainPart& one : roles_.train_of(p))
                if (in_block(one.part) && row(one.part) >= 0 && is_driven(one.part))
                    row(p) = row(one.part);
        }
        int lowest = 0;
        for (const int p : member_)
            if (row(p) < 0) lowest = -1;
        for (const int p : member_) row(p) = row(p) < 0 ? 0 : row(p) - lowest;
        const int rows = 1 + *std::max_element(row_.begin(), row_.end());
        rows_.assign(static_cast<std::size_t>(rows), {});
        for (const int p : member_) rows_[static_cast<std::size_t>(row(p))].push_back(p);
    }

    /// By the mean of the neighbours; prime movers and loads beside the machine they turn with.
    void order_rows() {
        std::map<int, double> at;
        for (auto& parts : rows_)
            for (std::size_t i = 0; i < parts.size(); ++i) at[parts[i]] = static_cast<double>(i);
        for (int sweep = 0; sweep < order_sweeps; ++sweep)
            for (std::size_t r = 0; r < rows_.size(); ++r) {
                auto& parts = rows_[sweep % 2 == 0 ? r : rows_.size() - 1 - r];
                std::map<int, double> mean;
                for (const int p : parts) {
                    double sum = 0.0;
                    int count = 0;
                    each_neighbour(p, [&](int q, int, std::size_t) {
                        if (row(q) == row(p)) return;
                        sum += at[q];
                        ++count;
                    });
                    mean[p] = count > 0 ? sum / count : at[p];
                }
                std::stable_sort(parts.begin(), parts.end(),
                                 [&](int a, int b) { return mean[a] < mean[b]; });
                join_on_shafts(parts);
                for (std::size_t i = 0; i < parts.size(); ++i)
                    at[parts[i]] = static_cast<double>(i);
            }
    }

    /// A prime mover moves to the left of the first machine it turns with, a load to the right of
    /// the last, what stands on shafts between.
    void join_on_shafts(std::vector<int>& parts) {
        std::vector<int> order;
        const auto take = [&](PartRole wanted) {
            for (const int p : parts)
                if (role(p) == wanted) order.push_back(p);
        };
        take(PartRole::prime_mover);
        take(PartRole::load);
        for (const Train& train : roles_.trains) {
            std::vector<int> between;
            for (const TrainPart& one : train)
                if (role(one.part) == PartRole::on_shaft &&
                    std::find(parts.begin(), parts.end(), one.part) != parts.end())
                    between.push_back(one.part);
            if (!is_driving(train)) std::reverse(between.begin(), between.end());
            order.insert(order.end(), between.begin(), between.end());
        }
        for (const int p : order) {
            const int machine = turns_with(p, parts);
            if (machine < 0) continue;
            parts.erase(std::find(parts.begin(), parts.end(), p));
            const auto at = std::find(parts.begin(), parts.end(), machine);
            parts.insert(stands_before(p) ? at : at + 1, p);
        }
    }

    bool is_driving(std::span<const TrainPart> train) const {
        return std::any_of(train.begin(), train.end(), [this](const TrainPart& one) {
            return role(one.part) == PartRole::prime_mover;
        });
    }
    bool stands_before(int p) const {
        return role(p) == PartRole::prime_mover ||
               (role(p) == PartRole::on_shaft && is_driving(roles_.train_of(p)));
    }

    /// The machine of a row that a prime mover, a load or what stands on a shaft stands beside; -1
    /// for what is none of these.
    int turns_with(int p, const std::vector<int>& parts) {
        if (part(p).is_mark() || is_driven(p)) return -1;
        const bool first = stands_before(p);
        const int train = roles_.train[static_cast<std::size_t>(p)];
        int machine = -1;
        for (const int q : parts)
            if (train >= 0 && roles_.train[static_cast<std::size_t>(q)] == train && is_driven(q) &&
                (machine < 0 || !first))
                machine = q;
        return machine;
    }
    bool is_driven(int p) {
        return !part(p).is_mark() && role(p) != PartRole::prime_mover &&
               role(p) != PartRole::load && role(p) != PartRole::on_shaft;
    }

    /// An assembly's block holds nothing else but what turns with its machines: that stands outside
    /// the frame, to the left what drives and to the right what is driven.
    void clear_frame() {
        const FrameRooms rooms(sketch_, member_);
        const auto home = [&](int p) { return sketch_.component(p).assembly; };
        const auto inside = std::find_if(member_.begin(), member_.end(), [&](int p) {
            return !part(p).is_mark() && home(p) != none;
        });
        if (inside == member_.end()) return;
        const Box frame = *rooms.around(next_inside(sketch_.circuit(), home(*inside), none));
        int left = static_cast<int>(std::floor(frame.left));
        int right = static_cast<int>(std::ceil(frame.right));
        for (auto& parts : rows_) {
            // From the machine outwards.
            for (auto p = parts.rbegin(); p != parts.rend(); ++p)
                if (!part(*p).is_mark() && home(*p) == none && stands_before(*p)) {
                    const Box own = sketch_.extent(*p);
                    left -= static_cast<int>(std::ceil(own.right));
                    sketch_.move_to(*p, {left, part(*p).at.y});
                    left -= static_cast<int>(std::ceil(-own.left)) + spacing_.column;
                }
            for (const int p : parts)
                if (!part(p).is_mark() && home(p) == none && !stands_before(p)) {
                    const Box own = sketch_.extent(p);
                    right += static_cast<int>(std::ceil(-own.left));
                    sketch_.move_to(p, {right, part(p).at.y});
                    right += static_cast<int>(std::ceil(own.right)) + spacing_.column;
                }
            left = static_cast<int>(std::floor(frame.left));
            right = static_cast<int>(std::ceil(frame.right));
        }
        hang_outside(sketch_, rooms, member_, {});
    }

    void turn_parts() {
        for (const int p : member_) {
            if (part(p).is_mark()) continue;
            std::vector<PortWish> wishes;
            std::vector<int> own(part(p).rest.ports.size(), 0);
            for (std::size_t a = 0; a < part(p).rest.ports.size(); ++a) {
                int above = 0;
                int below = 0;
                const int n = sketch_.net_at(p, a);
                if (n < 0) continue;
                for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends) {
                    if (end.part == p || !in_block(end.part)) continue;
                    if (part(end.part).is_mark() || row(end.part) < row(p))
                        ++below;
                    else if (row(end.part) > row(p))
                        ++above;
                }
                if (part(p).rest.ports.size() <= 3 || is_machine(p)) {
                    if (above > 0)
                        wishes.push_back({static_cast<int>(a), Side::up, 2});
                    else if (below > 0)
                        wishes.push_back({static_cast<int>(a), Side::down, 1});
                }
            }
            turn_to_wishes(sketch_, p, wishes);
            if (role(p) == PartRole::on_shaft) turn_on_shaft(sketch_, roles_, p);
            sketch_.hang_marks(p);
            plan_label(sketch_, p, role(p));
        }
    }

    void place_rows() {
        // From the bottom up.
        int y = 0;
        for (auto& parts : rows_) {
            int top = 0;
            int bottom = 0;
            for (const int p : parts) {
                const Box box = sketch_.extent(p);
                top = std::min(top, static_cast<int>(std::floor(box.top)));
                bottom = std::max(bottom, static_cast<int>(std::ceil(box.bottom)));
            }
            y -= bottom;
            int x = 0;
            for (const int p : parts) {
                const Box box = sketch_.extent(p);
                x += static_cast<int>(std::ceil(-box.left));
                sketch_.move_to(p, {x, y});
                x += static_cast<int>(std::ceil(box.right)) + spacing_.column;
            }
            y += top - channel(parts);
        }
        for (int sweep = 0; sweep < place_sweeps; ++sweep)
            for (std::size_t r = 0; r < rows_.size(); ++r)
                align_row(rows_[sweep % 2 == 0 ? r : rows_.size() - 1 - r]);
        for (const int p : member_)
            if (role(p) == PartRole::pump) {
                block_.axis_x = part(p).at.x;
                break;
            }
    }

    /// Room above a row for the nets that run there.
    int channel(const std::vector<int>& parts) {
        std::vector<int> nets;
        for (const int p : parts)
            each_neighbour(p, [&](int q, int n, std::size_t) {
                if (row(q) > row(p)) nets.push_back(n);
            });
        std::sort(nets.begin(), nets.end());
        nets.erase(std::unique(nets.begin(), nets.end()), nets.end());
        return spacing_.row + 2 * static_cast<int>(nets.size());
    }

    /// Where a part would like to be so that its lines run straight.
    double wish(int p) {
        std::vector<double> wishes;
        for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a) {
            const int n = sketch_.net_at(p, a);
            if (n < 0) continue;
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                if (end.part != p && in_block(end.part) && row(end.part) != row(p))
                    wishes.push_back(sketch_.cell(end).x - part(p).shape.ports[a].at.x);
        }
        if (wishes.empty()) return part(p).at.x;
        std::sort(wishes.begin(), wishes.end());
        return wishes[wishes.size() / 2];
    }

    /// Least squares under "keep order and distance": pools of neighbours that would overlap.
    void align_row(std::vector<int>& parts) {
        struct Pool {
            double sum = 0.0;
            double count = 0.0;
            std::size_t first = 0;
        };
        std::vector<double> offset(parts.size(), 0.0);
        for (std::size_t i = 1; i < parts.size(); ++i) {
            const Box before = sketch_.extent(parts[i - 1]);
            const Box own = sketch_.extent(parts[i]);
            offset[i] =
                offset[i - 1] + std::ceil(before.right) + spacing_.column + std::ceil(-own.left);
        }
        std::vector<Pool> pools;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            // What has no wish of its own goes with the machine that it turns with.
            const auto machine = std::find(parts.begin(), parts.end(), turns_with(parts[i], parts));
            const std::size_t w =
                machine == parts.end() ? i : static_cast<std::size_t>(machine - parts.begin());
            pools.push_back({wish(parts[w]) - offset[w], 1.0, i});
            while (pools.size() > 1) {
                const Pool last = pools.back();
                Pool& before = pools[pools.size() - 2];
                if (before.sum / before.count <= last.sum / last.count) break;
                before.sum += last.sum;
                before.count += last.count;
                pools.pop_back();
            }
        }
        for (std::size_t k = 0; k < pools.size(); ++k) {
            const std::size_t end = k + 1 < pools.size() ? pools[k + 1].first : parts.size();
            const int base = static_cast<int>(std::lround(pools[k].sum / pools[k].count));
            for (std::size_t i = pools[k].first; i < end; ++i)
                sketch_.move_to(parts[i],
                                {base + static_cast<int>(offset[i]), part(parts[i]).at.y});
        }
    }

    Sketch& sketch_;
    const Roles& roles_;
    Block& block_;
    const Spacing& spacing_;
    std::vector<int> member_;
    std::vector<int> row_;
    std::vector<std::vector<int>> rows_;
};

}  // namespace

void place_flow(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing) {
    FlowPlacer(sketch, roles, block, spacing).place();
}

}  // namespace loopwright
