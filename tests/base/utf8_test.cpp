#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/base/utf8.h>

namespace loopwright {
namespace {

using utf8::Character;

void expect_character(std::string_view text, char32_t code, std::size_t length) {
    const Character one = utf8::first(text);
    EXPECT_TRUE(one.valid) << text;
    EXPECT_EQ(one.code, code) << text;
    EXPECT_EQ(one.length, length) << text;
}

void expect_broken(std::string_view text) {
    const Character one = utf8::first(text);
    EXPECT_FALSE(one.valid);
    EXPECT_EQ(one.length, 1U);  // the next byte gets its own chance
}

TEST(Utf8, ValidCharacters) {
    expect_character("A", 'A', 1);
    expect_character(std::string_view("\0", 1), 0, 1);
    expect_character("\x7F", 0x7F, 1);
    // The examples of RFC 3629, section 7: not identical to, Greek, Han, a character off the BMP.
    expect_character("\xE2\x89\xA2", 0x2262, 3);
    expect_character("\xCE\x91", 0x0391, 2);
    expect_character("\xE6\x97\xA5", 0x65E5, 3);
    expect_character("\xF0\xA3\x8E\xB4", 0x233B4, 4);
    // First and last of each length, and round the surrogates (RFC 3629, section 3).
    expect_character("\xC2\x80", 0x80, 2);
    expect_character("\xDF\xBF", 0x7FF, 2);
    expect_character("\xE0\xA0\x80", 0x800, 3);
    expect_character("\xED\x9F\xBF", 0xD7FF, 3);
    expect_character("\xEE\x80\x80", 0xE000, 3);
    expect_character("\xEF\xBF\xBF", 0xFFFF, 3);
    expect_character("\xF0\x90\x80\x80", 0x10000, 4);
    expect_character("\xF4\x8F\xBF\xBF", 0x10FFFF, 4);
    expect_character("\xC3\xA9more", 0xE9, 2);
}

TEST(Utf8, BrokenSequences) {
    expect_broken("\x80");  // continuation alone
    expect_broken("\xBF");
    expect_broken("\xC0\x80");              // overlong NUL
    expect_broken("\xC1\xBF");              // overlong, two bytes
    expect_broken("\xE0\x9F\xBF");          // overlong, three
    expect_broken("\xF0\x8F\xBF\xBF");      // overlong, four
    expect_broken("\xED\xA0\x80");          // surrogate D800
    expect_broken("\xED\xBF\xBF");          // surrogate DFFF
    expect_broken("\xF4\x90\x80\x80");      // U+110000
    expect_broken("\xF5\x80\x80\x80");      // beyond
    expect_broken("\xF8\x88\x80\x80\x80");  // five bytes of old
    expect_broken("\xFC\x84\x80\x80\x80\x80");
    expect_broken("\xFE");
    expect_broken("\xFF");
    expect_broken("\xC3");  // cut short
    expect_broken("\xE2\x89");
    expect_broken("\xF0\xA3\x8E");
    expect_broken("\xC3(");  // the next is no continuation
    expect_broken("\xE2\x89(");
    expect_broken("\xF0\xA3\x8E(");
    expect_broken("\xE2(\xA2");
    expect_broken("\xC3\xC3\xA9");
}

/// Well-formed by the table of the Unicode standard, section 3.9, "Well-Formed UTF-8 Byte
/// Sequences", written out (the same as the syntax of RFC 3629, section 4).
std::size_t well_formed_length(unsigned a, unsigned b, unsigned c, unsigned d) {
    const auto in = [](unsigned byte, unsigned low, unsigned high) {
        return byte >= low && byte <= high;
    };
    const bool tail_c = in(c, 0x80, 0xBF);
    const bool tail_d = in(d, 0x80, 0xBF);
    if (in(a, 0x00, 0x7F)) return 1;
    if (in(a, 0xC2, 0xDF) && in(b, 0x80, 0xBF)) return 2;
    if (a == 0xE0 && in(b, 0xA0, 0xBF) && tail_c) return 3;
    if (in(a, 0xE1, 0xEC) && in(b, 0x80, 0xBF) && tail_c) return 3;
    if (a == 0xED && in(b, 0x80, 0x9F) && tail_c) return 3;
    if (in(a, 0xEE, 0xEF) && in(b, 0x80, 0xBF) && tail_c) return 3;
    if (a == 0xF0 && in(b, 0x90, 0xBF) && tail_c && tail_d) return 4;
    if (in(a, 0xF1, 0xF3) && in(b, 0x80, 0xBF) && tail_c && tail_d) return 4;
    if (a == 0xF4 && in(b, 0x80, 0x8F) && tail_c && tail_d) return 4;
    return 0;
}

TEST(ProofUtf8, EverySequenceIsJudgedAsTheStandardsTableDoes) {
    std::size_t wrong = 0;
    std::size_t valid = 0;
    std::string text(4, '\0');
    for (unsigned a = 0; a < 256; ++a) {
        for (unsigned b = 0; b < 256; ++b) {
            for (unsigned c = 0; c < 256; ++c) {
                for (const unsigned d : {0x7FU, 0x80U, 0xBFU, 0xC0U}) {
                    text = {static_cast<char>(a), static_cast<char>(b), static_cast<char>(c),
                            static_cast<char>(d)};
                    const std::size_t length = well_formed_length(a, b, c, d);
                    const Character one = utf8::first(text);
                    const bool right = length == 0 ? !one.valid && one.length == 1
                                                   : one.valid && one.length == length;
                    wrong += right ? 0 : 1;
                    valid += length == 0 ? 0 : 1;
                }
            }
        }
    }
    EXPECT_EQ(wrong, 0U);
    EXPECT_GT(valid, 1000U);
}

// Written and read back: every scalar value, encoded here by the table of RFC 3629, section 3.
TEST(ProofUtf8, EveryCharacterIsReadAsItsCode) {
    std::size_t wrong = 0;
    for (char32_t code = 0; code <= 0x10FFFF; ++code) {
        if (code >= 0xD800 && code <= 0xDFFF) continue;
        const auto tail = [code](unsigned shift) {
            return static_cast<char>(0x80U | ((code >> shift) & 0x3FU));
        };
        std::string text;
        if (code < 0x80) {
            text = {static_cast<char>(code)};
        } else if (code < 0x800) {
            text = {static_cast<char>(0xC0U | (code >> 6)), tail(0)};
        } else if (code < 0x10000) {
            text = {static_cast<char>(0xE0U | (code >> 12)), tail(6), tail(0)};
        } else {
            text = {static_cast<char>(0xF0U | (code >> 18)), tail(12), tail(6), tail(0)};
        }
        const Character one = utf8::first(text);
        wrong += one.valid && one.code == code && one.length == text.size() ? 0 : 1;
    }
    EXPECT_EQ(wrong, 0U);
}

TEST(Utf8, ByteOrderMark) {
    expect_character(utf8::byte_order_mark, 0xFEFF, utf8::byte_order_mark.size());
}

// Bidirectional formatting characters: Unicode Standard Annex 9, table 1 and section 2.6.
TEST(Utf8, WhatCouldSteerATerminalOrTurnTheText) {
    for (const char32_t code :
         {0x00U,   0x07U,   0x08U,   0x1BU,   0x1FU,   0x7FU,   0x80U,   0x85U,   0x9BU,
          0x9FU,   0x061CU, 0x200EU, 0x200FU, 0x202AU, 0x202BU, 0x202CU, 0x202DU, 0x202EU,
          0x2066U, 0x2067U, 0x2068U, 0x2069U, 0x2028U, 0x2029U, 0xFEFFU}) {
        EXPECT_TRUE(utf8::is_control(code)) << std::hex << static_cast<unsigned>(code);
    }
    for (const char32_t code : {0x20U, 0x41U, 0x7EU, 0xA0U, 0xB0U, 0xE9U, 0x0391U, 0x05D0U, 0x200DU,
                                0x2010U, 0x2027U, 0x202FU, 0x2065U, 0x206AU, 0x65E5U, 0x1F600U}) {
        EXPECT_FALSE(utf8::is_control(code)) << std::hex << static_cast<unsigned>(code);
    }
}

}  // namespace
}  // namespace loopwright
