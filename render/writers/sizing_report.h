#pragma once

#include <span>
#include <string>
#include <string_view>

#include <loopwright/hydraulics/sizing.h>
#include <loopwright/parser/circuit.h>

/// What `size` prints.
namespace loopwright {

/// A duty point as the sized drive meets it.
struct MetPoint {
    std::string_view id = {};
    double asked = 0.0;     ///< rad/s of the load
    double speed = 0.0;     ///< as solved, without a sign
    double travel = 0.0;    ///< -1 to 1
    double pressure = 0.0;  ///< Pa between the motor's ports
    double power = 0.0;     ///< W of the prime mover
};

/// Each size with its equation, the figures put in and its source, then the points as solved; fits
/// 100 columns. `unmet`: why there is no such drive; what was sized all the same is told.
std::string sizing_text(const Circuit& circuit, const hydraulics::Sizing& sizing,
                        std::span<const MetPoint> points, std::span<const std::string> unmet);

}  // namespace loopwright
