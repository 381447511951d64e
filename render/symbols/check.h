#pragma once

#include <loopwright/render/symbols/strokes.h>

namespace loopwright {

/// Ball and seat of a non-return valve about `centre`; free flow runs `towards` that side, from the
/// apex of the seat to the ball. With a spring behind the ball if asked for. Gives nothing for the
/// lines to it: they end at `inlet` and `outlet`.
struct CheckEnds {
    Point inlet = {};   ///< the seat's apex
    Point outlet = {};  ///< the far side of the ball, or the spring's end
};
CheckEnds draw_check(Strokes& strokes, Point centre, Side towards, bool spring);

}  // namespace loopwright
