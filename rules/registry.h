#pragma once

#include <span>
#include <string_view>

namespace loopwright {

struct Rule;

/// All rules in the catalogue's order.
std::span<const Rule* const> rules();

/// The rule of that id, or null.
const Rule* find_rule(std::string_view id);

}  // namespace loopwright
