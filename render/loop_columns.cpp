#include <loopwright/render/loop_columns.h>

#include <algorithm>
#include <map>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/render/column_order.h>
#include <loopwright/render/loop_ranks.h>
#include <loopwright/render/shaft_columns.h>
#include <loopwright/render/standings.h>

namespace loopwright {

namespace {

struct Touches {
    bool a = false;
    bool b = false;
    bool charge = false;
    bool drain = false;
};

class ColumnFinder {
  public:
    ColumnFinder(const Sketch& sketch, const Roles& roles, const Block& block)
        : sketch_(sketch), roles_(roles), block_(block), standings_(sketch, roles, block) {
        member_.assign(sketch.parts.size(), 0);
        for (const int p : block.parts) member_[static_cast<std::size_t>(p)] = 1;
    }

    LoopColumns find() {
        add_machines();
        for (const NetRole level : {NetRole::side_a, NetRole::side_b, NetRole::charge})
            add_level(level);
        add_clusters();
        pair_up();
        sort_columns();
        out_.lower_axes = standings_.lower_axes();
        out_.has_charge = std::any_of(sketch_.nets.begin(), sketch_.nets.end(), [&](const auto& n) {
            const auto index = static_cast<std::size_t>(&n - sketch_.nets.data());
            return roles_.net[index].role == NetRole::charge &&
                   std::any_of(n.ends.begin(), n.ends.end(), [&](const SketchEnd& end) {
                       return member_[static_cast<std::size_t>(end.part)] != 0;
                   });
        });
        return std::move(out_);
    }

  private:
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }
    const SketchPart& part(int p) const { return sketch_.parts[static_cast<std::size_t>(p)]; }
    NetRole net_role(int n) const {
        const RoleOfNet& net = roles_.net[static_cast<std::size_t>(n)];
        // Another loop's side is no level of this block.
        return net.loop >= 0 && net.loop != block_.loop ? NetRole::other : net.role;
    }
    bool is_hub(int n) const {
        const NetRole r = net_role(n);
        return r == NetRole::side_a || r == NetRole::side_b || r == NetRole::charge ||
               r == NetRole::housing;
    }
    std::vector<int> nets_of(int p) const {
        std::vector<int> nets;
        for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a)
            if (const int n = sketch_.net_at(p, a); n >= 0) nets.push_back(n);
        return nets;
    }

    void add_column(int rank, Slot slot) {
        for (const int p : slot.parts) done_.insert(p);
        const Standing standing = standings_.of(slot.parts.front(), rank);
        out_.columns.push_back({.rank = rank, .standing = standing, .slots = {std::move(slot)}});
    }

    void add_machines() {
        // By batch: those of one column stand on one another.
        std::map<int, Slot> actuators;
        std::map<int, Slot> loads;
        const auto stack = [this](std::map<int, Slot>& slots, int p, int rank) {
            Slot& slot = slots[standings_.of(p, rank).batch];
            slot.zone = Zone::full;
            slot.parts.push_back(p);
        };
        for (const int p : block_.parts) {
            switch (role(p)) {
                case PartRole::prime_mover:
                    add_column(rank_prime_mover, {.parts = {p}});
                    break;
                case PartRole::loop_pump:
                    add_column(rank_pump, {.parts = {p}});
                    break;
                case PartRole::charge_pump:
                    add_column(rank_charge_pump, {.parts = {p}});
                    break;
                case PartRole::loop_actuator:
                    stack(actuators, p, rank_actuator);
                    break;
                case PartRole::load:
                    stack(loads, p, rank_load);
                    break;
                default:
                    break;
            }
            if (part(p).is_mark()) {
                out_.marks.push_back(p);
                done_.insert(p);
            }
        }
        for (auto& [rank, parts] : shaft_columns(sketch_, roles_, block_)) {
            std::map<int, Slot> slots;
            for (const int p : parts) stack(slots, p, rank);
            for (auto& [batch, slot] : slots) add_column(rank, std::move(slot));
        }
        for (auto& [batch, slot] : actuators) add_column(rank_actuator, std::move(slot));
        for (auto& [batch, slot] : loads) add_column(rank_load, std::move(slot));
    }

    /// In-line parts of a level, in the order of the flow from the pump.
    void add_level(NetRole level) {
        std::vector<int> nets;
        for (const Column& column : out_.columns) {
            const bool start =
                column.rank == (level == NetRole::charge ? rank_charge_pump : rank_pump);
            for (const Slot& slot : column.slots)
                for (const int p : slot.parts)
                    for (const int n : nets_of(p))
                        if (start && net_role(n) == level) nets.push_back(n);
        }
        std::map<int, int> segment;
        for (const int n : nets) segment[n] = 0;
        for (std::size_t i = 0; i < nets.size(); ++i)
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(nets[i])].ends) {
                const int p = end.part;
                if (member_[static_cast<std::size_t>(p)] == 0 || done_.count(p) != 0) continue;
                const std::vector<int> own = nets_of(p);
                if (own.size() != 2 || part(p).shape.ports.size() != 2) continue;
                const int next = own[0] == nets[i] ? own[1] : own[0];
                if (net_role(next) != level || segment.count(next) != 0) continue;
                if (!leads_on(next, p)) continue;
                segment[next] = segment[nets[i]] + 1;
                nets.push_back(next);
                const Zone zone = level == NetRole::side_a   ? Zone::level_a
                                  : level == NetRole::side_b ? Zone::level_b
                                                             : Zone::level_charge;
                add_column(level == NetRole::charge ? rank_charge_line : rank_in_line,
                           {.zone = zone, .parts = {p}});
                before_.push_back({nets[i], p, next});
            }
        for (const auto& [n, s] : segment) segment_[n] = s;
    }

    bool leads_on(int net, int from) const {
        const auto& ends = sketch_.nets[static_cast<std::size_t>(net)].ends;
        return std::any_of(ends.begin(), ends.end(), [&](const SketchEnd& end) {
            return end.part != from && member_[static_cast<std::size_t>(end.part)] != 0;
        });
    }

    Touches touches_of(const std::vector<int>& parts) const {
        Touches touches;
        for (const int p : parts)
            for (const int n : nets_of(p)) switch (net_role(n)) {
                    case NetRole::side_a:
                        touches.a = true;
                        break;
                    case NetRole::side_b:
                        touches.b = true;
                        break;
                    case NetRole::charge:
                        touches.charge = true;
                        break;
                    case NetRole::housing:
                        touches.drain = true;
                        break;
                    default:
                        break;
                }
        return touches;
    }

    void add_clusters() {
        DisjointSets sets(sketch_.parts.size());
        for (std::size_t n = 0; n < sketch_.nets.size(); ++n) {
            if (is_hub(static_cast<int>(n))) continue;
            // By assembly, as each stands in columns of its own: a part of the cluster, plus one.
            std::map<Index, int> first;
            for (const SketchEnd& end : sketch_.nets[n].ends) {
                const int p = end.part;
                if (member_[static_cast<std::size_t>(p)] == 0 || done_.count(p) != 0) continue;
                int& one = first[sketch_.component(p).assembly];
                if (one > 0) sets.join(static_cast<Index>(one - 1), static_cast<Index>(p));
                one = p + 1;
            }
        }
        std::map<Index, std::vector<int>> clusters;
        for (const int p : block_.parts)
            if (done_.count(p) == 0) clusters[sets.find(static_cast<Index>(p))].push_back(p);
        for (auto& [leader, parts] : clusters) add_cluster(parts);
    }

    void add_cluster(std::vector<int>& parts) {
        const Touches touches = touches_of(parts);
        const bool flushing = std::any_of(
            parts.begin(), parts.end(), [&](int p) { return role(p) == PartRole::flushing_valve; });
        const PartRole lead = role(parts.front());
        Slot slot;
        int rank = rank_bridge;
        NetRole top = NetRole::side_a;
        if (touches.a && touches.b) {
            slot.zone = Zone::full;
            rank = flushing                             ? rank_flushing
                   : lead == PartRole::crossport_relief ? rank_crossport
                   : touches.charge                     ? rank_side_charge
                                                        : rank_bridge;
        } else if (touches.a) {
            slot.zone = Zone::upper;
            rank = touches.charge ? rank_between(lead) : rank_on_a;
        } else if (touches.charge) {
            slot.zone = Zone::lower;
            rank = touches.b                         ? rank_between(lead)
                   : lead == PartRole::charge_relief ? rank_charge_relief
                                                     : rank_on_charge;
            top = NetRole::charge;
        } else if (touches.b) {
            slot.zone = Zone::below;
            rank = rank_on_b;
            top = NetRole::side_b;
        } else {
            const int host = suction_host(parts);
            slot.zone = host >= 0 ? Zone::under : Zone::drain;
            slot.host = host;
            top = host >= 0 ? NetRole::suction : NetRole::housing;
        }
        slot.parts = in_order(parts, top);
        if (slot.zone == Zone::drain || slot.zone == Zone::under) {
            for (const int p : slot.parts) done_.insert(p);
            if (slot.zone == Zone::drain)
                out_.drains.push_back(std::move(slot));
            else
                put_under(std::move(slot));
            return;
        }
        add_column(rank, std::move(slot));
    }

    static int rank_between(PartRole lead) {
        return lead == PartRole::make_up_check      ? rank_make_up
               : lead == PartRole::crossport_relief ? rank_relief_to_charge
                                                    : rank_side_charge;
    }

    int suction_host(const std::vector<int>& parts) const {
        for (const int p : parts)
            for (const int n : nets_of(p))
                for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                    if (net_role(n) == NetRole::suction && !part(end.part).shape.shafts.empty() &&
                        member_[static_cast<std::size_t>(end.part)] != 0)
                        return end.part;
        return -1;
    }

    void put_under(Slot slot) {
        for (Column& column : out_.columns)
            for (std::size_t i = 0; i < column.slots.size(); ++i) {
                const auto& parts = column.slots[i].parts;
                if (std::find(parts.begin(), parts.end(), slot.host) == parts.end()) continue;
                column.slots.push_back(std::move(slot));
                return;
            }
        slot.zone = Zone::drain;
        out_.drains.push_back(std::move(slot));
    }

    /// From the part that touches the top level, neighbour by neighbour.
    std::vector<int> in_order(const std::vector<int>& parts, NetRole top) const {
        std::vector<int> order;
        const auto touches = [&](int p, NetRole level) {
            const std::vector<int> nets = nets_of(p);
            return std::any_of(nets.begin(), nets.end(),
                               [&](int n) { return net_role(n) == level; });
        };
        const auto take = [&](int p) {
            if (std::find(order.begin(), order.end(), p) == order.end()) order.push_back(p);
        };
        const auto first =
            std::find_if(parts.begin(), parts.end(), [&](int p) { return touches(p, top); });
        take(first != parts.end() ? *first : parts.front());
        for (std::size_t i = 0; i < order.size(); ++i)
            for (const int n : nets_of(order[i])) {
                if (is_hub(n)) continue;
                for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                    if (std::find(parts.begin(), parts.end(), end.part) != parts.end())
                        take(end.part);
            }
        for (const int p : parts) take(p);
        return order;
    }

    int segment_of(const Column& column, NetRole level) const {
        int segment = 0;
        for (const Slot& slot : column.slots)
            for (const int p : slot.parts)
                for (const int n : nets_of(p))
                    if (const auto at = segment_.find(n);
                        at != segment_.end() && net_role(n) == level)
                        segment = std::max(segment, at->second);
        return segment;
    }

    /// An upper and a lower slot of one kind at one stretch of the charge line share a column; so
    /// do what hangs on the one side and what hangs on the other.
    void pair_up() {
        std::vector<Column>& columns = out_.columns;
        for (std::size_t i = 0; i < columns.size(); ++i)
            for (std::size_t j = i + 1; j < columns.size(); ++j) {
                if (columns[i].slots.size() != 1 || columns[j].slots.size() != 1 ||
                    !is_pair(columns[i], columns[j]) ||
                    assembly_of(sketch_, columns[i]) != assembly_of(sketch_, columns[j]))
                    continue;
                columns[i].slots.push_back(columns[j].slots.front());
                columns.erase(columns.begin() + static_cast<std::ptrdiff_t>(j));
                break;
            }
    }

    bool is_pair(const Column& one, const Column& other) const {
        const Zone a = one.slots.front().zone;
        const Zone b = other.slots.front().zone;
        const auto are = [&](Zone upper, Zone lower) {
            return (a == upper && b == lower) || (a == lower && b == upper);
        };
        if (one.rank == other.rank && are(Zone::upper, Zone::lower))
            return segment_of(one, NetRole::charge) == segment_of(other, NetRole::charge);
        // With parts in both sides' lines the stretches could contradict each other.
        const auto is_cut = [this](NetRole side) {
            return std::any_of(segment_.begin(), segment_.end(), [&](const auto& stretch) {
                return stretch.second > 0 && net_role(stretch.first) == side;
            });
        };
        return are(Zone::upper, Zone::below) && std::max(one.rank, other.rank) == rank_on_a &&
               std::min(one.rank, other.rank) == rank_on_b &&
               !(is_cut(NetRole::side_a) && is_cut(NetRole::side_b));
    }

    /// By more than a pilot.
    bool touches_net(const Column& column, int net) const {
        for (const Slot& slot : column.slots)
            for (const int p : slot.parts)
                for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a)
                    if (sketch_.net_at(p, a) == net &&
                        sketch_.circuit().ports[part(p).shape.ports[a].port].use != PortUse::pilot)
                        return true;
        return false;
    }

    /// By rank, but what touches a stretch before an in-line part stands left of that part.
    void sort_columns() {
        std::vector<Precedence> precedences;
        const std::vector<Column>& columns = out_.columns;
        for (const InLine& in_line : before_)
            for (std::size_t own = 0; own < columns.size(); ++own) {
                if (columns[own].slots.front().parts.front() != in_line.part) continue;
                for (std::size_t i = 0; i < columns.size(); ++i) {
                    if (i == own) continue;
                    const bool first = touches_net(columns[i], in_line.from);
                    const bool second = touches_net(columns[i], in_line.to);
                    if (first == second) continue;
                    precedences.push_back(first ? Precedence{i, own} : Precedence{own, i});
                }
            }
        out_.columns = ordered(sketch_, std::move(out_.columns), precedences);
    }

    struct InLine {
        int from = -1;
        int part = -1;
        int to = -1;
    };

    const Sketch& sketch_;
    const Roles& roles_;
    const Block& block_;
    Standings standings_;
    LoopColumns out_;
    std::vector<char> member_;
    std::set<int> done_;
    std::map<int, int> segment_;
    std::vector<InLine> before_;
};

}  // namespace

LoopColumns columns_of(const Sketch& sketch, const Roles& roles, const Block& block) {
    return ColumnFinder(sketch, roles, block).find();
}

}  // namespace loopwright
