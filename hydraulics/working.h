#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include <loopwright/hydraulics/fluid.h>
#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/standing.h>
#include <loopwright/hydraulics/steady_state.h>

namespace loopwright::hydraulics {

/// One equation with its figures put in, so that it can be done again with a calculator.
struct WorkedEquation {
    std::string of;        ///< "P1", "HA", "W2", "P2.P"
    std::string what;      ///< "geometric flow"
    std::string equation;  ///< "q = V n s"
    std::string figures;   ///< "71 cm3/rev x 2200 rpm x 0.6061"
    std::string result;    ///< "94.67 L/min"
};

/// The equations of a solution in the order in which they are best followed: what holds
/// strokes, machines, what oil flows through, then the balances of flow at the nodes and of torque
/// on the shafts, and what loads, gearboxes and prime movers take and give.
std::vector<WorkedEquation> working_of(const Circuit& circuit, const Model& model,
                                       const SteadyState& state);

/// What `heat_working_of` needs beside a solution.
struct WarmPoint {
    const Fluid& fluid;
    std::span<const PointLoop> loops;
    double oil = 0.0;                    ///< K, of the reservoirs
    std::optional<double> ambient = {};  ///< K
    bool balanced = false;               ///< its heat balances at `oil`
};

/// The equations of each loop's own temperature, and, where the ambient temperature is known, of
/// what carries off the oil's heat and of its balance.
std::vector<WorkedEquation> heat_working_of(const Circuit& circuit, const Model& model,
                                            const SteadyState& state, const WarmPoint& point);

}  // namespace loopwright::hydraulics
