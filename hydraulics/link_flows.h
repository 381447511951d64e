#pragma once

#include <optional>
#include <vector>

#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/steady_state.h>

namespace loopwright::hydraulics {

/// Flow through each link of a model from its first port to its second, in m3/s: what all that
/// stands behind it puts in. None where links form a ring: how a flow parts over ways without a
/// known loss cannot be told.
std::vector<std::optional<double>> link_flows(const Circuit& circuit, const Model& model,
                                              const SteadyState& state);

}  // namespace loopwright::hydraulics
