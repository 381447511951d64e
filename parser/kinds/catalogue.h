#pragma once

#include <span>
#include <string>
#include <string_view>

#include <loopwright/parser/kinds/kind.h>

namespace loopwright {

/// All kinds, sorted by name.
std::span<const Kind* const> kinds();

/// The kind whose element has that name, or null.
const Kind* find_kind(std::string_view name);

/// The attributes that every component may have beside its kind's own (id, title, designation).
std::span<const AttributeSpec> common_attributes();
}  // namespace loopwright
