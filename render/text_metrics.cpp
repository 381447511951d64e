#include <loopwright/render/text_metrics.h>

#include <algorithm>

#include <loopwright/base/utf8.h>
#include <loopwright/render/font_widths.h>

namespace loopwright {

namespace {

constexpr std::string_view white_square = "\u25A1";

/// What stands for a character that the font lacks; empty: nothing does.
std::string_view spelled_out(char32_t code) {
    switch (code) {
        case U'\u2010':
        case U'\u2011':
        case U'\u2212':
            return "-";
        case U'\u2018':
            return "'";
        case U'\u201C':
        case U'\u201D':
        case U'\u201E':
            return "\"";
        case U'\u2026':
            return "...";
        case U'\u2190':
            return "<-";
        case U'\u2192':
            return "->";
        case U'\u2002':
        case U'\u2003':
        case U'\u2009':
        case U'\u202F':
            return " ";
        default:
            return {};
    }
}

bool is_drawable(const utf8::Character& character) {
    return character.valid && glyph_advance(character.code).has_value();
}

}  // namespace

std::string drawn_text(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const utf8::Character character = utf8::first(text);
        if (is_drawable(character)) {
            out += text.substr(0, character.length);
        } else {
            const std::string_view instead =
                character.valid ? spelled_out(character.code) : std::string_view{};
            out += instead.empty() ? white_square : instead;
        }
        text.remove_prefix(character.length);
    }
    return out;
}

double text_width(std::string_view text, double height) {
    int units = 0;
    const std::string drawn = drawn_text(text);
    for (std::string_view rest = drawn; !rest.empty();) {
        const utf8::Character character = utf8::first(rest);
        units += glyph_advance(character.code).value_or(0);
        rest.remove_prefix(character.length);
    }
    return font_size(height) * units / font_units;
}

std::vector<char32_t> missing_glyphs(std::string_view text) {
    std::vector<char32_t> missing;
    while (!text.empty()) {
        const utf8::Character character = utf8::first(text);
        const char32_t code = character.valid ? character.code : U'\uFFFD';
        if (!is_drawable(character) && (!character.valid || spelled_out(code).empty()) &&
            std::find(missing.begin(), missing.end(), code) == missing.end())
            missing.push_back(code);
        text.remove_prefix(character.length);
    }
    return missing;
}

}  // namespace loopwright
