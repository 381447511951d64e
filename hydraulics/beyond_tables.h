#pragma once

#include <string>

#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/steady_state.h>

namespace loopwright::hydraulics {

/// What a state asks of a measured table beyond what was measured; nothing where it stays inside.
std::string beyond_tables(const Circuit& circuit, const Model& model, const SteadyState& state);

}  // namespace loopwright::hydraulics
