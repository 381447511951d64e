#pragma once

#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>
#include <loopwright/render/layout.h>

namespace loopwright {

/// Shafts as double lines, the two lines half a module apart, open where two runs meet.
std::vector<Group> shaft_groups(const Circuit& circuit, const Layout& layout);

}  // namespace loopwright
