#pragma once

#include <loopwright/parser/circuit.h>

/// How assemblies stand inside one another; `none` is the circuit itself.
namespace loopwright {

/// Whether an assembly is the other or inside it. Everything is inside the circuit.
bool is_inside(const Circuit& circuit, Index assembly, Index outer);

/// The innermost that holds both.
Index common_assembly(const Circuit& circuit, Index a, Index b);

/// The assembly right inside `outer` on the way to one that is inside it; `none` if it is `outer`.
Index next_inside(const Circuit& circuit, Index assembly, Index outer);

/// How many frames a line passes on its way from a part of the one to a part of the other.
int frames_between(const Circuit& circuit, Index a, Index b);

}  // namespace loopwright
