#pragma once

#include <string>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>

namespace loopwright {

/// Whether a layout that was read shows the whole circuit and nothing else: every symbol once,
/// every shaft, and each net's ports joined by the wires of its lines and by no other's. Gives what
/// does not fit, or an empty text. A drawing with a part left out would be taken for the circuit.
std::string misfit(const Circuit& circuit, const Layout& layout);

}  // namespace loopwright
