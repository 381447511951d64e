#pragma once

#include <map>
#include <set>
#include <utility>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/wire_graph.h>

/// Where on the sheet all the oil of a line goes by.
namespace loopwright {

/// A straight piece of wire from the side of a line's first port to that of its second.
struct FlowRun {
    GridPoint from = {};
    GridPoint to = {};
    int sag = 0;  ///< of the wire; see `Wire`
};

/// A net is drawn as a tree of its own, which need not be that of the circuit's lines: between two
/// joints may go what several lines bring together. A piece carries what a line does if it parts
/// the ports of the net as the line itself does.
class FlowRuns {
  public:
    FlowRuns(const Circuit& circuit, const Layout& layout, const std::vector<DrawnSymbol>& symbols);

    /// The pieces drawn for the line that carry what flows from its first port to its second, in
    /// the layout's order; empty where there is none, or the line lies in a ring.
    std::vector<FlowRun> of(Index line) const;
    /// Whether all that is drawn for the line does.
    bool all_of(Index line) const;

  private:
    using Ports = std::set<Index>;
    struct Piece {
        Index line = none;
        FlowRun run = {};
    };

    Ports joined_to(Index port, Index without) const;
    bool drawn_beyond(std::size_t piece, GridPoint start, GridPoint other, Ports& ports) const;
    bool has_reservoir(const Ports& ports) const;

    const Circuit& circuit_;
    std::vector<Piece> pieces_;
    std::map<std::pair<int, int>, std::vector<std::size_t>> pieces_at_;
    std::map<std::pair<int, int>, std::vector<Index>> ports_at_;
    std::vector<std::vector<Index>> lines_of_port_;
};

}  // namespace loopwright
