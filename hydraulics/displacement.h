#pragma once

#include <loopwright/base/quantity.h>

namespace loopwright::hydraulics {

/// Set displacement over the largest, -1 to 1, of a machine whose angle is set; negative over
/// centre. Angles below a right angle, `largest` above 0. From the geometry of the piston's travel.
enum class TiltLaw {
    swashplate,  ///< tan a / tan a_largest: pistons parallel to the shaft
    bent_axis,   ///< sin a / sin a_largest: pistons parallel to the tilted block's axis
};
double relative_displacement(TiltLaw law, Angle angle, Angle largest);

/// The angle that gives that share of the largest displacement.
Angle angle_for(TiltLaw law, double relative_displacement, Angle largest);

}  // namespace loopwright::hydraulics
