#pragma once

#include <string_view>

#include <loopwright/parser/circuit.h>

namespace loopwright {

/// Whether a brake is there to hold what stands. One for which no use is given is taken to hold if
/// a spring applies it.
inline bool meant_to_hold(const Circuit& circuit, const Component& brake) {
    const std::string_view use = circuit.choice(brake, "use");
    return use.empty() ? circuit.choice(brake, "applied") == "spring" : use != "service";
}

}  // namespace loopwright
