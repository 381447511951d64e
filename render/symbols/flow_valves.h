#pragma once

#include <loopwright/render/symbols/strokes.h>

namespace loopwright {

/// The two arcs of a throttle about a point of an upright line, recipe FV1; with the arrow across
/// them where it can be adjusted, recipe FV3.
void draw_throttle_arcs(Strokes& strokes, Point at);
void draw_throttle_arrow(Strokes& strokes, Point at);

/// A check beside an upright line from (0, -3) to (0, 3), free flow upwards, and the frame of both.
void draw_checked_frame(Strokes& strokes);

}  // namespace loopwright
