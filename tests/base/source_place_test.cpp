#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/base/source.h>

// Lines and columns: lines from 1, ended by LF, CR LF or CR alone (XML 1.0, section 2.11), columns
// from 1 in characters, the end behind the last one.

namespace loopwright {
namespace {

/// "line:column-line:column" of the bytes from `begin` to `end`.
std::string place(const std::string& text, std::size_t begin, std::size_t end) {
    const Place found =
        SourceFile("a.xml", text)
            .place({static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)});
    EXPECT_EQ(found.file, "a.xml");
    EXPECT_TRUE(found.within.empty());
    return fmt::format("{}:{}-{}:{}", found.line, found.column, found.end_line, found.end_column);
}

/// The place of the only `piece` in the text.
std::string place(const std::string& text, std::string_view piece) {
    const std::size_t at = text.find(piece);
    EXPECT_NE(at, std::string::npos);
    EXPECT_EQ(text.find(piece, at + 1), std::string::npos);
    return place(text, at, at + piece.size());
}

std::string line_at(const std::string& text, std::size_t offset) {
    return std::string(SourceFile("a", text).line_at(static_cast<std::uint32_t>(offset)));
}

TEST(SourcePlace, FirstAndLaterLines) {
    EXPECT_EQ(place("ab cd\nef gh\n", "ab"), "1:1-1:3");
    EXPECT_EQ(place("ab cd\nef gh\n", "cd"), "1:4-1:6");
    EXPECT_EQ(place("ab cd\nef gh\n", "ef"), "2:1-2:3");
    EXPECT_EQ(place("ab cd\nef gh\n", "gh"), "2:4-2:6");
    EXPECT_EQ(place("ab cd\nef gh\n", "cd\nef"), "1:4-2:3");
    EXPECT_EQ(place("\n\n\nx", "x"), "4:1-4:2");
}

TEST(SourcePlace, LineEnds) {
    EXPECT_EQ(place("ab\r\ncd\r\nef", "cd"), "2:1-2:3");
    EXPECT_EQ(place("ab\r\ncd\r\nef", "ef"), "3:1-3:3");
    EXPECT_EQ(place("ab\rcd\ref", "ef"), "3:1-3:3");
    EXPECT_EQ(place("ab\n\rcd", "cd"), "3:1-3:3");    // LF, then CR alone
    EXPECT_EQ(place("ab\r\r\ncd", "cd"), "3:1-3:3");  // CR alone, then CR LF
    EXPECT_EQ(place("a\r\nb\rc\nd\r\ne", "e"), "5:1-5:2");
    EXPECT_EQ(place("a\r\nb", 1, 3), "1:2-2:1");  // the line end itself
    EXPECT_EQ(place("a\r\nb", 2, 3), "1:3-2:1");  // its LF stands in the first line
}

TEST(SourcePlace, EndOfFile) {
    EXPECT_EQ(place("ab\n", 3, 3), "2:1-2:1");
    EXPECT_EQ(place("ab", 2, 2), "1:3-1:3");
    EXPECT_EQ(place("ab\r", 3, 3), "2:1-2:1");
    EXPECT_EQ(place("ab\r\n", 4, 4), "2:1-2:1");
    EXPECT_EQ(place("", 0, 0), "1:1-1:1");
    EXPECT_EQ(place("ab\ncd", 100, 200), "2:3-2:3");  // behind the end: the end
    EXPECT_EQ(place("ab\ncd", 4, 200), "2:2-2:3");
    EXPECT_EQ(place("ab\ncd", 4, 1), "2:2-2:2");  // an end before the beginning is taken for it
}

TEST(SourcePlace, ATabIsOneColumn) { EXPECT_EQ(place("\t\tab\tcd", "cd"), "1:6-1:8"); }

TEST(SourcePlace, ColumnsAreCharacters) {
    EXPECT_EQ(place("\u00B5m x", "x"), "1:4-1:5");       // two bytes
    EXPECT_EQ(place("\u65E5\u672C x", "x"), "1:4-1:5");  // three bytes each
    EXPECT_EQ(place("\U00020000 x", "x"), "1:3-1:4");    // four bytes
    EXPECT_EQ(place("e\u0301 x", "x"), "1:4-1:5");       // a combining accent is a character
    EXPECT_EQ(place("a\nb\n\u00B0C <x>\n", "<x>"), "3:4-3:7");
    EXPECT_EQ(place("a \u00B5\u00B5 b", "\u00B5\u00B5"), "1:3-1:5");
}

TEST(SourcePlace, ABrokenByteIsAColumn) {
    EXPECT_EQ(place("\xFF\xFE x", "x"), "1:4-1:5");
    EXPECT_EQ(place("\xC3 x", "x"), "1:3-1:4");
    EXPECT_EQ(place("\xE2\x89 x", "x"), "1:4-1:5");
}

TEST(SourcePlace, AnOffsetInsideACharacterIsItsColumn) {
    const std::string text = "a\u65E5b";
    EXPECT_EQ(place(text, 1, 1), "1:2-1:2");
    EXPECT_EQ(place(text, 2, 2), "1:2-1:2");
    EXPECT_EQ(place(text, 3, 3), "1:2-1:2");
    EXPECT_EQ(place(text, 4, 4), "1:3-1:3");
}

TEST(SourcePlace, AByteOrderMarkTakesNoColumn) {
    const std::string text = "\xEF\xBB\xBF<a>\n<b>";
    EXPECT_EQ(place(text, "<a>"), "1:1-1:4");
    EXPECT_EQ(place(text, "<b>"), "2:1-2:4");
    EXPECT_EQ(place(text, 0, 3), "1:1-1:1");
    // Elsewhere it is a character like others.
    EXPECT_EQ(place("a\xEF\xBB\xBF"
                    "b",
                    "b"),
              "1:3-1:4");
}

TEST(SourcePlace, LinesAreGivenWithoutTheirEnd) {
    const std::string text = "ab\r\n\rcd\nef";
    EXPECT_EQ(line_at(text, 0), "ab");
    EXPECT_EQ(line_at(text, 3), "ab");  // the LF of its end
    EXPECT_EQ(line_at(text, 4), "");
    EXPECT_EQ(line_at(text, 5), "cd");
    EXPECT_EQ(line_at(text, 9), "ef");
    EXPECT_EQ(line_at(text, 10), "ef");
    EXPECT_EQ(line_at(text, 1000), "ef");
    EXPECT_EQ(line_at("ab\n", 3), "");
    EXPECT_EQ(line_at("", 0), "");
}

/// Line and column by walking over the text character by character, as the definition has it.
std::string walked(const std::u32string& text, std::size_t target) {
    std::size_t line = 1;
    std::size_t column = 1;
    for (std::size_t i = 0; i < target; ++i) {
        const bool ends = text[i] == U'\n' ||
                          (text[i] == U'\r' && (i + 1 == text.size() || text[i + 1] != U'\n'));
        line += ends ? 1 : 0;
        column = ends ? 1 : column + 1;
    }
    return fmt::format("{}:{}", line, column);
}

// Long texts, since the counting rests on marks every kilobyte.
TEST(SourcePlace, LongTextsAgreeWithAWalk) {
    constexpr std::pair<char32_t, const char*> letters[] = {
        {U'a', "a"},
        {U'\t', "\t"},
        {U'\u00B5', "\u00B5"},
        {U'\u65E5', "\u65E5"},
        {U'\U00020000', "\U00020000"},
        {U' ', " "},
        {U'\r', "\r"},
        {U'\n', "\n"},
    };
    std::mt19937 random(11);
    for (const unsigned ends : {2U, 0U}) {  // with line ends, and all in one line
        std::u32string characters;
        std::string bytes;
        std::vector<std::uint32_t> offsets;
        for (int i = 0; i < 6000; ++i) {
            const auto& [code, text] = letters[random() % (6 + ends)];
            offsets.push_back(static_cast<std::uint32_t>(bytes.size()));
            characters += code;
            bytes += text;
        }
        const SourceFile file("a", bytes);
        for (std::size_t i = 0; i < offsets.size(); i += 37) {
            const Place found = file.place({offsets[i], offsets[i]});
            EXPECT_EQ(fmt::format("{}:{}", found.line, found.column), walked(characters, i)) << i;
        }
    }
}

TEST(SourcePlace, ThroughUses) {
    SourceSet sources;
    const std::uint32_t main = sources.add_file("main.xml", "<a>\n  <use/>\n</a>");
    const std::uint32_t block = sources.add_file("block.xml", "<b>\n<use/></b>");
    const std::uint32_t inner = sources.add_file("inner.xml", "<c/>");
    const std::uint32_t top = sources.add_inclusion(main);
    const std::uint32_t once = sources.add_inclusion(block, {top, {6, 12}});
    const std::uint32_t twice = sources.add_inclusion(inner, {once, {4, 10}});
    EXPECT_EQ(top, 0U);
    EXPECT_EQ(sources.file_count(), 3U);
    const Place place = sources.place({twice, {0, 4}});
    EXPECT_EQ(place.file, "inner.xml");
    EXPECT_EQ(place.line, 1U);
    EXPECT_EQ(place.end_column, 5U);
    ASSERT_EQ(place.within.size(), 2U);  // innermost first
    EXPECT_EQ(place.within[0].file, "block.xml");
    EXPECT_EQ(place.within[0].line, 2U);
    EXPECT_EQ(place.within[0].column, 1U);
    EXPECT_EQ(place.within[1].file, "main.xml");
    EXPECT_EQ(place.within[1].line, 2U);
    EXPECT_EQ(place.within[1].column, 3U);
    EXPECT_TRUE(sources.place({top, {0, 3}}).within.empty());
    EXPECT_EQ(&sources.file_of({twice, {}}), &sources.file(inner));
}

}  // namespace
}  // namespace loopwright
