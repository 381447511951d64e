#include <loopwright/render/symbols/pressure_valve.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipe PV3: closed at rest, its spring chamber drained.
void draw_sequence_valve(Strokes& strokes) {
    draw_pressure_valve(strokes, {.above = "P",
                                  .below = "A",
                                  .check = strokes.is_yes("check"),
                                  .adjustable = strokes.is_yes("adjustable")});
}

}  // namespace loopwright
