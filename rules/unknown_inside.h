#pragma once

#include <span>

#include <loopwright/parser/circuit.h>
#include <loopwright/rules/check.h>

namespace loopwright {

/// Whether a device of the circuit has an inside that nobody knows.
bool has_unknown_inside(const Circuit& circuit);

/// Judges the circuit with the devices' insides shut, and again for each way in which oil could
/// pass all their ports (joined, by checks, by relief valves, over restrictions, over elements). A
/// verdict that is not the same each time is inconclusive, the devices named as what is missing.
/// Five more runs, whatever the number of devices: a way that needs two devices to differ in kind
/// is not found, one that needs them to be alike is.
CheckResult check_unknown_inside(const Circuit& circuit, std::span<const Rule* const> rules,
                                 const Thresholds& thresholds,
                                 CheckResult (*judge)(const Circuit&, std::span<const Rule* const>,
                                                      const Thresholds&));

}  // namespace loopwright
