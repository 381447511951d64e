#include <loopwright/rules/waivers.h>

#include <algorithm>
#include <map>
#include <tuple>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

using Key = std::tuple<std::string_view, ElementType, Index>;

}  // namespace

void apply_waivers(const Circuit& circuit, std::span<const Rule* const> rules,
                   std::chrono::sys_days today, CheckResult& result) {
    if (circuit.waivers.empty()) return;
    const auto judged = [&](std::string_view id) -> const Rule* {
        const auto found = std::find_if(rules.begin(), rules.end(),
                                        [id](const Rule* rule) { return rule->info.id == id; });
        return found == rules.end() ? nullptr : *found;
    };
    std::map<Key, Verdict*> findings;
    for (Verdict& verdict : result.verdicts)
        if (verdict.outcome == Outcome::fail || verdict.outcome == Outcome::inconclusive)
            findings.emplace(Key{verdict.rule->id, verdict.subject.type, verdict.subject.index},
                             &verdict);

    std::vector<Verdict> own;
    const Rule* const rule = judged("unused-definition");
    for (Index i = 0; i < circuit.waivers.size(); ++i) {
        const Waiver& waiver = circuit.waivers[i];
        if (judged(waiver.rule) == nullptr) continue;
        const auto met = findings.find({waiver.rule, waiver.subject.type, waiver.subject.index});
        const bool due = waiver.until.has_value() && *waiver.until < today;
        if (met != findings.end() && !due && met->second->waived == nullptr)
            met->second->waived = result.keep->one(Waived{
                .reason = waiver.reason, .by = waiver.by, .until = waiver.until_text, .waiver = i});
        if (rule == nullptr) continue;
        Verdict& verdict = own.emplace_back();
        verdict.rule = &rule->info;
        verdict.subject = {ElementType::waiver, i,
                           result.keep->text(waiver.rule, " of ", waiver.subject.id)};
        verdict.level = Level::note;
        verdict.outcome = met == findings.end() || due ? Outcome::fail : Outcome::pass;
        verdict.message = due ? result.keep->text("the waiver of ", waiver.by,
                                                  " held to the end of ", waiver.until_text)
                          : met == findings.end()
                              ? result.keep->text("the waiver meets no finding of ", waiver.rule,
                                                  " on ", waiver.subject.id)
                              : result.keep->text("accepted by ", waiver.by);
    }
    if (own.empty()) return;
    // In place of "nothing to ask", at the end of the rule's verdicts.
    const auto is_own = [&](const Verdict& verdict) { return verdict.rule == &rule->info; };
    std::erase_if(result.verdicts, [&](const Verdict& verdict) {
        return is_own(verdict) && verdict.outcome == Outcome::not_applicable;
    });
    const auto last = std::find_if(result.verdicts.rbegin(), result.verdicts.rend(), is_own);
    result.verdicts.insert(last == result.verdicts.rend() ? result.verdicts.end() : last.base(),
                           own.begin(), own.end());
}

}  // namespace loopwright
