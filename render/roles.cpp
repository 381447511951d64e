#include <loopwright/render/roles.h>

#include <algorithm>

namespace loopwright {

namespace {

class RoleFinder {
  public:
    RoleFinder(const Sketch& sketch, const Structure& structure)
        : sketch_(sketch), structure_(structure) {
        roles_.part.assign(sketch.parts.size(), PartRole::other);
        roles_.loop.assign(sketch.parts.size(), -1);
        roles_.net.assign(sketch.nets.size(), {});
    }

    Roles find() {
        roles_.trains = trains_of(sketch_);
        roles_.train.assign(sketch_.parts.size(), -1);
        for (std::size_t t = 0; t < roles_.trains.size(); ++t)
            for (const TrainPart& one : roles_.trains[t])
                roles_.train[static_cast<std::size_t>(one.part)] = static_cast<int>(t);
        name_machines();
        name_sides();
        name_charge();
        name_rest_of_nets();
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p)
            if (part(p) == PartRole::other && !sketch_.parts[static_cast<std::size_t>(p)].is_mark())
                name_part(p);
        return std::move(roles_);
    }

  private:
    PartRole& part(int p) { return roles_.part[static_cast<std::size_t>(p)]; }
    RoleOfNet& net(int n) { return roles_.net[static_cast<std::size_t>(n)]; }

    void set(Index component, PartRole role, int loop) {
        const int p = sketch_.part_of(component);
        if (p < 0) return;
        part(p) = role;
        if (loop >= 0 && roles_.loop[static_cast<std::size_t>(p)] < 0)
            roles_.loop[static_cast<std::size_t>(p)] = loop;
    }

    void name_machines() {
        const Circuit& circuit = sketch_.circuit();
        for (Index c = 0; c < circuit.components.size(); ++c)
            switch (circuit.components[c].kind->part) {
                case Part::prime_mover:
                    set(c, PartRole::prime_mover, -1);
                    break;
                case Part::pump:
                case Part::hand_pump:
                    set(c, PartRole::pump, -1);
                    break;
                case Part::actuator:
                case Part::pump_motor:
                    set(c, PartRole::actuator, -1);
                    break;
                case Part::load:
                    set(c, PartRole::load, -1);
                    break;
                case Part::brake:
                case Part::clutch:
                case Part::gearbox:
                    set(c, PartRole::on_shaft, -1);
                    break;
                case Part::instrument:
                    if (circuit.components[c].kind->turns) set(c, PartRole::on_shaft, -1);
                    break;
                default:
                    break;
            }
        for (const OpenPart& open : structure_.open_parts)
            for (const Index c : open.pumps) set(c, PartRole::pump, -1);
        for (const Index c : structure_.charge_pumps) set(c, PartRole::charge_pump, -1);
        for (std::size_t l = 0; l < structure_.loops.size(); ++l) {
            const LoopInfo& loop = structure_.loops[l];
            for (const Index c : loop.pumps) set(c, PartRole::loop_pump, static_cast<int>(l));
            for (const Index c : loop.actuators)
                set(c, PartRole::loop_actuator, static_cast<int>(l));
        }
        for (const Train& train : roles_.trains) name_pumps_beside(train);
    }

    /// What pumps on the loop pump's shaft stands beside it, whatever it feeds.
    void name_pumps_beside(const Train& train) {
        if (std::none_of(train.begin(), train.end(), [&](const TrainPart& one) {
                return part(one.part) == PartRole::loop_pump;
            }))
            return;
        for (const TrainPart& one : train)
            if (part(one.part) == PartRole::pump) part(one.part) = PartRole::charge_pump;
    }

    void name_sides() {
        for (std::size_t l = 0; l < structure_.loops.size(); ++l) {
            NetRole next = NetRole::side_a;
            for (const SideInfo& side : structure_.loops[l].sides) {
                NetRole role = NetRole::side;
                if (side.role == SideRole::main) {
                    role = next;
                    next = next == NetRole::side_a ? NetRole::side_b : NetRole::side;
                }
                for (const Index port : side.ports) {
                    const int n = sketch_.net_of_port(port);
                    if (n >= 0 && net(n).role == NetRole::other)
                        net(n) = {role, static_cast<int>(l)};
                }
            }
        }
    }

    void name_charge() {
        const Circuit& circuit = sketch_.circuit();
        for (const Index line : structure_.charge_lines)
            for (const Index port : circuit.ports_of(circuit.lines[line])) {
                const int n = sketch_.net_of_port(port);
                if (n >= 0 && net(n).role == NetRole::other) net(n).role = NetRole::charge;
            }
        // What feeds a side through a check is a charge line for the eye, wherever it comes from.
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p) {
            const auto [from, to] = check_of(p);
            if (from < 0 || to < 0 || !is_side(to)) continue;
            if (net(from).role == NetRole::other && !has_mark(from))
                net(from).role = NetRole::charge;
        }
    }

    void name_rest_of_nets() {
        const Circuit& circuit = sketch_.circuit();
        for (int n = 0; n < static_cast<int>(sketch_.nets.size()); ++n) {
            if (net(n).role != NetRole::other) continue;
            bool suction = false;
            bool housing = false;
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends) {
                const SketchPart& part = sketch_.parts[static_cast<std::size_t>(end.part)];
                if (part.is_mark()) continue;
                const Index port = part.shape.ports[static_cast<std::size_t>(end.anchor)].port;
                const PortUse use = circuit.ports[port].use;
                suction = suction || (use == PortUse::suction && is_pump(end.part));
                housing = housing || use == PortUse::drain;
            }
            if (suction)
                net(n).role = NetRole::suction;
            else if (housing)
                net(n).role = NetRole::housing;
            else if (has_mark(n))
                net(n).role = NetRole::back;
        }
    }

    bool is_pump(int p) const { return sketch_.component(p).kind->part == Part::pump; }

    bool is_side(int n) const {
        const NetRole role = roles_.net[static_cast<std::size_t>(n)].role;
        return role == NetRole::side_a || role == NetRole::side_b || role == NetRole::side;
    }

    bool has_mark(int n) const {
        const auto& ends = sketch_.nets[static_cast<std::size_t>(n)].ends;
        return std::any_of(ends.begin(), ends.end(), [&](const SketchEnd& end) {
            return sketch_.parts[static_cast<std::size_t>(end.part)].is_mark();
        });
    }

    /// Nets before and behind the first passage of a class; -1 where there is none.
    std::pair<int, int> nets_through(int p, PassageClass wanted) const {
        const Circuit& circuit = sketch_.circuit();
        if (sketch_.parts[static_cast<std::size_t>(p)].is_mark()) return {-1, -1};
        for (const Passage& passage : circuit.passages_of(sketch_.component(p)))
            if (passage.passage == wanted && !passage.bypass)
                return {sketch_.net_of_port(passage.from), sketch_.net_of_port(passage.to)};
        return {-1, -1};
    }
    std::pair<int, int> check_of(int p) const { return nets_through(p, PassageClass::one_way); }

    void name_part(int p) {
        if (const auto [from, to] = check_of(p); from >= 0 && to >= 0) {
            if (is_side(to) && net(from).role == NetRole::charge) part(p) = PartRole::make_up_check;
        } else if (const auto [in, out] = nets_through(p, PassageClass::pressure_opened); in >= 0) {
            name_relief(p, in, out);
        } else if (is_flushing(p)) {
            part(p) = PartRole::flushing_valve;
        }
        if (part(p) == PartRole::other) name_two_port(p);
    }

    void name_relief(int p, int in, int out) {
        if (is_side(in) && out >= 0 && (is_side(out) || net(out).role == NetRole::charge))
            part(p) = PartRole::crossport_relief;
        else if (net(in).role == NetRole::charge)
            part(p) = PartRole::charge_relief;
        else
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(in)].ends)
                if (is_flushing(end.part)) part(p) = PartRole::flushing_relief;
    }

    bool is_flushing(int p) const {
        const Circuit& circuit = sketch_.circuit();
        if (sketch_.parts[static_cast<std::size_t>(p)].is_mark()) return false;
        const auto passages = circuit.passages_of(sketch_.component(p));
        return std::any_of(passages.begin(), passages.end(),
                           [](const Passage& passage) { return passage.shift == Shift::pressure; });
    }

    void name_two_port(int p) {
        const Symbol& shape = sketch_.parts[static_cast<std::size_t>(p)].shape;
        const Part kind = sketch_.component(p).kind->part;
        if (shape.ports.size() != 2) return;
        const int a = sketch_.net_at(p, 0);
        const int b = sketch_.net_at(p, 1);
        if (a < 0 || b < 0) return;
        const NetRole one = net(a).role;
        const NetRole other = net(b).role;
        if (one == NetRole::suction || other == NetRole::suction)
            part(p) = PartRole::suction;
        else if (kind == Part::filter && (one == NetRole::charge || other == NetRole::charge))
            part(p) = PartRole::charge_filter;
        else if (one == other && net(a).loop == net(b).loop && a != b &&
                 (is_side(a) || one == NetRole::charge))
            part(p) = PartRole::in_line;
        else if (kind == Part::cooler)
            part(p) = PartRole::cooler;
    }

    const Sketch& sketch_;
    const Structure& structure_;
    Roles roles_;
};

}  // namespace

Roles roles_of(const Sketch& sketch, const Structure& structure) {
    return RoleFinder(sketch, structure).find();
}

std::string_view name(PartRole role) {
    switch (role) {
        case PartRole::other:
            return "other";
        case PartRole::prime_mover:
            return "prime mover";
        case PartRole::loop_pump:
            return "loop pump";
        case PartRole::charge_pump:
            return "charge pump";
        case PartRole::pump:
            return "pump";
        case PartRole::loop_actuator:
            return "loop actuator";
        case PartRole::actuator:
            return "actuator";
        case PartRole::load:
            return "load";
        case PartRole::on_shaft:
            return "on a shaft";
        case PartRole::make_up_check:
            return "make-up check";
        case PartRole::crossport_relief:
            return "crossport relief";
        case PartRole::charge_relief:
            return "charge relief";
        case PartRole::flushing_valve:
            return "flushing valve";
        case PartRole::flushing_relief:
            return "flushing relief";
        case PartRole::charge_filter:
            return "charge filter";
        case PartRole::in_line:
            return "in line";
        case PartRole::cooler:
            return "cooler";
        case PartRole::suction:
            return "suction part";
    }
    return "";
}

}  // namespace loopwright
