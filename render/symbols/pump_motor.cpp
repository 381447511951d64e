#include <loopwright/render/symbols/machine.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipes PM1, PM2: drawn as a pump over centre, "pump/motor" stands beside it.
void draw_pump_motor(Strokes& strokes) {
    if (strokes.count("flow-directions") == 2)
        draw_machine(strokes, MachineWork::pump, "A", "B", true);
    else
        draw_machine(strokes, MachineWork::through, "A", "B", false);
}

}  // namespace loopwright
