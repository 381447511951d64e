#pragma once

#include <span>
#include <string>
#include <string_view>

#include <loopwright/base/diagnostic.h>
#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/writers/tally.h>

/// What is printed for people.
namespace loopwright {

struct ReportStyle {
    bool all = false;  ///< passes and what is not applicable, too
    /// The day on which waivers must hold, told where the circuit has some; may be empty.
    std::string_view today = {};
    std::span<const ThresholdInUse> thresholds = {};  ///< to be told
    bool colour = false;                              ///< ANSI; never the only sign of anything
};

/// Each diagnostic as "file:line:column: error: message", the quoted line with the place
/// underlined, what was expected and the likely meaning.
std::string diagnostics_text(const Diagnostics& diagnostics, const SourceSet& sources,
                             const ReportStyle& style);

/// First the loops and open parts, then how many needs were proved, refuted and undecided, then
/// each finding: what, where, the witness as numbered steps, remedy and source.
std::string report_text(const Circuit& circuit, const Structure& structure,
                        std::span<const Verdict> verdicts, const ReportStyle& style);

/// "P1: the seal weeps (owner, 2026-11-02)": a reviewer's remark.
std::string remark_text(const Remark& remark);

/// "drive-forward (V3 at a)": a state as a verdict names it.
std::string state_text(const Circuit& circuit, const StateUse& use);

/// All states of a verdict, each once.
std::string states_text(const Circuit& circuit, const Verdict& verdict);
/// "duty point haul: measured 2 bar, required 3 bar, margin -1 bar": the point that decides.
std::string point_text(const Verdict& verdict);
/// What a verdict cannot be reached without, each datum once.
std::string missing_text(const Verdict& verdict);

/// One step of a witness in words: "check valve C1, from A to B: free flow".
std::string step_text(const Circuit& circuit, const Step& step);

/// Where a verdict's subject stands in the file.
SourceRef place_of(const Circuit& circuit, const Subject& subject);
/// Where a step's element stands.
SourceRef place_of(const Circuit& circuit, const Step& step);

/// Text out of a file with control characters made visible.
std::string visible(std::string_view text);

}  // namespace loopwright
