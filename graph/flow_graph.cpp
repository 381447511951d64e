// Joints by union-find over lines and joined passages; regions by union-find over the joints of
// each component, reservoirs left out; then all passages sorted by region and nodes numbered as
// they are met, so that a region's data lie side by side.
#include <loopwright/graph/flow_graph.h>

#include <algorithm>
#include <limits>

#include <loopwright/graph/disjoint_sets.h>

namespace loopwright {

FlowGraph::FlowGraph(const Circuit& circuit) : circuit_(circuit), drives_(circuit) {
    find_parts();
    find_joints();
    find_regions();
    fill_regions();
}

void FlowGraph::find_parts() {
    const auto part_of = [](const Component& component) {
        return static_cast<std::size_t>(component.kind->part);
    };
    parts_.reserve(circuit_.components.size());
    for (const Component& component : circuit_.components) {
        const Part part = component.kind->part;
        const auto c = static_cast<Index>(parts_.size());
        ++by_part_offsets_[part_of(component) + 1];
        parts_.push_back(part != Part::pump_motor ? part : turned(c) ? Part::pump : Part::actuator);
    }
    for (std::size_t p = 0; p < part_count; ++p) by_part_offsets_[p + 1] += by_part_offsets_[p];
    by_part_.resize(circuit_.components.size());
    auto next = by_part_offsets_;
    for (Index c = 0; c < circuit_.components.size(); ++c)
        by_part_[next[part_of(circuit_.components[c])]++] = c;
}

void FlowGraph::find_joints() {
    const auto port_count = static_cast<Index>(circuit_.ports.size());
    DisjointSets sets(port_count);
    port_line_offsets_.assign(port_count + 1, 0);
    for (const Line& line : circuit_.lines) {
        const auto ports = circuit_.ports_of(line);
        for (const Index port : ports) {
            sets.join(ports.front(), port);
            ++port_line_offsets_[port + 1];
        }
    }
    for (Index port = 0; port < port_count; ++port)
        port_line_offsets_[port + 1] += port_line_offsets_[port];
    port_lines_.resize(port_line_offsets_.back());
    std::vector<Index> cursor(port_line_offsets_.begin(), port_line_offsets_.end() - 1);
    for (Index line = 0; line < circuit_.lines.size(); ++line)
        for (const Index port : circuit_.ports_of(circuit_.lines[line]))
            port_lines_[cursor[port]++] = line;
    for (const Passage& passage : circuit_.passages)
        if (passage.passage == PassageClass::joined) sets.join(passage.from, passage.to);
    const auto ports_with = [&](Part part, auto take) {
        for (const Index c : components_with(part)) {
            const Range ports = circuit_.components[c].ports;
            for (Index port = ports.begin; port < ports.end; ++port) take(port, ports.begin);
        }
    };
    ports_with(Part::reservoir, [&](Index port, Index first) { sets.join(first, port); });

    joint_of_port_.resize(port_count);
    for (Index port = 0; port < port_count; ++port) {
        const Index leader = sets.find(port);  // never behind the port itself
        joint_of_port_[port] = leader == port ? joint_count_++ : joint_of_port_[leader];
    }
    reservoir_joint_.assign(joint_count_, 0);
    ports_with(Part::reservoir,
               [&](Index port, Index) { reservoir_joint_[joint_of_port_[port]] = 1; });
    if (!components_with(Part::accumulator).empty()) accumulator_joint_.assign(joint_count_, 0);
    ports_with(Part::accumulator,
               [&](Index port, Index) { accumulator_joint_[joint_of_port_[port]] = 1; });

    find_gas_pressures();

    joint_port_offsets_.assign(joint_count_ + 1, 0);
    for (const Index joint : joint_of_port_) ++joint_port_offsets_[joint + 1];
    for (Index joint = 0; joint < joint_count_; ++joint)
        joint_port_offsets_[joint + 1] += joint_port_offsets_[joint];
    joint_ports_.resize(port_count);
    cursor.assign(joint_port_offsets_.begin(), joint_port_offsets_.end() - 1);
    for (Index port = 0; port < port_count; ++port)
        joint_ports_[cursor[joint_of_port_[port]]++] = port;
}

void FlowGraph::find_gas_pressures() {
    const auto pressure_in = [&](Index c) {
        const Component& reservoir = circuit_.components[c];
        if (circuit_.is_yes(reservoir, "breather")) return 0.0;
        return circuit_.figure(reservoir, "pressure").value_or(0.0);
    };
    const auto reservoirs = components_with(Part::reservoir);
    if (std::none_of(reservoirs.begin(), reservoirs.end(),
                     [&](Index c) { return pressure_in(c) > 0.0; }))
        return;
    gas_pressure_.assign(joint_count_, std::numeric_limits<double>::infinity());
    for (const Index c : reservoirs) {
        const Range ports = circuit_.components[c].ports;
        for (Index port = ports.begin; port < ports.end; ++port) {
            double& least = gas_pressure_[joint_of_port_[port]];
            least = std::min(least, pressure_in(c));
        }
    }
}

void FlowGraph::find_regions() {
    // One more member than joints: where everything stands that touches reservoirs only.
    DisjointSets sets(joint_count_ + 1);
    const Index tank_to_tank = joint_count_;
    const auto component_count = static_cast<Index>(circuit_.components.size());
    std::vector<Index> member(component_count, none);
    const auto stand_at = [&](Index c, Index port) {
        const Index joint = joint_of_port_[port];
        if (reservoir_joint_[joint] != 0) return;
        if (member[c] == tank_to_tank)
            member[c] = joint;
        else
            sets.join(member[c], joint);
    };
    for (Index c = 0; c < component_count; ++c) {
        for (const Passage& passage : circuit_.passages_of(circuit_.components[c])) {
            if (passage.passage == PassageClass::joined) continue;
            if (member[c] == none) member[c] = tank_to_tank;
            for (const Index port : {passage.from, passage.to, passage.pilot})
                if (port != none) stand_at(c, port);
        }
        // What sets a machine's displacement is decided where the machine is.
        if (member[c] == none) continue;
        const Range ports = circuit_.components[c].ports;
        for (Index port = ports.begin; port < ports.end; ++port)
            if (circuit_.ports[port].use == PortUse::pilot) stand_at(c, port);
    }
    std::vector<Index> region_of_set(joint_count_ + 1, none);
    region_of_component_.assign(component_count, none);
    Index region_count = 0;
    for (Index c = 0; c < component_count; ++c) {
        if (member[c] == none) continue;
        Index& region = region_of_set[sets.find(member[c])];
        if (region == none) region = region_count++;
        region_of_component_[c] = region;
    }
    regions_.resize(region_count);
}

void FlowGraph::fill_regions() {
    const auto region_count = static_cast<Index>(regions_.size());
    std::vector<Index> offsets(region_count + 1, 0);
    for (const Index region : region_of_component_)
        if (region != none) ++offsets[region + 1];
    for (Index r = 0; r < region_count; ++r) offsets[r + 1] += offsets[r];
    components_.resize(offsets.back());
    {
        std::vector<Index> cursor(offsets.begin(), offsets.end() - 1);
        for (Index c = 0; c < region_of_component_.size(); ++c)
            if (region_of_component_[c] != none) components_[cursor[region_of_component_[c]]++] = c;
    }

    node_of_port_.assign(circuit_.ports.size(), none);
    std::vector<Index> node_of_joint(joint_count_, none);
    std::vector<Index> seen_in(joint_count_, none);
    struct Start {
        std::size_t node = 0, edge = 0, machine = 0, reservoir = 0, first = 0, guest = 0,
                    offset = 0, arc = 0;
    };
    std::vector<Start> starts(region_count + 1);
    edges_.reserve(circuit_.passages.size());
    first_edge_.reserve(components_.size() + region_count);
    for (Index r = 0; r < region_count; ++r) {
        Start& start = starts[r];
        start = {.node = joints_.size(),
                 .edge = edges_.size(),
                 .machine = machines_.size(),
                 .reservoir = reservoirs_.size(),
                 .first = first_edge_.size(),
                 .guest = guests_.size()};
        const auto node_of = [&](Index port) {
            const Index joint = joint_of_port_[port];
            if (seen_in[joint] != r) {
                seen_in[joint] = r;
                const auto node = static_cast<Index>(joints_.size() - start.node);
                node_of_joint[joint] = node;
                joints_.push_back(joint);
                is_reservoir_.push_back(reservoir_joint_[joint]);
                if (reservoir_joint_[joint] != 0) reservoirs_.push_back(node);
            }
            return node_of_port_[port] = node_of_joint[joint];
        };
        for (Index i = offsets[r]; i < offsets[r + 1]; ++i) {
            const Index c = components_[i];
            const Component& component = circuit_.components[c];
            first_edge_.push_back(static_cast<Index>(edges_.size() - start.edge));
            bool by_hand = false;
            for (Index p = component.passages.begin; p < component.passages.end; ++p) {
                const Passage& passage = circuit_.passages[p];
                if (passage.passage == PassageClass::joined) {
                    node_of(passage.from);
                    node_of(passage.to);
                    continue;
                }
                by_hand = by_hand || passage.shift == Shift::hand;
                const bool machine = passage.passage == PassageClass::displacement;
                if (machine) machines_.push_back(static_cast<Index>(edges_.size() - start.edge));
                Edge& edge = edges_.emplace_back();  // in place: it is large
                edge.from = node_of(passage.from);
                edge.to = node_of(passage.to);
                edge.passage = p;
                edge.component = c;
                edge.opening = passage.opening;
                edge.passage_class = passage.passage;
                edge.shift = passage.shift;
                edge.both_ways = passage.both_ways;
                edge.bypass = passage.bypass;
                edge.part = part(c);
                edge.for_towing = component.kind->for_towing;
                edge.meant_for_loop = machine && ((edge.part == Part::pump && edge.both_ways) ||
                                                  circuit_.is_yes(component, "closed-loop"));
            }
            // Ports that no passage names (a blocked port of a valve) stand nowhere yet.
            for (Index port = component.ports.begin; port < component.ports.end; ++port)
                node_of(port);
            if (by_hand && circuit_.is_yes(component, "locked"))
                for (auto e = start.edge + first_edge_.back(); e < edges_.size(); ++e)
                    edges_[e].locked = true;
        }
        first_edge_.push_back(static_cast<Index>(edges_.size() - start.edge));
        for (std::size_t node = start.node; node < joints_.size(); ++node) {
            if (is_reservoir_[node] != 0) continue;
            for (const Index port : ports_of(joints_[node])) {
                if (node_of_port_[port] != none ||
                    region_of_component_[circuit_.ports[port].component] != none)
                    continue;  // stands in a region already
                node_of_port_[port] = static_cast<Index>(node - start.node);
                guests_.push_back(port);
            }
        }
    }
    starts[region_count] = {.node = joints_.size(),
                            .edge = edges_.size(),
                            .machine = machines_.size(),
                            .reservoir = reservoirs_.size(),
                            .first = first_edge_.size(),
                            .guest = guests_.size()};

    // Arcs, counted and then filled; an edge from a node to itself leads nowhere and has none.
    arcs_.resize(2 * edges_.size());
    arc_offsets_.resize(joints_.size() + region_count);
    std::vector<Index> cursor;
    std::size_t arc_base = 0;
    std::size_t offset_base = 0;
    for (Index r = 0; r < region_count; ++r) {
        starts[r].arc = arc_base;
        starts[r].offset = offset_base;
        const auto node_count = static_cast<Index>(starts[r + 1].node - starts[r].node);
        const auto edge_count = static_cast<Index>(starts[r + 1].edge - starts[r].edge);
        const Edge* edges = edges_.data() + starts[r].edge;
        Index* out = arc_offsets_.data() + offset_base;
        std::fill(out, out + node_count + 1, Index{0});
        for (Index e = 0; e < edge_count; ++e) {
            if (edges[e].from == edges[e].to) continue;
            ++out[edges[e].from + 1];
            ++out[edges[e].to + 1];
        }
        for (Index n = 0; n < node_count; ++n) out[n + 1] += out[n];
        cursor.assign(out, out + node_count);
        for (Index e = 0; e < edge_count; ++e) {
            const Edge& edge = edges[e];
            if (edge.from == edge.to) continue;
            FlowArc& there = arcs_[arc_base + cursor[edge.from]++];
            there.to = edge.to;
            there.edge = e & 0x7fffffffU;
            there.backward = 0;
            FlowArc& back = arcs_[arc_base + cursor[edge.to]++];
            back.to = edge.from;
            back.edge = e & 0x7fffffffU;
            back.backward = 1;
        }
        arc_base += out[node_count];
        offset_base += node_count + 1;
    }
    for (Index r = 0; r < region_count; ++r) {
        const Start& here = starts[r];
        const Start& next = starts[r + 1];
        const std::size_t nodes = next.node - here.node;
        const std::size_t in_region = offsets[r + 1] - offsets[r];
        const Index arc_count = arc_offsets_[here.offset + nodes];
        regions_[r] = {
            .node_count = static_cast<Index>(nodes),
            .joints = {joints_.data() + here.node, nodes},
            .reservoirs = {reservoirs_.data() + here.reservoir, next.reservoir - here.reservoir},
            .is_reservoir = {is_reservoir_.data() + here.node, nodes},
            .edges = {edges_.data() + here.edge, next.edge - here.edge},
            .machines = {machines_.data() + here.machine, next.machine - here.machine},
            .arc_offsets = {arc_offsets_.data() + here.offset, nodes + 1},
            .arcs = {arcs_.data() + here.arc, arc_count},
            .components = {components_.data() + offsets[r], in_region},
            .first_edge = {first_edge_.data() + here.first, in_region + 1},
            .guests = {guests_.data() + here.guest, next.guest - here.guest}};
    }
    find_lines(seen_in, node_of_joint);
    work += joints_.size() + edges_.size();
}

namespace {

/// Puts what `visit` names into lists by region, one behind the other, each in the order visited.
/// `visit(add)` calls `add(region, entry)` for each, twice in the same order.
template <typename Entry, typename Visit>
void group_by_region(std::vector<Entry>& all, std::vector<Region>& regions,
                     std::span<const Entry> Region::*list, Visit visit) {
    std::vector<Index> offsets(regions.size() + 1, 0);
    visit([&](Index region, const Entry& /*entry*/) { ++offsets[region + 1]; });
    for (std::size_t r = 0; r < regions.size(); ++r) offsets[r + 1] += offsets[r];
    all.resize(offsets.back());
    std::vector<Index> cursor(offsets.begin(), offsets.end() - 1);
    visit([&](Index region, const Entry& entry) { all[cursor[region]++] = entry; });
    for (std::size_t r = 0; r < regions.size(); ++r)
        regions[r].*list = {all.data() + offsets[r], offsets[r + 1] - offsets[r]};
}

}  // namespace

void FlowGraph::find_lines(std::span<const Index> region_of_joint,
                           std::span<const Index> node_of_joint) {
    // A port that no passage names has a node where its component is; the oil of its joint may be
    // in another region.
    std::vector<Index> port_of_joint(joint_count_, none);
    for (const Passage& passage : circuit_.passages)
        for (const Index port : {passage.from, passage.to, passage.pilot})
            if (port != none && passage.passage != PassageClass::joined)
                port_of_joint[joint_of_port_[port]] = port;
    const auto inside = [&](Index port) {
        return region_of_component_[circuit_.ports[port].component] != none;
    };
    group_by_region(lines_, regions_, &Region::lines, [&](const auto& add) {
        for (Index line = 0; line < circuit_.lines.size(); ++line) {
            const auto ports = circuit_.ports_of(circuit_.lines[line]);
            const Index joint = joint_of_port_[ports.front()];
            const bool reservoir = reservoir_joint_[joint] != 0;
            Index port = reservoir ? none : port_of_joint[joint];
            if (port == none) {
                // A reservoir is in several regions: there the component tells which one is meant.
                const auto found = std::find_if(ports.begin(), ports.end(), inside);
                if (found != ports.end()) port = *found;
            }
            if (port != none && inside(port))
                add(region_of_component_[circuit_.ports[port].component],
                    LineEnd{.line = line, .port = ports.front(), .node = node_of_port_[port]});
            else if (region_of_joint[joint] != none)
                add(region_of_joint[joint],
                    LineEnd{.line = line, .port = ports.front(), .node = node_of_joint[joint]});
        }
    });
}

}  // namespace loopwright
