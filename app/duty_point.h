#pragma once

#include <string>

#include <loopwright/parser/circuit.h>

namespace loopwright::app {

/// Whether the circuit has that point (any, where the id is empty); tells what it has where not.
bool has_point(const Circuit& circuit, const std::string& id);

}  // namespace loopwright::app
