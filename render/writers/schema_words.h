#pragma once

#include <string>
#include <string_view>

namespace loopwright {

/// A JSON schema's text with lists of words out of the tables in place of `@level@`, `@outcome@`,
/// `@state@`, `@subject@`, `@shape@`, `@role@`, `@passage@` and `@sheet@`.
std::string with_words(std::string_view text);

}  // namespace loopwright
