#pragma once

#include <optional>
#include <string>
#include <vector>

#include <loopwright/hydraulics/heat_balance.h>

namespace loopwright::hydraulics {

/// The oil over the whole duty: means over the shares of the working time, all points at one
/// temperature of the reservoir's oil, which is slow beside them.
struct DutyHeat {
    std::string problem = {};  ///< why it is not known, or why the oil finds no balance
    std::vector<std::string> missing = {};  ///< data without which it cannot be known
    double oil = 0.0;                       ///< K at which heat balances
    double rest = 0.0;       ///< share that the points leave: neutral, the prime mover turning
    HeatBalance heat = {};   ///< W
    double power_in = 0.0;   ///< W that prime movers give
    double power_out = 0.0;  ///< W that loads take
    double lost = 0.0;       ///< W, of gearboxes too
    std::vector<Assumption> assumptions = {};  ///< of any point, each once
};

/// Nothing where the duty gives no shares, no ambient temperature, or nothing cools the oil by a
/// given figure.
std::optional<DutyHeat> duty_heat(const Circuit& circuit);

/// The same with the oil at a given temperature, K, at which its heat need not balance.
std::optional<DutyHeat> duty_heat_at(const Circuit& circuit, double oil);

}  // namespace loopwright::hydraulics
