#pragma once

#include <chrono>
#include <span>

#include <loopwright/parser/circuit.h>
#include <loopwright/rules/check.h>

namespace loopwright {

/// Holds the circuit's waivers against its verdicts: failed and inconclusive ones that a waiver
/// names, and that holds on that day, are marked as waived. Under `unused-definition`, where that
/// rule is among `rules`, each waiver of a rule that was judged gets a verdict: failed where it
/// meets no finding, or is past its last day.
void apply_waivers(const Circuit& circuit, std::span<const Rule* const> rules,
                   std::chrono::sys_days today, CheckResult& result);

}  // namespace loopwright
