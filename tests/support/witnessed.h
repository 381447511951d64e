#pragma once

#include <string>
#include <string_view>

#include <loopwright/parser/circuit.h>

/// Findings and witnesses as text that a test can compare.
namespace loopwright::testing {

/// The verdicts that failed or are inconclusive, a line each as in not_passed() (judged.h).
std::string findings_of(const Circuit& circuit);

/// The witness for one rule and subject: its shape, then its steps in order. A component is shown
/// with the ports it is entered and left by, a line by its name, with the port that a walk starts
/// or ends at where no component follows:
///
///     path: P2>P G1 F1.A>B G2 C1.A>B HA>P1.A
///
/// Fails the running test if there is no such verdict, and for a path that does not hang together:
/// a line that does not join the ports it leads between, or a step that starts elsewhere than the
/// last one ended.
std::string witness_of(const Circuit& circuit, std::string_view rule, std::string_view subject);

/// Fails the running test unless a witness is a frontier with that step in it.
void expect_at_frontier(const std::string& witness, const std::string& step);

}  // namespace loopwright::testing
