#pragma once

#include <string>
#include <utility>
#include <vector>

#include <loopwright/parser/circuit.h>

/// What the rules say of a circuit written in a test, as text that a test can compare.
namespace loopwright::testing {

/// A text and what stands in its place.
using Edit = std::pair<std::string, std::string>;

/// Each edit's text must occur exactly once; fails the running test otherwise.
std::string edited(std::string text, const std::vector<Edit>& edits);

/// A sound drive with every part that the rules ask for; the ground of the pairs that differ in one
/// thing. Ids: E1, P1, P2 (charge), M1, D1, C1 C2 (make-up A, B), R1 (charge relief), R2 R3
/// (crossport from A, from B), V1, R4 (flushing), F1, K1, T1.
const std::string& sound_drive();

/// The sound drive with edits.
Circuit with(const std::vector<Edit>& edits);
/// More parts at the end of a circuit.
Edit added(const std::string& parts);

/// States as the texts below list them: all running ones, and those in which the sound drive's
/// side A is low or nothing moves, and the same for B.
inline constexpr const char* all_running =
    " neutral drive-forward drive-reverse overrun-forward overrun-reverse hold lost-signal\n";
inline constexpr const char* running_and_towing =
    " neutral drive-forward drive-reverse overrun-forward overrun-reverse hold lost-signal "
    "towing\n";
inline constexpr const char* a_low = " neutral drive-reverse overrun-forward hold lost-signal\n";
inline constexpr const char* b_low = " neutral drive-forward overrun-reverse hold lost-signal\n";

/// All verdicts that are not passes, but for rules that the circuit has nothing for, for findings
/// that follow from another one, and for rules about the outfit of single parts (ratings, controls,
/// breathers, indicators) or about figures at work, which the small circuits of the tests do not
/// give; a line each: "rule subject outcome [level] states", a state with positions as
/// "neutral[V3=a]", in the order of the verdicts; a duty point behind "at", missing data behind
/// "needs".
std::string not_passed(const Circuit& circuit);

/// The same for every verdict of one rule, passes too.
std::string verdicts_of(const Circuit& circuit, std::string_view rule);

/// Loops and open parts, a line each: "loop:P1 P1 : M1 M2", "open:P3 P3 : M4", and below a loop
/// its sides with their roles, "  side:P1.A main".
std::string structure_text(const Circuit& circuit);

}  // namespace loopwright::testing
