#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>

namespace loopwright {

/// The order of a first start, a sentence or two each, with the circuit's own parts by name.
/// Common practice, no source.
std::vector<std::string> first_start(const Circuit& circuit, const Structure& structure);

/// What whoever takes readings must beware of.
std::vector<std::string_view> reading_cautions();

}  // namespace loopwright
