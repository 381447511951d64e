#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>

namespace loopwright {

struct Rule;

struct CheckResult {
    Structure structure = {};
    std::vector<Verdict> verdicts = {};  ///< by the catalogue's order of rules, then subject
    std::uint64_t work = 0;              ///< visits of nodes and edges, for the tests of cost
};

/// Judges a circuit by the rules given (see rules() for all), every running state of it.
CheckResult check(const Circuit& circuit, std::span<const Rule* const> rules);

}  // namespace loopwright
