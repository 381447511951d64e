#pragma once

#include <span>
#include <string_view>

namespace loopwright {

/// One variant of a kind, as a circuit file would write it. Sheet and tests go through all of them.
struct SymbolVariant {
    std::string_view words = {};  ///< what sets it apart; empty: nothing
    std::string_view xml = {};    ///< one element
    bool local_mark = false;      ///< the mark that a drawing repeats, for a reservoir
};

/// Every kind at least once, every shape that a symbol can take.
std::span<const SymbolVariant> symbol_variants();

}  // namespace loopwright
