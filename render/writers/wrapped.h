#pragma once

#include <string>
#include <string_view>

namespace loopwright {

/// `text` in lines of at most 100 bytes (a longer word stands alone), each with its line end,
/// behind a head; further lines are indented as far as the head goes.
std::string wrapped(std::string_view head, std::string_view text);

}  // namespace loopwright
