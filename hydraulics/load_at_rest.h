#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/duty.h>

namespace loopwright::hydraulics {

/// Whether a load can drive its motor: it is said to overrun, or is what drives a vehicle.
bool can_drive(const Circuit& circuit, const Component& load);

/// What a load that can drive its motor asks for while it stands, N.m without a sign at its own
/// shaft: a vehicle's weight on the grade (rolling resistance helps to hold it and is left out, the
/// safe side), the torque given, or the weight on the drum. With none of them: names of the figures
/// that lack, such as "torque".
struct LoadAtRest {
    std::optional<double> torque = {};
    std::vector<std::string_view> missing = {};
};
LoadAtRest load_at_rest(const PointFigures& point, Index load);

}  // namespace loopwright::hydraulics
