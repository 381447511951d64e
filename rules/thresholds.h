#pragma once

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/diagnostic.h>
#include <loopwright/base/finding.h>
#include <loopwright/base/source.h>

namespace loopwright {

struct Rule;

/// The figures that rules hold things against: each rule's own, but for those that the user has
/// set.
class Thresholds {
  public:
    /// The value in use, SI. Throws std::logic_error where the rule has no threshold of that name.
    double value(const RuleInfo& rule, std::string_view name) const;
    void set(const RuleInfo& rule, const Threshold& threshold, double si);
    /// All of some rules, in their order.
    std::vector<ThresholdInUse> in_use(std::span<const Rule* const> rules) const;

  private:
    std::vector<ThresholdInUse> set_;
};

struct ThresholdsResult {
    Thresholds thresholds = {};  ///< to be used only where `ok`
    bool ok = false;
    Diagnostics diagnostics = {};
    std::shared_ptr<const SourceSet> sources = {};
};

/// Reads a thresholds file:
///     <thresholds format="1"> <hose-safety burst-ratio="3.5"/> </thresholds>
ThresholdsResult read_thresholds(const std::filesystem::path& file);

/// Its XML schema, made from the rules.
std::string thresholds_schema();

}  // namespace loopwright
