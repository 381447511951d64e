#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>

#include <loopwright/base/diagnostic.h>
#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>

namespace loopwright {

/// What holds for all files of a run.
struct CheckFrame {
    std::span<const RuleInfo* const> rules = {};      ///< those that run, in their order
    std::span<const ThresholdInUse> thresholds = {};  ///< theirs
    std::string_view thresholds_file = {};            ///< as the user named it; may be empty
    std::string_view working_folder = {};             ///< absolute, links resolved
};

/// The result of `check` for machines, in parts, so that one circuit at a time is held: head, a
/// part for each file, tail. The parts together are one document. The same input gives the same
/// bytes. Bytes of a file that are no UTF-8 become the replacement character.
class CheckDocument {
  public:
    CheckDocument() = default;
    CheckDocument(const CheckDocument&) = delete;
    CheckDocument& operator=(const CheckDocument&) = delete;
    virtual ~CheckDocument() = default;

    /// What `frame` leads to must outlive the document.
    virtual std::string head(const CheckFrame& frame) = 0;
    /// A circuit that could be read.
    virtual std::string circuit(std::string_view file, const Circuit& circuit,
                                const Diagnostics& diagnostics, const Structure& structure,
                                std::span<const Verdict> verdicts) = 0;
    /// A file that could not.
    virtual std::string unreadable(std::string_view file, const Diagnostics& diagnostics,
                                   const SourceSet& sources) = 0;
    /// Some circuit has waivers, that were held against that day: the result names it.
    virtual void waivers_held_on(std::string_view day) = 0;
    virtual std::string tail() = 0;
};

/// "loopwright-check/1", see `json_schema("check")`.
std::unique_ptr<CheckDocument> check_json();

/// OASIS SARIF 2.1.0: one run, a result for each verdict; what is wrong with files is a
/// notification. Paths are relative to the working folder where they lead into it.
std::unique_ptr<CheckDocument> check_sarif();

}  // namespace loopwright
