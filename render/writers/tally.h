#pragma once

#include <span>

#include <loopwright/base/finding.h>

namespace loopwright {

/// How many needs came out how; a verdict counts once.
struct Tally {
    std::size_t pass = 0;
    std::size_t error = 0;
    std::size_t warning = 0;
    std::size_t note = 0;
    std::size_t inconclusive = 0;
    std::size_t not_applicable = 0;
    std::size_t waived = 0;  ///< failed or inconclusive, and accepted; in none of the others

    void count(const Verdict& verdict);
    Tally& operator+=(const Tally& other);
};
Tally tally(std::span<const Verdict> verdicts);

}  // namespace loopwright
