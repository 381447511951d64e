#pragma once

#include <string>
#include <string_view>
#include <vector>

/// How much room text takes. All lettering is set in one free font with the letter shapes of
/// ISO 3098; its advance widths are a table here, so that a layout is the same whether the font is
/// installed or not. Writers hand over only what `drawn_text` returns.
namespace loopwright {

inline constexpr std::string_view font_family = "osifont";
inline constexpr std::string_view font_package = "fonts-osifont";

/// Height of the capitals as a share of the em (1510 of 2048 units).
inline constexpr double capital_height = 1510.0 / 2048.0;

/// Size of the em for capitals of that height, same unit.
constexpr double font_size(double capitals) { return capitals / capital_height; }

/// Advance of the text as it is drawn (`drawn_text`), in the unit of `height`, the height of its
/// capitals. UTF-8. The font draws some pairs of letters closer, which is not counted: a text is
/// never wider than this.
double text_width(std::string_view text, double height);

/// The text with only such characters as the font has: a few are spelled out (an arrow as "->", a
/// minus sign as "-"), any other that the font lacks, a control character or a broken byte becomes
/// a white square (U+25A1), so that it is seen that something stood there.
std::string drawn_text(std::string_view text);

/// What `drawn_text` would put a white square for, in order, each once.
std::vector<char32_t> missing_glyphs(std::string_view text);

}  // namespace loopwright
