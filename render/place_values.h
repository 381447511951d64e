#pragma once

#include <span>
#include <string>
#include <vector>

#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/wire_graph.h>

/// Room for the figures of a computed point on a finished layout, which stays as it is: the same
/// for all points of a circuit.
namespace loopwright {

struct PlacedValue {
    Index component = none;
    Index line = none;  ///< where it is no component's
    std::vector<std::string> rows = {};
    GridBox box = {};                    ///< the ground that the rows stand on
    std::vector<GridPoint> leader = {};  ///< empty: none
};

/// A head on a line that shows where its oil flows to.
struct FlowArrow {
    Index line = none;
    GridPoint from = {};
    GridPoint tip = {};
};

struct PlacedValues {
    std::vector<PlacedValue> values = {};
    std::vector<FlowArrow> arrows = {};
    std::vector<std::string> apart = {};  ///< in words, what found no room
};

inline constexpr double value_pitch = 1.1;   ///< M, from baseline to baseline
inline constexpr double value_inset = 0.25;  ///< M, from the ground's edge to its text

/// `extent`: the drawing space, M from the layout's corner; `taken`: what of it is not free but for
/// the layout's own.
PlacedValues place_values(const Circuit& circuit, const Layout& layout,
                          const std::vector<DrawnSymbol>& symbols,
                          const hydraulics::OperatingPoint& point, const Box& extent,
                          std::span<const Box> taken);

}  // namespace loopwright
