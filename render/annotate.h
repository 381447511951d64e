#pragma once

#include <span>
#include <vector>

#include <loopwright/render/drawing.h>
#include <loopwright/render/occupancy.h>
#include <loopwright/render/panel.h>
#include <loopwright/render/wire_graph.h>

/// Findings on the sheet: a numbered mark beside the subject, the witness as a light band under
/// the lines, an entry in a list. Marks are told apart by shape, not by colour: triangle error,
/// square warning, circle note, diamond inconclusive.
namespace loopwright {

/// The verdicts that get marks: failed ones, errors first, then those that follow from another one,
/// then what is not decided; of those told together the first. A finding's number is its place in
/// this list, from 1.
std::vector<const Verdict*> marked(std::span<const Verdict> findings);

/// The mark's outline and number about a centre, mm.
std::vector<Primitive> finding_mark(const Verdict& verdict, Index number, Point centre);

/// The band of a witness, one group a finding; empty where nothing of it is drawn.
Group witness_band(const Circuit& circuit, const std::vector<DrawnSymbol>& symbols,
                   const WireGraph& wires, const Verdict& verdict, Index number);

/// Marks in the free room nearest to their subjects; `room` (M, sheet coordinates) is taken up.
std::vector<Group> finding_marks(const Circuit& circuit, const Layout& layout,
                                 const std::vector<DrawnSymbol>& symbols, const WireGraph& wires,
                                 std::span<const Verdict* const> findings, Occupancy& room);

/// The list of findings for the sheet; what is told together stands in one entry. `all`: the
/// verdicts that they are taken from.
PanelList findings_list(const Circuit& circuit, std::span<const Verdict* const> findings,
                        std::span<const Verdict> all);

/// A layout's point on the sheet, mm.
Point on_sheet(GridPoint point);

}  // namespace loopwright
