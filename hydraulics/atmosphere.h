#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/answer.h>

namespace loopwright::hydraulics {

/// Pressure of the air at a height over sea level, by the US Standard Atmosphere 1976. For -1000 to
/// 11000 m, its lowest layer; none outside.
Answer<AbsolutePressure> atmospheric_pressure(Length altitude);

}  // namespace loopwright::hydraulics
