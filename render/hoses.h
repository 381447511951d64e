#pragma once

#include <cstddef>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>
#include <loopwright/render/layout.h>

/// The hose on the sheet (recipe LN3): a stretch of its line that sags between two dots.
namespace loopwright {

inline constexpr double hose_sag = 1.0;  ///< M

/// Wires of hoses, by place in the layout.
struct Bending {
    std::vector<std::size_t> best = {};   ///< between the first two ports, where the hose is
    std::vector<std::size_t> other = {};  ///< where none of those has room
};

/// Cuts, for each hose, a stretch with room beside it out of one of its wires and lets it sag. One
/// that finds no room stays straight.
void place_hoses(const Circuit& circuit, const Bending& bending, Layout& layout);

/// The room beside a sagging wire that its arc takes, M.
Box arc_room(const Wire& chord);
/// What its arc and its chord cover.
GridBox sag_box(const Wire& chord);

/// Whether each hose that has a wire of its own sags somewhere.
bool hoses_shown(const Circuit& circuit, const Layout& layout);

/// The arc from one end of a sagging wire to the other. Points and `sag` (with its sign) in the
/// sheet's unit.
Arc hose_arc(Point from, Point to, double sag);

}  // namespace loopwright
