#include <loopwright/graph/structure.h>

#include <algorithm>
#include <bit>

namespace loopwright {

namespace {

void add_once(std::vector<Index>& sorted, Index value) {
    const auto at = std::lower_bound(sorted.begin(), sorted.end(), value);
    if (at == sorted.end() || *at != value) sorted.insert(at, value);
}

void keep_once(std::vector<Index>& values) {
    std::sort(values.begin(), values.end());
    values.erase(std::unique(values.begin(), values.end()), values.end());
}

std::vector<State> states_in(StateSet set) {
    std::vector<State> states;
    states.reserve(static_cast<std::size_t>(std::popcount(set)));
    for (std::size_t s = 0; s < state_count; ++s)
        if ((set & bit(static_cast<State>(s))) != 0) states.push_back(static_cast<State>(s));
    return states;
}

}  // namespace

StructureBuilder::StructureBuilder(const FlowGraph& graph)
    : graph_(graph),
      loop_slot_(graph.circuit().components.size(), none),
      side_slot_(graph.circuit().ports.size(), none),
      on_loop_joint_(graph.joint_count(), 0),
      charge_line_(graph.circuit().lines.size(), 0),
      charges_(graph.circuit().components.size(), 0) {
    structure_.node_of_port = graph.joint_of_port();
}

Index StructureBuilder::loop_of(Index first_pump) {
    Index& slot = loop_slot_[first_pump];
    if (slot == none) {
        slot = static_cast<Index>(structure_.loops.size());
        structure_.loops.emplace_back();
        structure_.loops.back().id =
            "loop:" + std::string(graph_.circuit().components[first_pump].path);
        structure_.loops.back().sides.reserve(2);  // few have branches or sections
    }
    return slot;
}

void StructureBuilder::see(const Situation& situation) {
    if ((situation.states & running_states) == 0) return;  // what is towed alone is no drive
    if (situation.alike.first) see_loops(situation);
    for (const JudgedSide& side : situation.sides) see_side(side, situation.region);
    const bool seen = !situation.alike.first && situation.alike.same_feeds;
    if (!seen && !situation.loops.loops.empty()) see_charge(situation);
}

void StructureBuilder::see_loops(const Situation& situation) {
    for (const Loop& loop : situation.loops.loops) {
        LoopInfo& info = structure_.loops[loop_of(loop.first_pump)];
        for (const Index pump : situation.loops.pumps_of(loop)) add_once(info.pumps, pump);
        for (const Index actuator : situation.loops.actuators_of(loop))
            add_once(info.actuators, actuator);
        for (const Index e : situation.loops.edges_of(loop)) {
            const Edge& edge = situation.region.edges[e];
            on_loop_joint_[situation.region.joints[edge.from]] = 1;
            on_loop_joint_[situation.region.joints[edge.to]] = 1;
        }
    }
}

StructureBuilder::SideSlot& StructureBuilder::slot_of(const JudgedSide& side) {
    const Index loop = loop_of(side.first_pump);
    Index& last = side_slot_[side.named_after];
    for (Index at = last; at != none; at = side_slots_[at].next)
        if (side_slots_[at].loop == loop && side_slots_[at].role == side.role)
            return side_slots_[at];
    std::vector<SideInfo>& sides = structure_.loops[loop].sides;
    if (side_slots_used_ == side_slots_.size()) side_slots_.emplace_back();
    SideSlot& slot = side_slots_[side_slots_used_];
    slot.loop = loop;
    slot.side = static_cast<Index>(sides.size());
    slot.named_after = side.named_after;
    slot.role = side.role;
    slot.next = last;
    slot.states = 0;
    for (auto* list : {&slot.nodes, &slot.ports, &slot.lines}) list->clear();
    last = side_slots_used_++;
    sides.push_back({.id = "side:" + graph_.circuit().port_name(side.named_after),
                     .role = side.role,
                     .named_after = side.named_after});
    return slot;
}

void StructureBuilder::see_side(const JudgedSide& side, const Region& region) {
    SideSlot& slot = slot_of(side);
    slot.states |= side.states & running_states;
    if (std::equal(side.nodes.begin(), side.nodes.end(), slot.nodes.begin(), slot.nodes.end()))
        return;
    // What valves and directions make of it, all together.
    slot.nodes.assign(side.nodes.begin(), side.nodes.end());
    for (const Index node : side.nodes)
        for (const Index port : graph_.ports_of(region.joints[node])) {
            slot.ports.push_back(port);
            for (const Index line : graph_.lines_of(port)) slot.lines.push_back(line);
        }
    keep_once(slot.ports);
    keep_once(slot.lines);
}

void StructureBuilder::finish_sides() {
    for (Index at = 0; at < side_slots_used_; ++at) {
        const SideSlot& slot = side_slots_[at];
        SideInfo& info = structure_.loops[slot.loop].sides[slot.side];
        info.states = states_in(slot.states);
        info.ports = slot.ports;
        info.lines = slot.lines;
        side_slot_[slot.named_after] = none;
    }
    side_slots_used_ = 0;
}

void StructureBuilder::see_charge(const Situation& situation) {
    const Region& region = situation.region;
    const FeedRule rule(region, situation.standing, situation.loops, situation.feeds.pressureless(),
                        situation.open_part_ways);
    for (const ChargeSource& source : situation.feeds.sources) {
        if (!source.is_pump()) continue;
        const Index pump = region.edges[source.edge].component;
        if (charges_[pump] != 0) continue;
        bool reaches_a_loop = situation.feeds.sources.size() == 1;
        Search search;
        if (!reaches_a_loop) {
            search.clear(region.node_count);
            search.begin_at(source.outlet);
            search.run(region, rule);
        }
        const Search& reached = reaches_a_loop ? situation.feeds.fed : search;
        reaches_a_loop = std::any_of(reached.order.begin(), reached.order.end(), [&](Index node) {
            return situation.loops.on_main[node] != 0;
        });
        if (!reaches_a_loop) continue;
        charges_[pump] = 1;
        add_once(structure_.charge_pumps, pump);
    }
    for (const Index node : situation.feeds.line.order)
        for (const Index port : graph_.ports_of(region.joints[node]))
            for (const Index line : graph_.lines_of(port)) charge_line_[line] = 1;
}

void StructureBuilder::finish_region(const Region& region, std::span<const std::uint8_t> looped) {
    finish_sides();
    find_open_parts(region, looped);
}

/// Machines outside the loops, grouped over everything but leakage and reliefs, cut at reservoirs
/// and at the loops.
void StructureBuilder::find_open_parts(const Region& region, std::span<const std::uint8_t> looped) {
    if (std::all_of(region.machines.begin(), region.machines.end(),
                    [&](Index e) { return looped[e] != 0; }))
        return;
    sets_.reset(region.node_count);
    const auto free = [&](Index node) {
        return region.is_reservoir[node] == 0 && on_loop_joint_[region.joints[node]] == 0;
    };
    for (Index e = 0; e < region.edges.size(); ++e) {
        const Edge& edge = region.edges[e];
        if (edge.passage_class == PassageClass::leakage ||
            edge.passage_class == PassageClass::pressure_opened || looped[e] != 0)
            continue;
        if (free(edge.from) && free(edge.to)) sets_.join(edge.from, edge.to);
    }
    part_.assign(region.node_count, none);
    for (const Index e : region.machines) {
        const Edge& edge = region.edges[e];
        if (looped[e] != 0) continue;
        OpenPart* part = nullptr;
        OpenPart alone;
        const Index node = free(edge.to) ? edge.to : free(edge.from) ? edge.from : none;
        if (node == none) {
            structure_.open_parts.push_back(alone);
            part = &structure_.open_parts.back();
        } else {
            Index& at = part_[sets_.find(node)];
            if (at == none) {
                at = static_cast<Index>(structure_.open_parts.size());
                structure_.open_parts.push_back(alone);
            }
            part = &structure_.open_parts[at];
        }
        add_once(edge.part == Part::actuator ? part->actuators : part->pumps, edge.component);
    }
}

Structure StructureBuilder::finish() {
    const auto first_of = [](const OpenPart& part) {
        return part.pumps.empty() ? part.actuators.front() : part.pumps.front();
    };
    std::sort(structure_.open_parts.begin(), structure_.open_parts.end(),
              [&](const OpenPart& a, const OpenPart& b) { return first_of(a) < first_of(b); });
    for (OpenPart& part : structure_.open_parts)
        part.id = "open:" + std::string(graph_.circuit().components[first_of(part)].path);
    std::sort(
        structure_.loops.begin(), structure_.loops.end(),
        [](const LoopInfo& a, const LoopInfo& b) { return a.pumps.front() < b.pumps.front(); });
    for (LoopInfo& loop : structure_.loops)
        std::stable_sort(
            loop.sides.begin(), loop.sides.end(), [](const SideInfo& a, const SideInfo& b) {
                return a.role != b.role ? a.role < b.role : a.named_after < b.named_after;
            });
    for (Index line = 0; line < charge_line_.size(); ++line)
        if (charge_line_[line] != 0) structure_.charge_lines.push_back(line);
    return std::move(structure_);
}

std::string_view name(SideRole role) {
    switch (role) {
        case SideRole::main:
            return "main";
        case SideRole::intermediate:
            return "intermediate";
        case SideRole::branch:
            return "branch";
        case SideRole::section:
            return "section";
    }
    return "";
}

}  // namespace loopwright
