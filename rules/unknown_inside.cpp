#include <loopwright/rules/unknown_inside.h>

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool is_unknown(const Circuit& circuit, const Component& component) {
    return component.kind->part == Part::device && circuit.choice(component, "inside") == "unknown";
}

/// The circuit with a passage of that class from each port of such a device to each other.
Circuit opened(const Circuit& circuit, PassageClass passage_class) {
    Circuit copy = circuit;
    for (Index i = 0; i < copy.components.size(); ++i) {
        Component& device = copy.components[i];
        if (!is_unknown(copy, device)) continue;
        device.passages.begin = static_cast<Index>(copy.passages.size());
        for (Index from = device.ports.begin; from < device.ports.end; ++from)
            for (Index to = device.ports.begin; to < device.ports.end; ++to) {
                if (from == to) continue;
                Passage& passage = copy.passages.emplace_back();
                passage.from = from;
                passage.to = to;
                passage.component = i;
                passage.passage = passage_class;
            }
        device.passages.end = static_cast<Index>(copy.passages.size());
    }
    return copy;
}

using Key = std::tuple<const RuleInfo*, ElementType, Index>;

Key key_of(const Verdict& verdict) {
    return {verdict.rule, verdict.subject.type, verdict.subject.index};
}

}  // namespace

bool has_unknown_inside(const Circuit& circuit) {
    return std::any_of(circuit.components.begin(), circuit.components.end(),
                       [&](const Component& one) { return is_unknown(circuit, one); });
}

CheckResult check_unknown_inside(const Circuit& circuit, std::span<const Rule* const> rules,
                                 const Thresholds& thresholds,
                                 CheckResult (*judge)(const Circuit&, std::span<const Rule* const>,
                                                      const Thresholds&)) {
    CheckResult result = judge(circuit, rules, thresholds);
    std::map<Key, Verdict*> shut;
    for (Verdict& verdict : result.verdicts) shut.emplace(key_of(verdict), &verdict);

    std::vector<std::string_view> devices;
    for (const Component& one : circuit.components)
        if (is_unknown(circuit, one)) devices.push_back(result.keep->text(one.path, ".inside"));
    const std::span<const std::string_view> missing =
        result.keep->list(std::span<const std::string_view>(devices));
    const std::string_view message = result.keep->text(
        "it hangs on the inside of ", devices.front().substr(0, devices.front().rfind('.')),
        devices.size() > 1 ? " and of other devices" : "", ", which is unknown");
    const auto undecided = [&](Verdict& verdict) {
        verdict.outcome = Outcome::inconclusive;
        verdict.message = message;
        verdict.missing = missing;
        verdict.witness = {};
        verdict.figures = nullptr;
    };

    std::vector<Verdict> more;  // on subjects that are there with an open inside only
    std::map<Key, bool> known;
    for (const PassageClass inside :
         {PassageClass::joined, PassageClass::one_way, PassageClass::pressure_opened,
          PassageClass::metering, PassageClass::element}) {
        CheckResult other = judge(opened(circuit, inside), rules, thresholds);
        result.work += other.work;
        std::map<Key, const Verdict*> open;
        for (const Verdict& verdict : other.verdicts) open.emplace(key_of(verdict), &verdict);
        for (auto& [key, verdict] : shut) {
            const auto same = open.find(key);
            if (same == open.end() || same->second->outcome != verdict->outcome ||
                (verdict->outcome == Outcome::fail && same->second->level != verdict->level))
                undecided(*verdict);
        }
        for (const auto& [key, verdict] : open) {
            if (shut.contains(key) || !known.emplace(key, true).second) continue;
            Verdict& added = more.emplace_back(*verdict);
            added.subject.id = result.keep->text(added.subject.id);
            added.states = {};
            undecided(added);
        }
    }
    result.verdicts.insert(result.verdicts.end(), more.begin(), more.end());
    std::stable_sort(
        result.verdicts.begin(), result.verdicts.end(), [&](const Verdict& a, const Verdict& b) {
            const auto at = [&](const Verdict& verdict) {
                return std::find_if(rules.begin(), rules.end(),
                                    [&](const Rule* rule) { return &rule->info == verdict.rule; }) -
                       rules.begin();
            };
            return at(a) < at(b);
        });
    return result;
}

}  // namespace loopwright
