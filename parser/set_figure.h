#pragma once

#include <loopwright/parser/circuit.h>

/// Other figures in a copy of a circuit: what sweeps and corners of tolerances are made of.
namespace loopwright {

/// Puts a figure in place of what a range of attributes has, SI. False: it stood there already.
bool set_figure(Circuit& circuit, Range& attributes, const AttributeSpec& spec, double si);

/// The same of a component, with what its passages open at.
bool set_figure(Circuit& circuit, Index component, const AttributeSpec& spec, double si);

}  // namespace loopwright
