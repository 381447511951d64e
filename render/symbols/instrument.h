#pragma once

#include <loopwright/render/symbols/strokes.h>

namespace loopwright {

/// The circle of a measuring instrument with its tap P below.
void draw_instrument(Strokes& strokes);

}  // namespace loopwright
