#pragma once

#include <span>
#include <string_view>

#include <loopwright/parser/kinds/elements.h>

/// The language of what a circuit says beside its parts: fluid, commands, duty, interlocks,
/// remarks, waivers, sheet hints; and measured data and tolerances inside a part. Constant data
/// only, driven from here like the kinds.
namespace loopwright {

/// All, an element before what stands in it.
std::span<const ElementSpec> definitions();

/// The one of that name that stands in that element, or null.
const ElementSpec* find_definition(std::string_view name, std::string_view in);

}  // namespace loopwright
