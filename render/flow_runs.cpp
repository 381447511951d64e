#include <loopwright/render/flow_runs.h>

#include <algorithm>
#include <cmath>
#include <set>

#include <loopwright/render/nets.h>
#include <loopwright/render/point_values.h>

namespace loopwright {

namespace {

std::pair<int, int> key(GridPoint p) { return {p.x, p.y}; }

/// Whether a point lies inside a run, its ends left out.
bool inside(const Wire& wire, GridPoint p) {
    if (p == wire.from || p == wire.to) return false;
    return std::min(wire.from.x, wire.to.x) <= p.x && p.x <= std::max(wire.from.x, wire.to.x) &&
           std::min(wire.from.y, wire.to.y) <= p.y && p.y <= std::max(wire.from.y, wire.to.y);
}

/// How far a point is from a level or upright run.
double distance(const FlowRun& run, GridPoint p) {
    const int x = std::clamp(p.x, std::min(run.from.x, run.to.x), std::max(run.from.x, run.to.x));
    const int y = std::clamp(p.y, std::min(run.from.y, run.to.y), std::max(run.from.y, run.to.y));
    return std::hypot(x - p.x, y - p.y);
}

/// Whether two flows are the same but for rounding.
bool same(double a, double b) {
    constexpr double share = 1e-6;
    constexpr double nothing = 1e-11;  // m3/s
    return std::abs(a - b) <= share * std::max(std::abs(a), std::abs(b)) + nothing;
}

}  // namespace

FlowRuns::FlowRuns(const Circuit& circuit, const Layout& layout,
                   const std::vector<DrawnSymbol>& symbols, const hydraulics::OperatingPoint& point)
    : circuit_(circuit),
      net_(circuit.lines.size(), 0),
      taken_(circuit.ports.size(), 0.0),
      of_line_(circuit.lines.size()),
      flow_of_(circuit.lines.size()) {
    for (const hydraulics::LinePoint& line : point.lines) {
        flow_of_[line.line] = line.flow;
        const auto ports = circuit.ports_of(circuit.lines[line.line]);
        for (std::size_t k = 0; k < ports.size(); ++k) {
            std::optional<double>& taken = taken_[ports[k]];
            taken = taken && line.given[k] ? std::optional(*taken + *line.given[k]) : std::nullopt;
        }
    }
    for (const DrawnSymbol& symbol : symbols)
        for (const PortAnchor& port : symbol.shape.ports)
            ports_at_[key(on_grid(symbol.placed, port.at))].push_back(port.port);
    const std::vector<Net> nets = drawn_nets(circuit);
    for (std::size_t n = 0; n < nets.size(); ++n)
        for (const Index line : nets[n].lines) net_[line] = n;
    // Wires are cut where another wire of their net begins.
    for (const Wire& wire : layout.wires) {
        std::vector<GridPoint> points{wire.from, wire.to};
        for (const Wire& other : layout.wires)
            for (const GridPoint end : {other.from, other.to})
                if (net_[other.line] == net_[wire.line] && inside(wire, end)) points.push_back(end);
        std::sort(points.begin(), points.end(),
                  [](GridPoint a, GridPoint b) { return key(a) < key(b); });
        points.erase(std::unique(points.begin(), points.end()), points.end());
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            pieces_at_[key(points[i])].push_back(pieces_.size());
            pieces_at_[key(points[i + 1])].push_back(pieces_.size());
            pieces_.push_back({wire.line, {points[i], points[i + 1], wire.sag}, {}});
        }
    }
    for (std::size_t p = 0; p < pieces_.size(); ++p) {
        const FlowRun& run = pieces_[p].run;
        const std::optional<double> behind = taken_beyond(p, run.to, run.from);
        const std::optional<double> before = taken_beyond(p, run.from, run.to);
        pieces_[p].flow = behind ? behind : before ? std::optional(-*before) : std::nullopt;
    }
    for (Index line = 0; line < circuit.lines.size(); ++line) {
        if (!flow_of_[line] || rounds_to_nothing(*flow_of_[line], Dimension::flow)) continue;
        of_line_[line] = found(line, *flow_of_[line], true);
        if (of_line_[line].empty()) of_line_[line] = found(line, *flow_of_[line], false);
    }
}

/// What the ports take that hang on one end of a piece. Nothing where its other end does too, or
/// where that is not known: as of a reservoir's port, which several marks may stand for.
std::optional<double> FlowRuns::taken_beyond(std::size_t piece, GridPoint start,
                                             GridPoint other) const {
    double sum = 0.0;
    std::set<Place> seen{key(start)};
    std::vector<Place> queue{key(start)};
    for (std::size_t i = 0; i < queue.size(); ++i) {
        const Place at = queue[i];
        if (at == key(other)) return std::nullopt;
        if (const auto ports = ports_at_.find(at); ports != ports_at_.end())
            for (const Index port : ports->second) {
                if (!taken_[port] ||
                    is_reservoir(circuit_.components[circuit_.ports[port].component]))
                    return std::nullopt;
                sum += *taken_[port];
            }
        const auto next = pieces_at_.find(at);
        if (next == pieces_at_.end()) continue;
        for (const std::size_t p : next->second)
            for (const GridPoint end : {pieces_[p].run.from, pieces_[p].run.to})
                if (p != piece && seen.insert(key(end)).second) queue.push_back(key(end));
    }
    return sum;
}

std::vector<FlowRun> FlowRuns::found(Index line, double flow, bool own) const {
    std::vector<FlowRun> runs;
    for (const Piece& piece : pieces_) {
        if (own ? piece.line != line : !leads_to_port(piece, line)) continue;
        if (!piece.flow || !same(std::abs(*piece.flow), std::abs(flow))) continue;
        runs.push_back(piece.run);
        if (*piece.flow < 0.0) std::swap(runs.back().from, runs.back().to);
    }
    return runs;
}

/// Whether a piece ends at one of the line's first two ports, and nothing else does.
bool FlowRuns::leads_to_port(const Piece& piece, Index line) const {
    const auto ports = circuit_.ports_of(circuit_.lines[line]);
    for (const GridPoint end : {piece.run.from, piece.run.to}) {
        const auto at = ports_at_.find(key(end));
        if (at == ports_at_.end() || net_[piece.line] != net_[line] || at->second.size() > 1 ||
            pieces_at_.at(key(end)).size() > 1)
            continue;
        for (std::size_t k = 0; k < std::min<std::size_t>(ports.size(), 2); ++k)
            if (at->second.front() == ports[k]) return true;
    }
    return false;
}

bool FlowRuns::carries_at(Index line, GridPoint place) const {
    const Piece* nearest = nullptr;
    for (const Piece& piece : pieces_)
        if (piece.line == line &&
            (nearest == nullptr || distance(piece.run, place) < distance(nearest->run, place)))
            nearest = &piece;
    return nearest != nullptr && nearest->flow && flow_of_[line] &&
           same(std::abs(*nearest->flow), std::abs(*flow_of_[line]));
}

}  // namespace loopwright
