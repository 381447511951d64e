#include <loopwright/render/symbols/machine.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipes PU1 to PU4, CH1. The inlet S below, the outlet P above; over centre A above, B below.
void draw_pump(Strokes& strokes) {
    if (strokes.count("flow-directions") == 2)
        draw_machine(strokes, MachineWork::pump, "A", "B", true);
    else
        draw_machine(strokes, MachineWork::pump, "P", "S", false);
}

}  // namespace loopwright
