#pragma once

#include <loopwright/parser/circuit.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/roles.h>
#include <loopwright/render/sketch.h>

/// Room on the sheet for what stands beside symbols and lines.
namespace loopwright {

/// Finds room for all labels in a layout whose wires, shafts and frames are there. Component
/// labels first, from their planned place outwards, with a leader where they have to stand apart;
/// then ids of lines.
void place_labels(const Circuit& circuit, const Sketch& sketch, const Roles& roles, Layout& layout);

}  // namespace loopwright
