#pragma once

#include <span>
#include <string>
#include <string_view>

#include <loopwright/base/diagnostic.h>
#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/writers/report.h>

/// The machine output of `check`, "loopwright-check/1", in parts, so that one circuit at a time is
/// held: head, a part for each file, tail. The parts together are one JSON document.
namespace loopwright {

class CheckJson {
  public:
    /// `thresholds`: those of the rules that run.
    std::string head(std::span<const ThresholdInUse> thresholds) const;
    /// A circuit that could be read.
    std::string circuit(std::string_view file, const Circuit& circuit,
                        const Diagnostics& diagnostics, const Structure& structure,
                        std::span<const Verdict> verdicts);
    /// A file that could not.
    std::string unreadable(std::string_view file, const Diagnostics& diagnostics,
                           const SourceSet& sources);
    /// Some circuit has waivers, that were held against that day: the result names it.
    void waivers_held_on(std::string_view day);
    std::string tail() const;

  private:
    std::string part(std::string text);

    std::size_t files_ = 0;
    std::size_t unreadable_ = 0;
    Tally sum_ = {};
    std::string today_ = {};
};

}  // namespace loopwright
