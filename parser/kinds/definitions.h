#pragma once

#include <span>
#include <string_view>

#include <loopwright/parser/kinds/kind.h>

/// The language of what a circuit says beside its parts: fluid, commands, duty, interlocks,
/// remarks, waivers, sheet hints; and measured data and tolerances inside a part. Constant data
/// only, driven from here like the kinds.
namespace loopwright {

struct DefinitionSpec {
    std::string_view name = {};  ///< the element's name
    std::string_view in = {};    ///< the element that it stands in; "component": any part
    std::string_view doc = {};   ///< one or two sentences
    std::span<const AttributeSpec> attributes = {};
    bool once = false;  ///< at most one in a circuit
};

/// All, an element before what stands in it.
std::span<const DefinitionSpec> definitions();

/// The one of that name that stands in that element, or null.
const DefinitionSpec* find_definition(std::string_view name, std::string_view in);

}  // namespace loopwright
