#pragma once

#include <span>
#include <string_view>

#include <loopwright/parser/kinds/kind.h>

/// What the description is made of beside components: circuit, lines, shafts, assemblies, and what
/// stands inside them and inside components. Constant data only, like the kinds.
namespace loopwright {

struct ElementSpec {
    std::string_view name = {};
    std::string_view in = {};  ///< the element that it stands in; "component": any; empty: a file's
                               ///< outermost
    std::string_view doc = {};  ///< one or two sentences
    std::span<const AttributeSpec> attributes = {};
    bool once = false;  ///< at most one in a circuit
};

/// All, an element before what stands in it.
std::span<const ElementSpec> elements();

/// The one of that name that stands in that element, or null.
const ElementSpec* find_element(std::string_view name, std::string_view in);

}  // namespace loopwright
