#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/wire_graph.h>

/// Where on the sheet the oil of a line goes by.
namespace loopwright {

/// A straight piece of wire, from where its oil comes to where it goes.
struct FlowRun {
    GridPoint from = {};
    GridPoint to = {};
    int sag = 0;  ///< of the wire; see `Wire`
};

/// A net is drawn as a tree of its own, which need not be that of the circuit's lines: between two
/// joints may go what several of them bring. A piece carries what the ports take that hang on one
/// of its ends.
class FlowRuns {
  public:
    FlowRuns(const Circuit& circuit, const Layout& layout, const std::vector<DrawnSymbol>& symbols,
             const hydraulics::OperatingPoint& point);

    /// The pieces that carry what flows between the line's first two ports, in the layout's order:
    /// those drawn for the line, or where none of them does, those of its net that lead to one of
    /// these ports alone. Empty where there is none.
    const std::vector<FlowRun>& of(Index line) const { return of_line_[line]; }
    /// Whether that piece of the line's which is nearest to a point (quarter modules) does.
    bool carries_at(Index line, GridPoint place) const;

  private:
    struct Piece {
        Index line = none;
        FlowRun run = {};
        std::optional<double> flow = {};  ///< from its first end to its second; m3/s
    };
    using Place = std::pair<int, int>;

    std::optional<double> taken_beyond(std::size_t piece, GridPoint start, GridPoint other) const;
    bool leads_to_port(const Piece& piece, Index line) const;
    std::vector<FlowRun> found(Index line, double flow, bool own) const;

    const Circuit& circuit_;
    std::vector<Piece> pieces_;
    std::vector<std::size_t> net_;  ///< of each line a number that its net shares
    std::map<Place, std::vector<std::size_t>> pieces_at_;
    std::map<Place, std::vector<Index>> ports_at_;
    std::vector<std::optional<double>> taken_;  ///< by port, from all lines that end there
    std::vector<std::vector<FlowRun>> of_line_;
    std::vector<std::optional<double>> flow_of_;  ///< by line
};

}  // namespace loopwright
