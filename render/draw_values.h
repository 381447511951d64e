#pragma once

#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>
#include <loopwright/render/place_values.h>

namespace loopwright {

/// Figures of a computed point and heads on lines, one group a component or line: text on a tinted
/// ground, by which they are told from ratings in grey print too.
std::vector<Group> value_groups(const Circuit& circuit, const PlacedValues& placed);

/// A row on its ground, for the legend; `at`: the ground's upper left corner, mm.
void add_value_sample(std::vector<Primitive>& out, Point at, std::string_view text);
/// A head whose tip is there, mm; `way`: one step towards where it points.
Primitive flow_head(Point tip, Point way);

}  // namespace loopwright
