#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include <loopwright/render/finish_layout.h>

namespace loopwright {

namespace {

using Ends = std::vector<char>;  // by end of the net: on which side

/// Lines and the places where they meet (ports and junctions), as a graph.
class LineGraph {
  public:
    LineGraph(const Circuit& circuit, const Sketch& sketch, const SketchNet& net)
        : circuit_(circuit) {
        for (std::size_t e = 0; e < net.ends.size(); ++e) {
            const SketchPart& part = sketch.parts[static_cast<std::size_t>(net.ends[e].part)];
            const Index port =
                part.is_mark()
                    ? part.port
                    : part.shape.ports[static_cast<std::size_t>(net.ends[e].anchor)].port;
            ends_at_[place(port)].push_back(e);
        }
        for (const Index line : net.lines)
            for (const Index port : circuit.ports_of(circuit.lines[line])) {
                lines_at_[place(port)].push_back(line);
                places_of_[line].push_back(place(port));
            }
    }

    /// For each port of the line: which ends lie behind it, seen from the line.
    std::vector<Ends> branches(Index line, std::size_t end_count) const {
        std::vector<Ends> out;
        for (const Index start : places_of_.at(line)) {
            Ends ends(end_count, 0);
            std::set<Index> seen{start};
            std::vector<Index> queue{start};
            for (std::size_t i = 0; i < queue.size(); ++i) {
                if (const auto at = ends_at_.find(queue[i]); at != ends_at_.end())
                    for (const std::size_t e : at->second) ends[e] = 1;
                for (const Index other : lines_at_.at(queue[i])) {
                    if (other == line) continue;
                    for (const Index next : places_of_.at(other))
                        if (seen.insert(next).second) queue.push_back(next);
                }
            }
            out.push_back(std::move(ends));
        }
        return out;
    }

  private:
    /// All ports of a junction are one place: its first.
    Index place(Index port) const {
        const Component& owner = circuit_.components[circuit_.ports[port].component];
        return is_joint(owner) ? owner.ports.begin : port;
    }

    const Circuit& circuit_;
    std::map<Index, std::vector<std::size_t>> ends_at_;
    std::map<Index, std::vector<Index>> lines_at_;
    std::map<Index, std::vector<Index>> places_of_;
};

/// How well a line fits a run that parts the ends into two sides: its branches lie on both sides,
/// and none of them on both at once. 0: not at all.
int fit(const std::vector<Ends>& branches, const Ends& side) {
    bool here = false;
    bool there = false;
    int torn = 0;
    for (const Ends& branch : branches) {
        bool in = false;
        bool out = false;
        for (std::size_t e = 0; e < side.size(); ++e) {
            if (branch[e] == 0) continue;
            (side[e] != 0 ? in : out) = true;
        }
        if (in && out) ++torn;
        here = here || in;
        there = there || out;
    }
    if (!here || !there) return 0;
    return 1000 - torn;
}

/// The ends on the side of a run's first point.
Ends side_of(const SketchNet& net, const Sketch& sketch, const RoutedNet& routed,
             std::size_t without) {
    std::map<std::pair<int, int>, std::vector<std::size_t>> runs_at;
    for (std::size_t r = 0; r < routed.runs.size(); ++r) {
        if (r == without) continue;
        runs_at[{routed.runs[r].from.x, routed.runs[r].from.y}].push_back(r);
        runs_at[{routed.runs[r].to.x, routed.runs[r].to.y}].push_back(r);
    }
    const Cell start = routed.runs[without].from;
    std::set<std::pair<int, int>> seen{{start.x, start.y}};
    std::vector<std::pair<int, int>> queue{{start.x, start.y}};
    for (std::size_t i = 0; i < queue.size(); ++i) {
        const auto at = runs_at.find(queue[i]);
        if (at == runs_at.end()) continue;
        for (const std::size_t r : at->second)
            for (const Cell c : {routed.runs[r].from, routed.runs[r].to})
                if (seen.insert({c.x, c.y}).second) queue.push_back({c.x, c.y});
    }
    Ends side(net.ends.size(), 0);
    for (std::size_t e = 0; e < net.ends.size(); ++e) {
        const Cell c = sketch.cell(net.ends[e]);
        side[e] = static_cast<char>(seen.count({c.x, c.y}));
    }
    return side;
}

/// On which side all ends of a branch lie: 0 or 1; -1 where they are on both, or it has none.
int side_of_branch(const Ends& branch, const Ends& side) {
    int found = -1;
    for (std::size_t e = 0; e < branch.size(); ++e) {
        if (branch[e] == 0) continue;
        const int here = side[e] != 0 ? 1 : 0;
        if (found >= 0 && found != here) return -1;
        found = here;
    }
    return found;
}

}  // namespace

std::vector<Index> lines_of_runs(const Circuit& circuit, const Sketch& sketch, const SketchNet& net,
                                 const RoutedNet& routed) {
    std::vector<Index> lines(routed.runs.size(), net.lines.front());
    if (net.lines.size() == 1) return lines;
    const LineGraph graph(circuit, sketch, net);
    std::vector<std::vector<Ends>> branches;
    for (const Index line : net.lines) branches.push_back(graph.branches(line, net.ends.size()));
    for (std::size_t r = 0; r < routed.runs.size(); ++r) {
        const Ends side = side_of(net, sketch, routed, r);
        int best = 0;
        for (std::size_t l = 0; l < net.lines.size(); ++l) {
            const int fits = fit(branches[l], side);
            if (fits <= best) continue;
            best = fits;
            lines[r] = net.lines[l];
        }
    }
    return lines;
}

bool between_first_two(const Circuit& circuit, const Sketch& sketch, const SketchNet& net,
                       const RoutedNet& routed, std::size_t run, Index line) {
    const std::vector<Ends> branches =
        LineGraph(circuit, sketch, net).branches(line, net.ends.size());
    if (branches.size() < 2) return false;
    const Ends side = side_of(net, sketch, routed, run);
    const int second = side_of_branch(branches[1], side);
    if (second < 0) return false;
    for (std::size_t b = 0; b < branches.size(); ++b)
        if (b != 1 && side_of_branch(branches[b], side) != 1 - second) return false;
    return true;
}

}  // namespace loopwright
