#pragma once

#include <map>
#include <utility>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>

namespace loopwright {

/// A placed symbol as drawing needs it: turned, with its ports.
struct DrawnSymbol {
    Placed placed = {};
    Symbol shape = {};
};

/// All symbols of a layout, in its order. Throws std::logic_error where the layout does not fit
/// the circuit.
std::vector<DrawnSymbol> drawn_symbols(const Circuit& circuit, const Layout& layout);

/// A point of a placed symbol, given in modules from its middle, on the grid.
GridPoint on_grid(const Placed& placed, Point in_symbol);

/// The drawn wires as a graph: where ports are on it, and the way from one to another along it.
class WireGraph {
  public:
    WireGraph(const Layout& layout, const std::vector<DrawnSymbol>& symbols);

    /// Places of a port: one, or several for a reservoir's.
    const std::vector<GridPoint>& places_of(Index port) const;
    /// Corners of the shortest way along the wires to the nearest of `to`; empty if there is none.
    std::vector<GridPoint> way(GridPoint from, const std::vector<GridPoint>& to) const;
    /// All runs drawn for a line.
    std::vector<std::pair<GridPoint, GridPoint>> runs_of(Index line) const;

  private:
    using Key = std::pair<int, int>;
    const Layout* layout_;
    std::map<Key, std::vector<GridPoint>> next_;
    std::map<Index, std::vector<GridPoint>> places_;
};

}  // namespace loopwright
