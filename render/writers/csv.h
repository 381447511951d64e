#pragma once

#include <string>
#include <string_view>

namespace loopwright {

/// A field of a row after RFC 4180; text that a spreadsheet would take for a formula is kept from
/// being one.
std::string csv_field(std::string_view text);

}  // namespace loopwright
