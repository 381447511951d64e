#include <loopwright/render/symbols/pressure_valve.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipes PV1, PV1f, PV2 and PV9: closed at rest, piloted from its inlet.
void draw_relief_valve(Strokes& strokes) {
    draw_pressure_valve(strokes, {.above = "P",
                                  .below = "T",
                                  .check = strokes.is_yes("make-up-check"),
                                  .pilot_stage = strokes.is("operation", "pilot"),
                                  .adjustable = strokes.is_yes("adjustable")});
}

}  // namespace loopwright
