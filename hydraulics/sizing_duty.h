#pragma once

#include <optional>
#include <string>
#include <vector>

#include <loopwright/hydraulics/sizing.h>
#include <loopwright/parser/circuit.h>

namespace loopwright::hydraulics {

/// What a circuit without a drive asks of one: a prime mover with power and speed, a load, a pump
/// that gives no more than its `working-pressure`, a gearbox on the load's shaft or none, the oil,
/// and duty points that say how fast the load is to be (`velocity`, or `speed` of the load).
struct SizingTask {
    SizingDuty duty = {};
    std::optional<Fluid> fluid = {};
    Index mover = none;  ///< components
    Index pump = none;
    Index load = none;
    Index gearbox = none;                 ///< none: the motor stands on the load's shaft
    bool load_at_out = true;              ///< the gearbox's end that the load is on
    std::vector<std::string> wrong = {};  ///< why it is no such circuit; data by name
};

SizingTask sizing_task(const Circuit& circuit);

}  // namespace loopwright::hydraulics
