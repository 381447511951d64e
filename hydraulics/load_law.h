#pragma once

#include <loopwright/hydraulics/network.h>

namespace loopwright::hydraulics {

/// What one of a network's loads takes from its shaft, in N.m (of a rod in N) in the sense of
/// positive speed; below nothing where it drives. Slopes over the speed and over the pressure that
/// its brake stands under.
Dual<2> load_law(const NetworkLoad& load, bool straight, double speed, double brake_pressure);

}  // namespace loopwright::hydraulics
