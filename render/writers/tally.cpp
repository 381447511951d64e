#include <loopwright/render/writers/tally.h>

namespace loopwright {

void Tally::count(const Verdict& verdict) {
    if (verdict.waived != nullptr) {
        ++waived;
        return;
    }
    switch (verdict.outcome) {
        case Outcome::pass:
            ++pass;
            return;
        case Outcome::inconclusive:
            ++inconclusive;
            return;
        case Outcome::not_applicable:
            ++not_applicable;
            return;
        case Outcome::fail:
            break;
    }
    switch (verdict.level) {
        case Level::error:
            ++error;
            return;
        case Level::warning:
            ++warning;
            return;
        case Level::note:
            ++note;
            return;
    }
}

Tally& Tally::operator+=(const Tally& other) {
    pass += other.pass;
    error += other.error;
    warning += other.warning;
    note += other.note;
    inconclusive += other.inconclusive;
    not_applicable += other.not_applicable;
    waived += other.waived;
    return *this;
}

Tally tally(std::span<const Verdict> verdicts) {
    Tally tally;
    for (const Verdict& verdict : verdicts) tally.count(verdict);
    return tally;
}

}  // namespace loopwright
