#pragma once

#include <string>
#include <string_view>

namespace loopwright {

/// Text for element content and attributes alike. What XML cannot hold is made visible: controls by
/// their pictures (U+2400), the rest by U+FFFD.
std::string xml_escaped(std::string_view text);

}  // namespace loopwright
