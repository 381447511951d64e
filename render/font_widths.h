#pragma once

#include <optional>
#include <vector>

/// The advance widths of the sheet's font as a table.
namespace loopwright {

inline constexpr int font_units = 2048;  ///< in an em

/// Advance of a character's glyph in font units; nothing where the table has none.
std::optional<int> glyph_advance(char32_t code);

/// All characters of the table, ascending.
std::vector<char32_t> glyphs();

}  // namespace loopwright
