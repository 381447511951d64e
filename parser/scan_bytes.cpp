#include <loopwright/parser/scan_bytes.h>

#include <algorithm>
#include <cstddef>

namespace loopwright {
namespace {

struct CodeRange {
    char32_t first = 0;
    char32_t last = 0;
};

// Production [4], without the ASCII letters, ':' and '_'.
constexpr CodeRange name_starts[] = {
    {0xC0, 0xD6},     {0xD8, 0xF6},     {0xF8, 0x2FF},    {0x370, 0x37D},
    {0x37F, 0x1FFF},  {0x200C, 0x200D}, {0x2070, 0x218F}, {0x2C00, 0x2FEF},
    {0x3001, 0xD7FF}, {0xF900, 0xFDCF}, {0xFDF0, 0xFFFD}, {0x10000, 0xEFFFF},
};
// What production [4a] adds beyond ASCII.
constexpr CodeRange name_additions[] = {{0xB7, 0xB7}, {0x300, 0x36F}, {0x203F, 0x2040}};

template <std::size_t Count>
bool in_ranges(char32_t code, const CodeRange (&ranges)[Count]) {
    return std::any_of(std::begin(ranges), std::end(ranges), [code](const CodeRange& range) {
        return code >= range.first && code <= range.last;
    });
}

std::uint8_t class_of(char32_t code) { return byte_classes[static_cast<std::size_t>(code)]; }

// Whether any of 64 bytes is a control character or beyond ASCII; plain enough to be vectorised.
bool needs_a_look(const char* block) {
    std::uint8_t found = 0;
    for (std::size_t i = 0; i < 64; ++i) {
        // As a signed byte, what is beyond ASCII is below the blank as well.
        const auto c = static_cast<signed char>(block[i]);
        const auto low = static_cast<std::uint8_t>(c < 0x20);
        const auto no_lf = static_cast<std::uint8_t>(c != '\n');
        const auto no_cr = static_cast<std::uint8_t>(c != '\r');
        const auto no_tab = static_cast<std::uint8_t>(c != '\t');
        found |= static_cast<std::uint8_t>(low & no_lf & no_cr & no_tab);
    }
    return found != 0;
}

}  // namespace

Utf8Character decode_utf8(std::string_view text) {
    const auto byte = [&text](std::size_t i) -> unsigned {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const auto follows = [&byte](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned head = byte(0);
    if (head < 0x80) {
        return {static_cast<char32_t>(head), 1};
    }
    if (head >= 0xC2 && head <= 0xDF && follows(1)) {
        return {static_cast<char32_t>(((head & 0x1FU) << 6) | (byte(1) & 0x3FU)), 2};
    }
    if ((head & 0xF0U) == 0xE0U && follows(1) && follows(2)) {
        const unsigned code = ((head & 0x0FU) << 12) | ((byte(1) & 0x3FU) << 6) | (byte(2) & 0x3FU);
        const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
        return {static_cast<char32_t>(code), code < 0x800 || surrogate ? 0U : 3U};
    }
    if ((head & 0xF8U) == 0xF0U && follows(1) && follows(2) && follows(3)) {
        const unsigned code = ((head & 0x07U) << 18) | ((byte(1) & 0x3FU) << 12) |
                              ((byte(2) & 0x3FU) << 6) | (byte(3) & 0x3FU);
        return {static_cast<char32_t>(code), code < 0x10000 || code > 0x10FFFF ? 0U : 4U};
    }
    return {};
}

bool is_xml_character(char32_t code) {
    if (code < 0x20) {
        return code == '\t' || code == '\n' || code == '\r';
    }
    return code <= 0xD7FF || (code >= 0xE000 && code <= 0xFFFD) ||
           (code >= 0x10000 && code <= 0x10FFFF);
}

bool is_name_start(char32_t code) {
    if (code < 0x80) {
        return (class_of(code) & byte_class::name_start) != 0;
    }
    return in_ranges(code, name_starts);
}

bool is_name_character(char32_t code) {
    if (code < 0x80) {
        return (class_of(code) & byte_class::name) != 0;
    }
    return in_ranges(code, name_starts) || in_ranges(code, name_additions);
}

std::optional<BadBytes> find_bad_bytes(std::string_view text, std::uint32_t from) {
    std::size_t i = from;
    while (i < text.size()) {
        if (text.size() - i >= 64 && !needs_a_look(text.data() + i)) {
            i += 64;
            continue;
        }
        const std::size_t stop = std::min(i + 64, text.size());
        while (i < stop) {
            const auto byte = static_cast<unsigned char>(text[i]);
            if (byte >= 0x20 && byte < 0x80) {
                ++i;
                continue;
            }
            const Utf8Character character = decode_utf8(text.substr(i));
            const auto begin = static_cast<std::uint32_t>(i);
            if (character.length == 0) {
                return BadBytes{{begin, begin + 1}, true, 0};
            }
            if (!is_xml_character(character.code)) {
                return BadBytes{{begin, begin + character.length}, false, character.code};
            }
            i += character.length;
        }
    }
    return std::nullopt;
}

}  // namespace loopwright
