#pragma once

#include <array>
#include <bit>
#include <cstdint>
#include <optional>
#include <string_view>

#include <loopwright/base/source.h>

/// Bytes and characters as XML 1.0 (fifth edition) sorts them.
namespace loopwright {

/// What a byte can be; bits.
namespace byte_class {
inline constexpr std::uint8_t space = 1;
inline constexpr std::uint8_t name_start = 2;  ///< ASCII only; other characters: `name_character`
inline constexpr std::uint8_t name = 4;
inline constexpr std::uint8_t ends_double = 8;   ///< stops the quick run through "..."
inline constexpr std::uint8_t ends_single = 16;  ///< stops the quick run through '...'
inline constexpr std::uint8_t beyond_ascii = 32;
inline constexpr std::uint8_t id = 64;  ///< may stand in an id of the circuit
}  // namespace byte_class

constexpr std::array<std::uint8_t, 256> make_byte_classes() {
    std::array<std::uint8_t, 256> table{};
    const auto add = [&table](unsigned first, unsigned last, unsigned bits) {
        for (unsigned c = first; c <= last; ++c) {
            table[c] = static_cast<std::uint8_t>(table[c] | bits);
        }
    };
    for (const char c : {' ', '\t', '\n', '\r'}) {
        add(static_cast<unsigned char>(c), static_cast<unsigned char>(c), byte_class::space);
    }
    constexpr unsigned in_names = byte_class::name_start | byte_class::name;
    add('A', 'Z', in_names | byte_class::id);
    add('a', 'z', in_names | byte_class::id);
    add('_', '_', in_names | byte_class::id);
    add(':', ':', in_names);
    add('0', '9', byte_class::name | byte_class::id);
    add('-', '-', byte_class::name | byte_class::id);
    add('.', '.', byte_class::name);
    for (const char c : {'<', '&', '\r', '\n', '\t', '\0'}) {
        add(static_cast<unsigned char>(c), static_cast<unsigned char>(c),
            byte_class::ends_double | byte_class::ends_single);
    }
    add('"', '"', byte_class::ends_double);
    add('\'', '\'', byte_class::ends_single);
    add(0x80, 0xFF, byte_class::beyond_ascii);
    return table;
}

inline constexpr std::array<std::uint8_t, 256> byte_classes = make_byte_classes();

/// How many of the eight bytes in `word`, in the order of memory, stand before the first that may
/// end the quick run through a value: the quote, '<', '&' or what is below a blank. Eight if none
/// does.
inline unsigned bytes_of_value(std::uint64_t word, char quote) {
    constexpr std::uint64_t ones = 0x0101010101010101U;
    constexpr std::uint64_t highs = 0x8080808080808080U;
    // The high bit of each byte that is below the limit; exact up to the first.
    const auto below = [](std::uint64_t bytes, unsigned limit) {
        return (bytes - ones * limit) & ~bytes & highs;
    };
    const auto equal = [&below](std::uint64_t bytes, char c) {
        return below(bytes ^ (ones * static_cast<unsigned char>(c)), 1);
    };
    const std::uint64_t stops =
        below(word, ' ') | equal(word, quote) | equal(word, '<') | equal(word, '&');
    return static_cast<unsigned>(std::countr_zero(stops)) / 8;
}

/// A character and its length in bytes; length 0: no valid UTF-8.
struct Utf8Character {
    char32_t code = 0;
    std::uint32_t length = 0;
};

/// Decodes the character at the head of `text` (not empty); overlong forms, surrogates and
/// numbers above 10FFFF are invalid.
Utf8Character decode_utf8(std::string_view text);

/// Production [2] Char.
bool is_xml_character(char32_t code);

/// Productions [4] NameStartChar and [4a] NameChar.
bool is_name_start(char32_t code);
bool is_name_character(char32_t code);

/// The first byte at or behind `from` that is no valid UTF-8 or starts a character that XML does
/// not allow.
struct BadBytes {
    Span span = {};
    bool encoding = false;  ///< broken UTF-8; else a character that is not allowed
    char32_t code = 0;
};
std::optional<BadBytes> find_bad_bytes(std::string_view text, std::uint32_t from);

}  // namespace loopwright
