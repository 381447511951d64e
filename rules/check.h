#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include <loopwright/base/keep.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/rules/thresholds.h>

namespace loopwright {

struct Rule;

/// Owns what its verdicts are views of, so it can be moved, not copied.
struct CheckResult {
    std::unique_ptr<Keep> keep = std::make_unique<Keep>();
    /// Of the runs at corners of tolerances that verdicts come from.
    std::vector<std::unique_ptr<Keep>> kept_beside = {};
    Structure structure = {};
    std::vector<Verdict> verdicts = {};  ///< by the catalogue's order of rules, then subject
    std::uint64_t work = 0;              ///< visits of nodes and edges, for the tests of cost
};

/// Judges a circuit by the rules given (see rules() for all), every running state of it, at the
/// worst corner of its tolerances.
CheckResult check(const Circuit& circuit, std::span<const Rule* const> rules,
                  const Thresholds& thresholds = {});

}  // namespace loopwright
