#include <loopwright/render/nets.h>

#include <algorithm>

#include <loopwright/graph/disjoint_sets.h>

namespace loopwright {

namespace {

/// The ports and lines of one net before it is cut at reservoirs.
struct Group {
    std::vector<Index> ports = {};
    std::vector<Index> reservoir_ports = {};
    std::vector<Index> lines = {};
};

std::vector<Group> groups_of(const Circuit& circuit) {
    DisjointSets sets(circuit.ports.size());
    for (const Line& line : circuit.lines)
        for (const Index port : circuit.ports_of(line))
            sets.join(circuit.ports_of(line).front(), port);
    for (const Component& component : circuit.components)
        if (is_joint(component))
            for (Index port = component.ports.begin; port < component.ports.end; ++port)
                sets.join(component.ports.begin, port);

    std::vector<Group> groups;
    std::vector<Index> slot(circuit.ports.size(), none);
    for (Index l = 0; l < circuit.lines.size(); ++l) {
        const auto ports = circuit.ports_of(circuit.lines[l]);
        if (ports.empty()) continue;
        Index& at = slot[sets.find(ports.front())];
        if (at == none) {
            at = static_cast<Index>(groups.size());
            groups.emplace_back();
        }
        groups[at].lines.push_back(l);
    }
    for (Index p = 0; p < circuit.ports.size(); ++p) {
        const Index at = slot[sets.find(p)];
        const Component& owner = circuit.components[circuit.ports[p].component];
        if (at == none || is_joint(owner)) continue;
        (is_reservoir(owner) ? groups[at].reservoir_ports : groups[at].ports).push_back(p);
    }
    return groups;
}

}  // namespace

bool is_joint(const Component& component) { return component.kind->name == "junction"; }

bool is_reservoir(const Component& component) { return component.kind->part == Part::reservoir; }

/// Whether oil flows at the ports of such a part: a line there is more than a pilot line, and so is
/// one that feeds a check.
static bool displaces(Part part) {
    return part == Part::pump || part == Part::actuator || part == Part::pump_motor ||
           part == Part::hand_pump;
}

std::vector<Net> drawn_nets(const Circuit& circuit) {
    std::vector<Net> nets;
    for (const Group& group : groups_of(circuit)) {
        const bool falls_apart = group.lines.size() == 1 && !group.reservoir_ports.empty() &&
                                 group.ports.size() >= group.reservoir_ports.size();
        if (falls_apart) {
            for (std::size_t i = 0; i < group.ports.size(); ++i) {
                const std::size_t r = std::min(i, group.reservoir_ports.size() - 1);
                nets.push_back({.ends = {{.port = group.ports[i]},
                                         {.port = group.reservoir_ports[r], .mark = true}},
                                .lines = group.lines});
            }
            continue;
        }
        Net net{.lines = group.lines};
        for (const Index port : group.ports) net.ends.push_back({.port = port});
        for (const Index port : group.reservoir_ports)
            net.ends.push_back({.port = port, .mark = true});
        nets.push_back(std::move(net));
    }
    return nets;
}

bool is_dashed(const Circuit& circuit, Index line) {
    switch (circuit.lines[line].function) {
        case LineFunction::drain:
        case LineFunction::pilot:
            return true;
        case LineFunction::not_declared:
            break;
        default:
            return false;
    }
    bool pilot = false;
    bool carries_flow = false;
    for (const Index p : circuit.ports_of(circuit.lines[line])) {
        const Port& port = circuit.ports[p];
        const Kind& kind = *circuit.components[port.component].kind;
        const bool flushing = kind.name == "flushing-valve" && port.letter == "F";
        if (port.use == PortUse::drain || flushing) return true;
        if (port.use == PortUse::pilot)
            pilot = true;
        else
            carries_flow = carries_flow || displaces(kind.part) || port.use == PortUse::suction;
    }
    return pilot && !carries_flow;
}

}  // namespace loopwright
