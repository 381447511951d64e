#pragma once

#include <loopwright/render/symbols/strokes.h>

/// What the one-stage pressure valves share: a box with one arrow, the spring on the right, the
/// pilot on the left, main ports above and below.
namespace loopwright {

struct PressureValve {
    std::string_view above = {};      ///< letter of the port above, where the arrow begins
    std::string_view below = {};      ///< letter of the port below
    bool open_at_rest = false;        ///< the arrow meets the ports (reducing valve)
    bool piloted_from_below = false;  ///< else from above; not drawn where X is a port
    bool piloted_by_both = false;     ///< drawn beside X, too
    bool check = false;               ///< a check beside it, its free flow upwards, in a frame
    bool pilot_stage = false;
    bool adjustable = true;
};

/// Ports X (external pilot) and Y (drain of the spring chamber) are drawn where the component has
/// them.
void draw_pressure_valve(Strokes& strokes, const PressureValve& valve);

}  // namespace loopwright
