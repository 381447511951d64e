#pragma once

namespace loopwright::app {

/// What the program says to the shell; of several files the highest counts.
enum class ExitStatus : int {
    good = 0,      ///< nothing at or above --fail-on
    findings = 1,  ///< there is
    unusable = 2,  ///< input, option or output
    internal = 3,  ///< a broken promise of our own
};

inline ExitStatus worse(ExitStatus a, ExitStatus b) {
    return static_cast<int>(a) > static_cast<int>(b) ? a : b;
}

}  // namespace loopwright::app
