#include <loopwright/render/flow_runs.h>

#include <algorithm>

#include <loopwright/render/nets.h>

namespace loopwright {

namespace {

std::pair<int, int> key(GridPoint p) { return {p.x, p.y}; }

/// Whether a point lies inside a run, its ends left out.
bool inside(const Wire& wire, GridPoint p) {
    if (p == wire.from || p == wire.to) return false;
    return std::min(wire.from.x, wire.to.x) <= p.x && p.x <= std::max(wire.from.x, wire.to.x) &&
           std::min(wire.from.y, wire.to.y) <= p.y && p.y <= std::max(wire.from.y, wire.to.y);
}

/// Of each line a number that all lines of its net share.
std::vector<std::size_t> nets_of_lines(const Circuit& circuit) {
    std::vector<std::size_t> net(circuit.lines.size(), 0);
    const std::vector<Net> nets = drawn_nets(circuit);
    for (std::size_t n = 0; n < nets.size(); ++n)
        for (const Index line : nets[n].lines) net[line] = n;
    return net;
}

}  // namespace

FlowRuns::FlowRuns(const Circuit& circuit, const Layout& layout,
                   const std::vector<DrawnSymbol>& symbols)
    : circuit_(circuit), lines_of_port_(circuit.ports.size()) {
    for (Index l = 0; l < circuit.lines.size(); ++l)
        for (const Index port : circuit.ports_of(circuit.lines[l]))
            lines_of_port_[port].push_back(l);
    for (const DrawnSymbol& symbol : symbols)
        for (const PortAnchor& port : symbol.shape.ports)
            ports_at_[key(on_grid(symbol.placed, port.at))].push_back(port.port);
    // Wires are cut where another wire of their net begins.
    const std::vector<std::size_t> net = nets_of_lines(circuit);
    for (const Wire& wire : layout.wires) {
        std::vector<GridPoint> points{wire.from, wire.to};
        for (const Wire& other : layout.wires)
            for (const GridPoint end : {other.from, other.to})
                if (net[other.line] == net[wire.line] && inside(wire, end)) points.push_back(end);
        std::sort(points.begin(), points.end(),
                  [](GridPoint a, GridPoint b) { return key(a) < key(b); });
        points.erase(std::unique(points.begin(), points.end()), points.end());
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            pieces_at_[key(points[i])].push_back(pieces_.size());
            pieces_at_[key(points[i + 1])].push_back(pieces_.size());
            pieces_.push_back({wire.line, {points[i], points[i + 1], wire.sag}});
        }
    }
}

/// Drawn ports that hang on a port in the circuit, without the joint between the first two ports
/// of a line.
FlowRuns::Ports FlowRuns::joined_to(Index port, Index without) const {
    Ports seen{port};
    std::vector<Index> queue{port};
    const auto reach = [&](Index other) {
        if (seen.insert(other).second) queue.push_back(other);
    };
    for (std::size_t i = 0; i < queue.size(); ++i) {
        const Index at = queue[i];
        for (const Index line : lines_of_port_[at]) {
            // Every further port of a line hangs on its first.
            const auto ports = circuit_.ports_of(circuit_.lines[line]);
            for (std::size_t k = 1; k < ports.size(); ++k) {
                if (line == without && k == 1) continue;
                if (at == ports[0]) reach(ports[k]);
                if (at == ports[k]) reach(ports[0]);
            }
        }
        const Component& component = circuit_.components[circuit_.ports[at].component];
        if (!is_joint(component)) continue;
        for (Index p = component.ports.begin; p < component.ports.end; ++p) reach(p);
    }
    std::erase_if(seen, [&](Index p) {
        return is_joint(circuit_.components[circuit_.ports[p].component]);
    });
    return seen;
}

/// Gathers the drawn ports that hang on one end of a piece; false if its other end does too.
bool FlowRuns::drawn_beyond(std::size_t piece, GridPoint start, GridPoint other,
                            Ports& ports) const {
    std::set<std::pair<int, int>> seen{key(start)};
    std::vector<std::pair<int, int>> queue{key(start)};
    for (std::size_t i = 0; i < queue.size(); ++i) {
        const auto at = queue[i];
        if (at == key(other)) return false;
        if (const auto found = ports_at_.find(at); found != ports_at_.end())
            ports.insert(found->second.begin(), found->second.end());
        const auto next = pieces_at_.find(at);
        if (next == pieces_at_.end()) continue;
        for (const std::size_t p : next->second) {
            if (p == piece) continue;
            for (const GridPoint end : {pieces_[p].run.from, pieces_[p].run.to})
                if (seen.insert(key(end)).second) queue.push_back(key(end));
        }
    }
    return true;
}

bool FlowRuns::has_reservoir(const Ports& ports) const {
    return std::any_of(ports.begin(), ports.end(), [&](Index p) {
        return is_reservoir(circuit_.components[circuit_.ports[p].component]);
    });
}

std::vector<FlowRun> FlowRuns::of(Index line) const {
    std::vector<FlowRun> runs;
    const auto ports = circuit_.ports_of(circuit_.lines[line]);
    if (ports.size() < 2) return runs;
    const Ports before = joined_to(ports[0], line);
    const Ports behind = joined_to(ports[1], line);
    if (behind.count(ports[0]) != 0 || before == behind) return runs;  // a ring
    // What a side takes or gives is settled by its ports, but for a reservoir's: several marks
    // may stand for one of them.
    const bool open_before = has_reservoir(before);
    const bool open_behind = has_reservoir(behind);
    for (std::size_t p = 0; p < pieces_.size(); ++p) {
        if (pieces_[p].line != line) continue;
        FlowRun run = pieces_[p].run;
        for (int turn = 0; turn < 2; ++turn, std::swap(run.from, run.to)) {
            Ports tail;
            Ports head;
            if (!drawn_beyond(p, run.from, run.to, tail) ||
                !drawn_beyond(p, run.to, run.from, head))
                break;
            const bool same_before = tail == before;
            const bool same_behind = head == behind;
            if ((same_before && !open_before) || (same_behind && !open_behind) ||
                (same_before && same_behind)) {
                runs.push_back(run);
                break;
            }
        }
    }
    return runs;
}

bool FlowRuns::all_of(Index line) const {
    const auto pieces = std::count_if(pieces_.begin(), pieces_.end(),
                                      [&](const Piece& piece) { return piece.line == line; });
    return static_cast<std::size_t>(pieces) == of(line).size();
}

}  // namespace loopwright
