#include <loopwright/render/symbols/machine.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipes MO1 to MO3. The inlet of a motor with one flow direction is A, above.
void draw_motor(Strokes& strokes) {
    draw_machine(strokes, MachineWork::motor, "A", "B", strokes.count("flow-directions") == 2);
}

}  // namespace loopwright
