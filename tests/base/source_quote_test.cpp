#include <ctime>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/base/source.h>
#include <loopwright/base/utf8.h>

// The quoted line and the underline beneath it.

namespace loopwright {
namespace {

std::string quote(const std::string& text, std::size_t begin, std::size_t end) {
    SourceSet sources;
    sources.add_inclusion(sources.add_file("a.xml", text));
    return sources.quote({0, {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)}});
}

/// Quotes the only `piece` of the text.
std::string quote(const std::string& text, std::string_view piece) {
    const std::size_t at = text.find(piece);
    EXPECT_NE(at, std::string::npos);
    EXPECT_EQ(text.find(piece, at + 1), std::string::npos);
    return quote(text, at, at + piece.size());
}

TEST(SourceQuote, ThePieceIsUnderlined) {
    EXPECT_EQ(quote("<a>\n  <b id=\"C1\"/>\n</a>\n", "id"),
              "     2 |   <b id=\"C1\"/>\n"
              "       |      ^~");
    EXPECT_EQ(quote("<a/>", "<a/>"),
              "     1 | <a/>\n"
              "       | ^~~~");
    EXPECT_EQ(quote("<a/>", "/"),
              "     1 | <a/>\n"
              "       |   ^");
}

TEST(SourceQuote, TheExampleOfTheHeader) {
    const std::string text = std::string(11, '\n') + R"(  <check-valve id="C1" opening="x"/>)";
    EXPECT_EQ(quote(text, "opening"),
              "    12 |   <check-valve id=\"C1\" opening=\"x\"/>\n"
              "       |                        ^~~~~~~");
}

TEST(SourceQuote, NothingIsPointedAt) {
    EXPECT_EQ(quote("ab", 1, 1), "     1 | ab\n       |  ^");
    EXPECT_EQ(quote("ab", 2, 2), "     1 | ab\n       |   ^");
    EXPECT_EQ(quote("ab\n", 3, 3), "     2 | \n       | ^");
    EXPECT_EQ(quote("", 0, 0), "     1 | \n       | ^");
    EXPECT_EQ(quote("ab", 100, 200), "     1 | ab\n       |   ^");
}

TEST(SourceQuote, APieceOfSeveralLinesToTheEndOfItsFirst) {
    EXPECT_EQ(quote("ab <c\n d> e\n", "<c\n d>"),
              "     1 | ab <c\n"
              "       |    ^~");
    EXPECT_EQ(quote("ab <c\r\n d> e\r\n", "<c\r\n d>"),
              "     1 | ab <c\n"
              "       |    ^~");
}

TEST(SourceQuote, LineNumbersAreRightAligned) {
    EXPECT_EQ(quote(std::string(99, '\n') + "x", "x"), "   100 | x\n       | ^");
    EXPECT_EQ(quote(std::string(1234566, '\n') + "x", "x"), "1234567 | x\n        | ^");
}

TEST(SourceQuote, TabsAreBlanks) {
    EXPECT_EQ(quote("\t<b\tc>", "c"),
              "     1 |  <b c>\n"
              "       |     ^");
}

TEST(SourceQuote, CharactersOfSeveralBytes) {
    EXPECT_EQ(quote("<a t=\"\u00B5m\" b/>", "b"),
              "     1 | <a t=\"\u00B5m\" b/>\n"
              "       |           ^");
    EXPECT_EQ(quote("x \u00B0\u00B0\u00B0 y", "\u00B0\u00B0\u00B0"),
              "     1 | x \u00B0\u00B0\u00B0 y\n"
              "       |   ^~~");
}

TEST(SourceQuote, AByteOrderMarkIsNotShown) {
    EXPECT_EQ(quote("\xEF\xBB\xBF<a b/>", "b"),
              "     1 | <a b/>\n"
              "       |    ^");
}

// Nothing out of a file may steer the terminal or turn the text round; each stands for one.
TEST(SourceQuote, WhatCouldSteerATerminalIsReplaced) {
    EXPECT_EQ(quote("a\x1B[31mb c", "c"),
              "     1 | a\uFFFD[31mb c\n"
              "       |         ^");
    EXPECT_EQ(quote("a\u202Eb c", "c"),
              "     1 | a\uFFFDb c\n"
              "       |     ^");
    EXPECT_EQ(quote("a\u0085\u2028\x7F"
                    "b c",
                    "c"),
              "     1 | a\uFFFD\uFFFD\uFFFDb c\n"
              "       |       ^");
    EXPECT_EQ(quote(std::string("a\0b c", 5), "c"),
              "     1 | a\uFFFDb c\n"
              "       |     ^");
    EXPECT_EQ(quote("a\xFF\xC3 c", "c"),
              "     1 | a\uFFFD\uFFFD c\n"
              "       |     ^");
}

struct Quoted {
    std::string line = {};
    std::string underlined = {};  ///< what stands over the underline
};

std::vector<std::string> characters_of(std::string_view text) {
    std::vector<std::string> all;
    while (!text.empty()) {
        const std::size_t length = utf8::first(text).length;
        all.emplace_back(text.substr(0, length));
        text.remove_prefix(length);
    }
    return all;
}

/// Takes a quote apart; fails where the gutter or the underline is not as it should be.
Quoted apart(const std::string& text) {
    const std::size_t end = text.find('\n');
    EXPECT_EQ(text.substr(0, 9), "     1 | ");
    EXPECT_EQ(text.substr(end + 1, 9), "       | ");
    Quoted quoted{text.substr(9, end - 9), {}};
    const std::string under = text.substr(end + 10);
    const std::size_t begin = under.find('^');
    EXPECT_EQ(under.find_first_not_of(' '), begin);
    EXPECT_EQ(under.find_first_not_of('~', begin + 1), std::string::npos);
    const std::vector<std::string> line = characters_of(quoted.line);
    for (std::size_t i = begin; i < under.size() && i < line.size(); ++i)
        quoted.underlined += line[i];
    return quoted;
}

TEST(SourceQuote, OfALongLineAPartRoundThePieceIsShown) {
    for (const std::string filler : {"a", "\u00B5"}) {
        for (const std::size_t before : {0U, 1U, 39U, 40U, 41U, 60U, 99U, 100U, 101U, 5000U}) {
            for (const std::size_t after : {0U, 1U, 59U, 60U, 61U, 5000U}) {
                std::string text;
                for (std::size_t i = 0; i < before; ++i) text += filler;
                const std::size_t begin = text.size();
                text += "<piece>";
                for (std::size_t i = 0; i < after; ++i) text += filler;
                const Quoted quoted = apart(quote(text, begin, begin + 7));
                EXPECT_EQ(quoted.underlined, "<piece>") << before << " " << after;
                const std::size_t shown = characters_of(quoted.line).size();
                const std::size_t whole = before + 7 + after;
                EXPECT_LE(shown, 106U);
                if (whole <= 100) {
                    EXPECT_EQ(quoted.line, text);
                } else {
                    EXPECT_TRUE(quoted.line.starts_with("...") || quoted.line.ends_with("..."))
                        << quoted.line;
                }
            }
        }
    }
}

TEST(SourceQuote, APieceLongerThanWhatIsShownIsUnderlinedAsFarAsItIs) {
    const std::string text = std::string(50, 'a') + std::string(500, 'x') + std::string(50, 'a');
    const Quoted quoted = apart(quote(text, 50, 550));
    EXPECT_EQ(quoted.line, "..." + std::string(40, 'a') + std::string(60, 'x') + "...");
    EXPECT_EQ(quoted.underlined, std::string(60, 'x'));
}

TEST(SourceQuote, TheEndOfALongLine) {
    const std::string text(300, 'a');
    EXPECT_EQ(quote(text, 300, 300),
              "     1 | ..." + std::string(40, 'a') + "\n       | " + std::string(43, ' ') + "^");
}

// A file may be one line and have as many mistakes as are told of a file.
TEST(SourceQuote, ALineAsLongAsAFileTakesNoLonger) {
    for (const std::string_view filler : {"aaaa", "a\xC2\xB5\xFF"}) {
        std::string text;
        while (text.size() < 16U << 20U) text += filler;
        SourceSet sources;
        sources.add_inclusion(sources.add_file("a.xml", text));
        const std::clock_t before = std::clock();
        for (std::uint32_t i = 0; i < 200; ++i) {
            const std::uint32_t at = i * 80'000;
            EXPECT_LT(sources.quote({0, {at, at + 4}}).size(), 1000U);
        }
        // Characters of the whole line took a second for each ten of them.
        EXPECT_LT(std::clock() - before, CLOCKS_PER_SEC);
    }
}

TEST(SourceQuote, AnyBytesAndAnyPlace) {
    std::string text;
    for (int i = 0; i < 256; ++i) text += static_cast<char>(i);
    for (std::size_t begin = 0; begin <= text.size(); begin += 5) {
        for (std::size_t end = begin; end <= text.size() + 3; end += 7) {
            const std::string quoted = quote(text, begin, end);
            EXPECT_EQ(quoted.find('\n'), quoted.rfind('\n'));
            for (const std::string& one : characters_of(quoted)) {
                const utf8::Character character = utf8::first(one);
                EXPECT_TRUE(character.valid);
                EXPECT_TRUE(one == "\n" || !utf8::is_control(character.code));
            }
        }
    }
}

}  // namespace
}  // namespace loopwright
