#pragma once

#include <algorithm>
#include <iterator>

#include <loopwright/base/finding.h>

namespace loopwright {

/// What a rule about figures at work leaves open in a circuit without a duty.
inline bool lacks_duty(const Verdict& verdict) {
    return verdict.outcome == Outcome::inconclusive &&
           verdict.subject.type == ElementType::circuit && verdict.missing.size() == 1 &&
           verdict.missing.front() == "duty";
}

/// Whether two verdicts are open for one reason, be it for different rules: a duty that is missing,
/// a duty point without a solution.
inline bool open_for_one_reason(const Verdict& a, const Verdict& b) {
    const auto at_work = [](const Verdict& one) {
        return !one.point.empty() || one.subject.type == ElementType::circuit;
    };
    return a.outcome == Outcome::inconclusive && b.outcome == Outcome::inconclusive && at_work(a) &&
           at_work(b) && a.message == b.message &&
           std::equal(a.missing.begin(), a.missing.end(), b.missing.begin(), b.missing.end());
}

/// Whether two verdicts are told in one entry for people: what one rule cannot decide, what several
/// cannot for one reason, and what of one rule follows from the same finding. One mistake shall not
/// read as fifteen.
inline bool told_together(const Verdict& a, const Verdict& b) {
    if (a.waived != nullptr || b.waived != nullptr || a.outcome != b.outcome) return false;
    if (a.rule != b.rule) return open_for_one_reason(a, b);
    if (a.outcome == Outcome::inconclusive) return true;
    return a.outcome == Outcome::fail && a.level == b.level && a.follows != nullptr &&
           b.follows != nullptr && a.follows->rule == b.follows->rule &&
           a.follows->subject == b.follows->subject;
}

/// Of entries that verdicts rule by rule have begun, the one that a further verdict is told in; the
/// end where it begins its own. `first_of(entry)`: its first verdict.
template <typename Entries, typename First>
auto entry_of(Entries& entries, const Verdict& verdict, First first_of) {
    const auto same = std::find_if(entries.rbegin(), entries.rend(), [&](const auto& entry) {
        return first_of(entry).rule != verdict.rule || told_together(first_of(entry), verdict);
    });
    if (same != entries.rend() && first_of(*same).rule == verdict.rule)
        return std::prev(same.base());
    if (verdict.outcome != Outcome::inconclusive) return entries.end();
    return std::find_if(entries.begin(), entries.end(),
                        [&](const auto& entry) { return told_together(first_of(entry), verdict); });
}

}  // namespace loopwright
