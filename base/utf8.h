#pragma once

#include <cstddef>
#include <string_view>

/// Characters out of bytes that may be anything.
namespace loopwright::utf8 {

/// A character and how many bytes it takes. A byte that begins no valid character (RFC 3629) is
/// one by itself, with `valid` false.
struct Character {
    char32_t code = 0;
    std::size_t length = 1;
    bool valid = true;
};

/// The character at the head of `text`, which is not empty.
Character first(std::string_view text);

/// U+FEFF at the head of a file.
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Whether a character could steer a terminal or turn the order of the text round it: controls
/// (C0, DEL, C1), line and paragraph separators, directional formatting (Unicode, UAX 9), the byte
/// order mark.
bool is_control(char32_t code);

}  // namespace loopwright::utf8
