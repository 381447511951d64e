#include <loopwright/render/symbols/pressure_valve.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipe PV5: the load above, the check's free flow towards it. The load's pressure opens it with
// or without the pilot at X.
void draw_counterbalance_valve(Strokes& strokes) {
    draw_pressure_valve(strokes, {.above = "B",
                                  .below = "A",
                                  .piloted_by_both = true,
                                  .check = true,
                                  .adjustable = strokes.is_yes("adjustable")});
}

}  // namespace loopwright
