#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// What is no XML 1.0 (fifth edition), or XML that a circuit has no use for, as in
// malformed_xml_test.cpp. Here: references, comments and other markup.

namespace loopwright {
namespace {

using testing::told;

// 4.1 [Entity Declared]; 4.6 has the five.
TEST(MalformedText, UnknownEntity) {
    EXPECT_EQ(told(R"(<circuit format="1" title="40&nbsp;bar"/>)"),
              R"(error 1:30-1:36 the entity '&nbsp;' is unknown
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
)");
}

TEST(MalformedText, MisspeltEntity) {
    EXPECT_EQ(told(R"(<circuit format="1" title="A &ampp; B"/>)"),
              R"(error 1:30-1:36 the entity '&ampp;' is unknown
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
  means: &amp;
)");
}

// 4.1 [68].
TEST(MalformedText, BareAmpersand) {
    EXPECT_EQ(told(R"(<circuit format="1" title="A & B"/>)"),
              R"(error 1:30-1:31 '&' begins no reference
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
  means: &amp;
)");
}

TEST(MalformedText, UnclosedReference) {
    EXPECT_EQ(told(R"(<circuit format="1" title="A &amp B"/>)"),
              R"(error 1:30-1:31 '&' begins no reference
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
  means: &amp;
)");
}

// 4.1 [66].
TEST(MalformedText, CharacterReferenceWithoutDigits) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#;"/>)"),
              R"(error 1:28-1:31 '&#;' is no character reference
  expected: decimal digits, or x and hexadecimal digits, as in &#176; or &#xB0;
)");
}

// 4.1 [66]: a small x.
TEST(MalformedText, CharacterReferenceInHexOfCapitalX) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#XB0;"/>)"),
              R"(error 1:28-1:34 '&#XB0;' is no character reference
  expected: decimal digits, or x and hexadecimal digits, as in &#176; or &#xB0;
)");
}

// 4.1 [Legal Character].
TEST(MalformedText, ReferenceToNul) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#0;"/>)"),
              R"(error 1:28-1:32 '&#0;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedText, ReferenceToControl) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#x1B;"/>)"),
              R"(error 1:28-1:34 '&#x1B;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedText, ReferenceToSurrogate) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#xD800;"/>)"),
              R"(error 1:28-1:36 '&#xD800;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedText, ReferenceToNonCharacter) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#xFFFE;"/>)"),
              R"(error 1:28-1:36 '&#xFFFE;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedText, ReferenceBeyondUnicode) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#x110000;"/>)"),
              R"(error 1:28-1:38 '&#x110000;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedText, ReferenceBeyondAnyNumber) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#99999999999999999999999;"/>)"),
              R"(error 1:28-1:54 '&#99999999999999999999999;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

// 2.5 [15].
TEST(MalformedText, DoubleHyphenInComment) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge -- and flushing -->
</circuit>)"),
              R"(error 2:15-2:17 '--' inside a comment
  expected: '-->' at its end only; two hyphens may not follow each other
)");
}

// 2.5 [15].
TEST(MalformedText, CommentEndsInThreeHyphens) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge --->
</circuit>)"),
              R"(error 2:15-2:17 '--' inside a comment
  expected: '-->' at its end only; two hyphens may not follow each other
)");
}

TEST(MalformedText, UnclosedComment) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge
</circuit>)"),
              R"(error 2:3-2:7 the comment is not closed
  expected: '-->'
)");
}

TEST(MalformedText, UnclosedCommentOfOneHyphen) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge -)"),
              R"(error 2:3-2:7 the comment is not closed
  expected: '-->'
)");
}

TEST(MalformedText, MarkupThatIsNoComment) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!ELEMENT pump EMPTY>
</circuit>)"),
              R"(error 2:3-2:5 '<!' begins no comment
  expected: '<!--' and '-->' around a comment
)");
}

// Well-formed, but the way to entities that double.
TEST(MalformedText, Doctype) {
    EXPECT_EQ(told(R"(<?xml version="1.0"?>
<!DOCTYPE circuit [<!ENTITY a "aaaa">]>
<circuit format="1"/>)"),
              R"(error 2:1-2:10 a document type is not taken
  expected: no DOCTYPE; the circuit's schema is known without one
)");
}

TEST(MalformedText, ProcessingInstruction) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <?php echo ?>
</circuit>)"),
              R"(error 2:3-2:8 a processing instruction is not taken
  expected: no '<?' but the XML declaration at the head of the file
)");
}

TEST(MalformedText, StyleSheet) {
    EXPECT_EQ(told(R"(<?xml-stylesheet href="a.css"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:17 a processing instruction is not taken
  expected: no '<?' but the XML declaration at the head of the file
)");
}

}  // namespace
}  // namespace loopwright
