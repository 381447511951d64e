#include <loopwright/rules/thresholds.h>

#include <algorithm>
#include <stdexcept>

#include <fmt/core.h>

#include <loopwright/parser/settings.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view root = "thresholds";

/// The rules that have thresholds, each with its own.
std::vector<SettingGroup> groups() {
    std::vector<SettingGroup> all;
    for (const Rule* rule : rules()) {
        if (rule->info.thresholds.empty()) continue;
        SettingGroup& group = all.emplace_back();
        group.name = rule->info.id;
        for (const Threshold& threshold : rule->info.thresholds)
            group.settings.push_back({.name = threshold.name,
                                      .type = AttributeType::quantity,
                                      .dimension = threshold.dimension,
                                      .least = threshold.least,
                                      .most = threshold.most,
                                      .doc = threshold.doc,
                                      .example = threshold.example});
    }
    return all;
}

const Threshold* find_threshold(const RuleInfo& rule, std::string_view name) {
    const auto found =
        std::find_if(rule.thresholds.begin(), rule.thresholds.end(),
                     [&](const Threshold& threshold) { return threshold.name == name; });
    return found == rule.thresholds.end() ? nullptr : &*found;
}

}  // namespace

double Thresholds::value(const RuleInfo& rule, std::string_view name) const {
    const Threshold* const threshold = find_threshold(rule, name);
    if (threshold == nullptr)
        throw std::logic_error(fmt::format("rule {} has no threshold {}", rule.id, name));
    for (const ThresholdInUse& own : set_)
        if (own.threshold == threshold) return own.si;
    return threshold->value;
}

void Thresholds::set(const RuleInfo& rule, const Threshold& threshold, double si) {
    set_.push_back({&rule, &threshold, si, true});
}

std::vector<ThresholdInUse> Thresholds::in_use(std::span<const Rule* const> rules) const {
    std::vector<ThresholdInUse> all;
    for (const Rule* rule : rules)
        for (const Threshold& threshold : rule->info.thresholds) {
            const auto own = std::find_if(set_.begin(), set_.end(), [&](const ThresholdInUse& one) {
                return one.threshold == &threshold;
            });
            all.push_back(own != set_.end()
                              ? *own
                              : ThresholdInUse{&rule->info, &threshold, threshold.value, false});
        }
    return all;
}

ThresholdsResult read_thresholds(const std::filesystem::path& file) {
    SettingsResult read = read_settings(file, root, groups());
    ThresholdsResult result;
    result.ok = read.ok();
    result.diagnostics = std::move(read.diagnostics);
    result.sources = std::move(read.sources);
    if (!result.ok) return result;
    for (const Setting& setting : read.settings) {
        const RuleInfo& rule = find_rule(setting.group)->info;
        result.thresholds.set(rule, *find_threshold(rule, setting.name), setting.si);
    }
    return result;
}

std::string thresholds_schema() { return settings_schema(root, groups()); }

}  // namespace loopwright
