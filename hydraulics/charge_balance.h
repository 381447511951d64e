#pragma once

#include <vector>

#include <loopwright/hydraulics/operating_point.h>

namespace loopwright::hydraulics {

/// What each pump that draws from a reservoir and feeds a loop gives, and by which ways its oil
/// leaves the charge line and the loops that it feeds.
std::vector<ChargeBalance> charge_balances(const Circuit& circuit, const Model& model,
                                           const SteadyState& state);

}  // namespace loopwright::hydraulics
