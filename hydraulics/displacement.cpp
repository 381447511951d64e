#include <loopwright/hydraulics/displacement.h>

#include <cmath>

namespace loopwright::hydraulics {

double relative_displacement(TiltLaw law, Angle angle, Angle largest) {
    return law == TiltLaw::swashplate ? std::tan(angle.si()) / std::tan(largest.si())
                                      : std::sin(angle.si()) / std::sin(largest.si());
}

Angle angle_for(TiltLaw law, double relative_displacement, Angle largest) {
    return Angle(law == TiltLaw::swashplate
                     ? std::atan(relative_displacement * std::tan(largest.si()))
                     : std::asin(relative_displacement * std::sin(largest.si())));
}

}  // namespace loopwright::hydraulics
