#include <loopwright/render/symbols/pressure_valve.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipe PV5: the load above, the check's free flow towards it.
void draw_counterbalance_valve(Strokes& strokes) {
    draw_pressure_valve(strokes, {.above = "B",
                                  .below = "A",
                                  .check = true,
                                  .adjustable = strokes.is_yes("adjustable"),
                                  .check_spring = strokes.is_given("check-opening-pressure")});
}

}  // namespace loopwright
