#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace loopwright {

/// Text out of a file as a message may quote it: cut behind 60 bytes (never inside a character)
/// with
/// "..." in place of the rest, and with blanks in place of tabs and line ends.
inline std::string clipped(std::string_view text) {
    constexpr std::size_t most = 60;
    const bool whole = text.size() <= most;
    std::size_t end = std::min(text.size(), most);
    while (!whole && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    std::string quoted(text.substr(0, end));
    std::replace_if(
        quoted.begin(), quoted.end(), [](char c) { return c == '\t' || c == '\n' || c == '\r'; },
        ' ');
    return whole ? quoted : quoted + "...";
}

}  // namespace loopwright
