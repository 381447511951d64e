#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// What is no XML 1.0 (fifth edition), or XML that a circuit has no use for: the first place is
// told, and nothing behind it. Each text is refused for one reason; the section of the
// recommendation is named beside it. The XML library itself takes most of them. Here: elements and
// attributes.

namespace loopwright {
namespace {

using testing::told;

// 2.1: a document has a root element.
TEST(MalformedXml, EmptyFile) {
    EXPECT_EQ(told(""),
              R"(error 1:1-1:1 the file is empty
  expected: an XML file with one root element
)");
}

TEST(MalformedXml, NoElement) {
    EXPECT_EQ(told(R"(  <!-- nothing -->
)"),
              R"(error 1:1-1:1 there is no element
  expected: an XML file with one root element
)");
}

TEST(MalformedXml, TextAlone) {
    EXPECT_EQ(told("circuit"),
              R"(error 1:1-1:8 text before the root element
  expected: elements and comments only; what a circuit says stands in attributes
)");
}

// 2.1 [39].
TEST(MalformedXml, UnclosedRoot) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1"/>
)"),
              R"(error 1:2-1:9 '<circuit>' is not closed
  expected: '</circuit>' before the end of the file
)");
}

TEST(MalformedXml, UnclosedElement) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1">
</circuit>
)"),
              R"(error 3:3-3:10 '</circuit>' does not close '<pump>', opened in line 2
  expected: '</pump>' first
)");
}

// 3 [GIMatch].
TEST(MalformedXml, MismatchedEndTag) {
    EXPECT_EQ(told(R"(<circuit format="1">
</Circuit>)"),
              R"(error 2:3-2:10 '</Circuit>' does not close '<circuit>', opened in line 1
  expected: '</circuit>' first
)");
}

TEST(MalformedXml, EndTagWithoutStart) {
    EXPECT_EQ(told(R"(<circuit format="1"/>
</circuit>)"),
              R"(error 2:3-2:10 '</circuit>' closes nothing
  expected: a start tag before it
)");
}

TEST(MalformedXml, EndTagWithoutName) {
    EXPECT_EQ(told(R"(<circuit format="1">
</ circuit>)"),
              R"(error 2:1-2:3 '</' without the name of an element
  expected: '</circuit>'
)");
}

// 3.1 [42].
TEST(MalformedXml, EndTagWithAttribute) {
    EXPECT_EQ(told(R"(<circuit format="1">
</circuit format="1">)"),
              R"(error 2:3-2:10 the end tag '</circuit' is not closed
  expected: '>' behind the name
)");
}

TEST(MalformedXml, UnclosedTag) {
    EXPECT_EQ(told(R"(<circuit format="1"
  <pump id="P1"/>
</circuit>)"),
              R"(error 1:2-1:9 the tag '<circuit' is not closed
  expected: '>' or '/>' behind the attributes
)");
}

TEST(MalformedXml, TagUnclosedAtTheEnd) {
    EXPECT_EQ(told(R"(<circuit format="1" )"),
              R"(error 1:2-1:9 the tag '<circuit' is not closed
  expected: '>' or '/>' behind the attributes
)");
}

// 3.1 [40].
TEST(MalformedXml, LessThanWithoutName) {
    EXPECT_EQ(told(R"(<circuit format="1">
  < pump id="P1"/>
</circuit>)"),
              R"(error 2:3-2:4 '<' begins no element
  expected: an element's name behind '<'; the character itself is written '&lt;'
)");
}

// 2.3 [5].
TEST(MalformedXml, NameBeginsWithDigit) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <2pump id="P1"/>
</circuit>)"),
              R"(error 2:3-2:4 '<' begins no element
  expected: an element's name behind '<'; the character itself is written '&lt;'
)");
}

// 2.1 [1].
TEST(MalformedXml, SecondRoot) {
    EXPECT_EQ(told(R"(<circuit format="1"/>
<circuit format="1"/>
)"),
              R"(error 2:2-2:9 a second root element
  expected: one root element; 'circuit' is closed already
)");
}

TEST(MalformedXml, TextBehindTheRoot) {
    EXPECT_EQ(told(R"(<circuit format="1"/>
  and so on  
)"),
              R"(error 2:3-2:12 text after the root element
  expected: elements and comments only; what a circuit says stands in attributes
)");
}

TEST(MalformedXml, TextBeforeTheRoot) {
    EXPECT_EQ(told(R"(; a circuit
<circuit format="1"/>)"),
              R"(error 1:1-1:12 text before the root element
  expected: elements and comments only; what a circuit says stands in attributes
)");
}

// Well-formed, but a circuit says nothing in text.
TEST(MalformedXml, TextBetweenElements) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <load id="D1"/> drum 
</circuit>)"),
              R"(error 2:19-2:23 text between elements
  expected: elements and comments only; what a circuit says stands in attributes
)");
}

TEST(MalformedXml, ReferenceBetweenElements) {
    EXPECT_EQ(told(R"(<circuit format="1">&#32;</circuit>)"),
              R"(error 1:21-1:26 text between elements
  expected: elements and comments only; what a circuit says stands in attributes
)");
}

TEST(MalformedXml, Cdata) {
    EXPECT_EQ(told(R"(<circuit format="1">
<![CDATA[ ]]></circuit>)"),
              R"(error 2:1-2:10 a CDATA section is not taken
  expected: elements and comments only; what a circuit says stands in attributes
)");
}

// 3.1 [Unique Att Spec].
TEST(MalformedXml, DuplicateAttribute) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="71 cm3/rev" id="P2"/>
</circuit>)"),
              R"(error 2:43-2:45 the attribute 'id' is there twice
  expected: each attribute once in an element
)");
}

// 3.1 [41].
TEST(MalformedXml, AttributeWithoutValue) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" variable/>
</circuit>)"),
              R"(error 2:17-2:25 the attribute 'variable' has no value
  expected: '=' and a value in quotes behind the name
)");
}

// 3.1 [10].
TEST(MalformedXml, AttributeWithoutQuotes) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id=P1/>
</circuit>)"),
              R"(error 2:9-2:11 the value of 'id' is not in quotes
  expected: a value in double or single quotes behind '='
)");
}

// 3.1 [40]: white space before each attribute.
TEST(MalformedXml, NoBlankBetweenAttributes) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1"variable="yes"/>
</circuit>)"),
              R"(error 2:16-2:17 no white space before an attribute
  expected: white space, '>' or '/>'
)");
}

TEST(MalformedXml, AttributeBeginsWithDigit) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump 1d="P1"/>
</circuit>)"),
              R"(error 2:9-2:10 '1' begins no attribute
  expected: an attribute's name, '>' or '/>'
)");
}

TEST(MalformedXml, StrayCharacterInTag) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" ,/>
</circuit>)"),
              R"(error 2:17-2:18 ',' begins no attribute
  expected: an attribute's name, '>' or '/>'
)");
}

TEST(MalformedXml, SlashInsideTag) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump / id="P1">
</circuit>)"),
              R"(error 2:9-2:10 '/' begins no attribute
  expected: an attribute's name, '>' or '/>'
)");
}

// 3.1 [No < in Attribute Values]. A forgotten quote ends here as well.
TEST(MalformedXml, LessThanInValue) {
    EXPECT_EQ(told(R"(<circuit format="1" title="a<b"/>)"),
              R"(error 1:29-1:30 '<' in the value of 'title'
  expected: '&lt;', or the closing " before it
)");
}

TEST(MalformedXml, ForgottenQuote) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1/>
  <motor id="M1"/>
</circuit>)"),
              R"(error 3:3-3:4 '<' in the value of 'id'
  expected: the closing " of the value that begins in line 2
)");
}

TEST(MalformedXml, ValueUnclosedAtTheEnd) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id='P1/>)"),
              R"(error 2:12-2:13 the value of 'id' is not closed
  expected: a closing '
)");
}

}  // namespace
}  // namespace loopwright
