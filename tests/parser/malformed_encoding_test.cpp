#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// What is no XML 1.0 (fifth edition), as in malformed_xml_test.cpp. Here: the declaration,
// encodings and characters, and which of several places is told.

namespace loopwright {
namespace {

using testing::told;

// 2.8 [22].
TEST(MalformedEncoding, DeclarationNotAtTheHead) {
    EXPECT_EQ(told(R"(
<?xml version="1.0"?>
<circuit format="1"/>)"),
              R"(error 2:1-2:6 the XML declaration does not stand at the head of the file
  expected: nothing before it, not even white space
)");
}

// 2.8 [23].
TEST(MalformedEncoding, DeclarationWithoutVersion) {
    EXPECT_EQ(told(R"(<?xml encoding="UTF-8"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:24 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedEncoding, DeclarationInWrongOrder) {
    EXPECT_EQ(told(R"(<?xml encoding="UTF-8" version="1.0"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:32 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedEncoding, DeclarationUnclosed) {
    EXPECT_EQ(told(R"(<?xml version="1.0">
<circuit format="1"/>)"),
              R"(error 1:1-1:21 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedEncoding, DeclarationWithoutQuotes) {
    EXPECT_EQ(told(R"(<?xml version=1.0?>
<circuit format="1"/>)"),
              R"(error 1:1-1:16 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedEncoding, DeclarationWithoutBlank) {
    EXPECT_EQ(told(R"(<?xml version="1.0"encoding="UTF-8"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:29 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedEncoding, OtherVersion) {
    EXPECT_EQ(told(R"(<?xml version="1.1"?>
<circuit format="1"/>)"),
              R"(error 1:16-1:19 XML version '1.1'
  expected: version="1.0"
  means: 1.0
)");
}

TEST(MalformedEncoding, StandaloneMaybe) {
    EXPECT_EQ(told(R"(<?xml version="1.0" standalone="maybe"?>
<circuit format="1"/>)"),
              R"(error 1:33-1:38 standalone is 'maybe'
  expected: yes or no
)");
}

TEST(MalformedEncoding, DeclaredLatin1) {
    EXPECT_EQ(told("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>\n<circuit format=\"1\" "
                   "title=\"K\xFChler\"/>"),
              R"(error 1:31-1:41 the file is declared to be in 'ISO-8859-1'
  expected: UTF-8; save the file in that encoding and declare encoding="UTF-8"
  means: UTF-8
)");
}

TEST(MalformedEncoding, Latin1WithoutDeclaration) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"K\xFChler\"/>"),
              R"(error 1:29-1:30 the byte FC is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, Utf16WithMark) {
    EXPECT_EQ(told(std::string_view("\xFF\xFE<\000c\000/\000>\000", 10)),
              R"(error 1:1-1:3 the file is in UTF-16
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, Utf16WithoutMark) {
    EXPECT_EQ(told(std::string_view("\000<\000c\000/\000>", 8)),
              R"(error 1:1-1:3 the file is in UTF-16
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, Utf32) {
    EXPECT_EQ(told(std::string_view("\xFF\xFE\000\000<\000\000\000", 8)),
              R"(error 1:1-1:3 the file is in UTF-32
  expected: UTF-8; save the file in that encoding
)");
}

// RFC 3629, section 3.
TEST(MalformedEncoding, OverlongUtf8) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xC0\xAF\"/>"),
              R"(error 1:28-1:29 the byte C0 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// RFC 3629, section 3.
TEST(MalformedEncoding, SurrogateInUtf8) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xED\xA0\x80\"/>"),
              R"(error 1:28-1:29 the byte ED is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// RFC 3629, section 3.
TEST(MalformedEncoding, Utf8BeyondUnicode) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xF4\x90\x80\x80\"/>"),
              R"(error 1:28-1:29 the byte F4 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, Utf8CutShort) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xE2\x82\"/>"),
              R"(error 1:28-1:29 the byte E2 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, Utf8CutShortByTheEnd) {
    EXPECT_EQ(told("<circuit format=\"1\"/>\xE2\x82"),
              R"(error 1:22-1:23 the byte E2 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, BrokenUtf8InComment) {
    EXPECT_EQ(told("<circuit format=\"1\"><!-- \xFF --></circuit>"),
              R"(error 1:26-1:27 the byte FF is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedEncoding, BrokenUtf8FarInside) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <!-- "
                   "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"
                   "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"
                   "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx \x80 --></circuit>"),
              R"(error 2:209-2:210 the byte 80 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// 2.2 [2].
TEST(MalformedEncoding, Nul) {
    EXPECT_EQ(
        told(std::string_view("<circuit format=\"1\">\n  <load id=\"D\000\"/>\n</circuit>", 49)),
        R"(error 2:14-2:15 the character U+0000 is not allowed in XML
  expected: no control characters but tab and line ends
)");
}

// 2.2 [2].
TEST(MalformedEncoding, ControlCharacter) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\x1B[31mred\"/>"),
              R"(error 1:28-1:29 the character U+001B is not allowed in XML
  expected: no control characters but tab and line ends
)");
}

// 2.2 [2].
TEST(MalformedEncoding, NonCharacter) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xEF\xBF\xBF\"/>"),
              R"(error 1:28-1:29 the character U+FFFF is not allowed in XML
  expected: no control characters but tab and line ends
)");
}

// 2.3 [4]: U+00D7 is no name character.
TEST(MalformedEncoding, MultiplicationSignInName) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <a\xC3\x97"
                   "b/>\n</circuit>"),
              "error 2:5-2:6 '\xC3\x97' cannot stand here\n  expected: white space, '>' or '/>'\n");
}

TEST(MalformedEncoding, ColumnsAreCharacters) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <!-- \xC3\x96l, 40 \xC2\xB0"
                   "C --> <load id=\"\xC3\x98&x;\"/>\n</circuit>"),
              R"(error 2:33-2:36 the entity '&x;' is unknown
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
)");
}

// The broken byte stands first.
TEST(MalformedEncoding, EarlierPlaceWins) {
    EXPECT_EQ(
        told("<circuit format=\"1\" title=\"\xFF\">\n  <pump id=\"P1\" id=\"P2\"/>\n</circuit>"),
        R"(error 1:28-1:29 the byte FF is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// The attribute stands first.
TEST(MalformedEncoding, EarlierPlaceWinsTheOtherWay) {
    EXPECT_EQ(
        told("<circuit format=\"1\">\n  <pump id=\"P1\" id=\"P2\"/>\n<!-- \xFF --></circuit>"),
        R"(error 2:17-2:19 the attribute 'id' is there twice
  expected: each attribute once in an element
)");
}

TEST(MalformedEncoding, OnlyTheFirstPlace) {
    EXPECT_EQ(told(R"(<circuit>
  <pump id="P1" id="P2"/>
  <pump id=P3/>
</circuit>)"),
              R"(error 2:17-2:19 the attribute 'id' is there twice
  expected: each attribute once in an element
)");
}

}  // namespace
}  // namespace loopwright
