#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

// Recipe PV12 as a screw, so as the shut-off valve: filled where it stands closed.
void draw_bypass_valve(Strokes& strokes) { draw_shut_off_valve(strokes); }

}  // namespace loopwright
