#pragma once

#include <loopwright/base/finding.h>

namespace loopwright {

/// Whether two verdicts are told in one entry for people: what one rule cannot decide, and what of
/// one rule follows from the same finding. One mistake shall not read as fifteen.
inline bool told_together(const Verdict& a, const Verdict& b) {
    if (a.rule != b.rule || a.outcome != b.outcome || a.waived != nullptr || b.waived != nullptr)
        return false;
    if (a.outcome == Outcome::inconclusive) return true;
    return a.outcome == Outcome::fail && a.level == b.level && a.follows != nullptr &&
           b.follows != nullptr && a.follows->rule == b.follows->rule &&
           a.follows->subject == b.follows->subject;
}

}  // namespace loopwright
