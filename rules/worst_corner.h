#pragma once

#include <span>

#include <loopwright/parser/circuit.h>
#include <loopwright/rules/check.h>

namespace loopwright {

/// Judges the circuit as it is and at corners of its tolerances (tolerances.h). Of each rule and
/// subject the verdict stands that is worst, or of equal ones that with the least margin as a share
/// of what is required; where that is at a corner, its message says at which.
///
/// Each datum is moved alone to either end, then all to the ends that were worse for a verdict, and
/// of up to four all corners are gone through. So what rises or falls with each datum is decided
/// exactly; a worst case inside the range of a datum is not looked for. Parts that no line and no
/// shaft joins are moved at once, each for its own verdicts.
CheckResult check_worst_corner(const Circuit& circuit, std::span<const Rule* const> rules,
                               const Thresholds& thresholds,
                               CheckResult (*judge)(const Circuit&, std::span<const Rule* const>,
                                                    const Thresholds&));

}  // namespace loopwright
