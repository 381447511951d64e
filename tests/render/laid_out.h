#pragma once

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <utility>
#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/wire_graph.h>

/// Circuits with their layouts, and what a test asks of them. Which ports belong together is found
/// here from lines, junctions and reservoirs, apart from the drawing's own nets.
namespace loopwright::testing {

struct LaidOut {
    std::string name = {};
    Circuit circuit = {};
    Structure structure = {};
    Layout layout = {};
    std::vector<DrawnSymbol> symbols = {};
};

/// All examples of the tree, and circuits made for what is hard to draw. Laid out once a process.
const std::vector<LaidOut>& laid_out();

/// Calls back for every one of them, its name in each message.
template <class Check>
void each_layout(Check check) {
    ASSERT_GT(laid_out().size(), 20u);
    for (const LaidOut& one : laid_out()) {
        SCOPED_TRACE(one.name);
        check(one);
    }
}

using Place = std::pair<int, int>;

/// A port where a symbol has it on the sheet.
struct PortPlace {
    Index port = none;
    bool mark = false;  ///< of a reservoir mark
    Place at = {};
};
std::vector<PortPlace> port_places(const LaidOut& one);

/// For each port of the circuit the first port of all that lines and junctions join to it.
std::vector<Index> joined_ports(const Circuit& circuit);

/// What a symbol covers with its strokes, its stubs left out; quarter modules.
Box body_of(const DrawnSymbol& symbol);
Box box_of(GridPoint from, GridPoint to);
/// Whether two boxes have more than an edge in common.
bool overlap(const Box& a, const Box& b);

/// Ends of wires and stubs at each place, by the group of ports (`joined_ports`) they belong to.
using Ends = std::map<Place, std::map<Index, int>>;
Ends ends_of(const LaidOut& one);

/// The group that a wire's line belongs to.
Index group_of(const LaidOut& one, const std::vector<Index>& joined, Index line);

}  // namespace loopwright::testing
