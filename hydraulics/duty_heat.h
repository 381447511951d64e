#pragma once

#include <optional>
#include <string>

#include <loopwright/hydraulics/heat_balance.h>

namespace loopwright::hydraulics {

/// The oil over the whole duty: means over the shares of the working time, all points at one
/// temperature of the reservoir's oil, which is slow beside them.
struct DutyHeat {
    std::string problem = {};  ///< why it is not known, or why the oil finds no balance
    double oil = 0.0;          ///< K at which heat balances
    double rest = 0.0;         ///< share that the points leave: neutral, the prime mover turning
    HeatBalance heat = {};     ///< W
    double power_in = 0.0;     ///< W that prime movers give
    double power_out = 0.0;    ///< W that loads take
    double lost = 0.0;         ///< W, of gearboxes too
};

/// Nothing where the duty gives no shares, no ambient temperature, or nothing cools the oil by a
/// given figure.
std::optional<DutyHeat> duty_heat(const Circuit& circuit);

}  // namespace loopwright::hydraulics
