#include <loopwright/render/symbols/pressure_valve.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipe PV4: opened from the line that decides.
void draw_unloading_valve(Strokes& strokes) {
    draw_pressure_valve(strokes,
                        {.above = "P", .below = "T", .adjustable = strokes.is_yes("adjustable")});
}

}  // namespace loopwright
