#include <loopwright/hydraulics/brake.h>

namespace loopwright::hydraulics {

Dual<1> holding_torque(const Brake& brake, double pressure) {
    const double from = brake.begins.si();
    const double to = brake.completes.si();
    Dual<1> moved = 0.0;  // share of its way
    if (pressure >= to)
        moved = 1.0;
    else if (pressure > from)
        moved = (Dual<1>::variable(0, pressure) - from) / (to - from);
    return brake.torque.si() * (brake.spring_applied ? 1.0 - moved : moved);
}

}  // namespace loopwright::hydraulics
