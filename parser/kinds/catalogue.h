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
/// The attributes of `circuit`, `line`, `hose`, `shaft`, `assembly` and `use`, by the element's
/// name; empty for any other name. `joins`, `id` and `format` are not among them: the reader
/// knows them.
std::span<const AttributeSpec> element_attributes(std::string_view element);

}  // namespace loopwright
