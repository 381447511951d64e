#pragma once

#include <loopwright/render/layout.h>
#include <loopwright/render/sketch.h>

namespace loopwright {

/// Frames round the parts of assemblies, 1.5 M outside their bodies. Where the parts of an
/// assembly stand apart with others between them, the assembly gets several frames of one name: a
/// frame never holds a part that does not belong to it.
void place_frames(const Circuit& circuit, const Sketch& sketch, Layout& layout);

}  // namespace loopwright
