#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// What is no XML 1.0 (fifth edition), or XML that a circuit has no use for: the first place is
// told, and nothing behind it. Each text is refused for one reason; the section of the
// recommendation is named beside it. The XML library itself takes most of them.

namespace loopwright {
namespace {

std::string told(std::string_view text) {
    return testing::described(read_circuit_text(std::string(text), "test.xml"));
}

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

// 4.1 [Entity Declared]; 4.6 has the five.
TEST(MalformedXml, UnknownEntity) {
    EXPECT_EQ(told(R"(<circuit format="1" title="40&nbsp;bar"/>)"),
              R"(error 1:30-1:36 the entity '&nbsp;' is unknown
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
)");
}

TEST(MalformedXml, MisspeltEntity) {
    EXPECT_EQ(told(R"(<circuit format="1" title="A &ampp; B"/>)"),
              R"(error 1:30-1:36 the entity '&ampp;' is unknown
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
  means: &amp;
)");
}

// 4.1 [68].
TEST(MalformedXml, BareAmpersand) {
    EXPECT_EQ(told(R"(<circuit format="1" title="A & B"/>)"),
              R"(error 1:30-1:31 '&' begins no reference
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
  means: &amp;
)");
}

TEST(MalformedXml, UnclosedReference) {
    EXPECT_EQ(told(R"(<circuit format="1" title="A &amp B"/>)"),
              R"(error 1:30-1:31 '&' begins no reference
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
  means: &amp;
)");
}

// 4.1 [66].
TEST(MalformedXml, CharacterReferenceWithoutDigits) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#;"/>)"),
              R"(error 1:28-1:31 '&#;' is no character reference
  expected: decimal digits, or x and hexadecimal digits, as in &#176; or &#xB0;
)");
}

// 4.1 [66]: a small x.
TEST(MalformedXml, CharacterReferenceInHexOfCapitalX) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#XB0;"/>)"),
              R"(error 1:28-1:34 '&#XB0;' is no character reference
  expected: decimal digits, or x and hexadecimal digits, as in &#176; or &#xB0;
)");
}

// 4.1 [Legal Character].
TEST(MalformedXml, ReferenceToNul) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#0;"/>)"),
              R"(error 1:28-1:32 '&#0;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedXml, ReferenceToControl) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#x1B;"/>)"),
              R"(error 1:28-1:34 '&#x1B;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedXml, ReferenceToSurrogate) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#xD800;"/>)"),
              R"(error 1:28-1:36 '&#xD800;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedXml, ReferenceToNonCharacter) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#xFFFE;"/>)"),
              R"(error 1:28-1:36 '&#xFFFE;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedXml, ReferenceBeyondUnicode) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#x110000;"/>)"),
              R"(error 1:28-1:38 '&#x110000;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

TEST(MalformedXml, ReferenceBeyondAnyNumber) {
    EXPECT_EQ(told(R"(<circuit format="1" title="&#99999999999999999999999;"/>)"),
              R"(error 1:28-1:54 '&#99999999999999999999999;' is no character that XML allows
  expected: the number of a character that can be printed, tab or line feed
)");
}

// 2.5 [15].
TEST(MalformedXml, DoubleHyphenInComment) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge -- and flushing -->
</circuit>)"),
              R"(error 2:15-2:17 '--' inside a comment
  expected: '-->' at its end only; two hyphens may not follow each other
)");
}

// 2.5 [15].
TEST(MalformedXml, CommentEndsInThreeHyphens) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge --->
</circuit>)"),
              R"(error 2:15-2:17 '--' inside a comment
  expected: '-->' at its end only; two hyphens may not follow each other
)");
}

TEST(MalformedXml, UnclosedComment) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge
</circuit>)"),
              R"(error 2:3-2:7 the comment is not closed
  expected: '-->'
)");
}

TEST(MalformedXml, UnclosedCommentOfOneHyphen) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!-- charge -)"),
              R"(error 2:3-2:7 the comment is not closed
  expected: '-->'
)");
}

TEST(MalformedXml, MarkupThatIsNoComment) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <!ELEMENT pump EMPTY>
</circuit>)"),
              R"(error 2:3-2:5 '<!' begins no comment
  expected: '<!--' and '-->' around a comment
)");
}

// Well-formed, but the way to entities that double.
TEST(MalformedXml, Doctype) {
    EXPECT_EQ(told(R"(<?xml version="1.0"?>
<!DOCTYPE circuit [<!ENTITY a "aaaa">]>
<circuit format="1"/>)"),
              R"(error 2:1-2:10 a document type is not taken
  expected: no DOCTYPE; the circuit's schema is known without one
)");
}

TEST(MalformedXml, ProcessingInstruction) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <?php echo ?>
</circuit>)"),
              R"(error 2:3-2:8 a processing instruction is not taken
  expected: no '<?' but the XML declaration at the head of the file
)");
}

TEST(MalformedXml, StyleSheet) {
    EXPECT_EQ(told(R"(<?xml-stylesheet href="a.css"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:17 a processing instruction is not taken
  expected: no '<?' but the XML declaration at the head of the file
)");
}

// 2.8 [22].
TEST(MalformedXml, DeclarationNotAtTheHead) {
    EXPECT_EQ(told(R"(
<?xml version="1.0"?>
<circuit format="1"/>)"),
              R"(error 2:1-2:6 the XML declaration does not stand at the head of the file
  expected: nothing before it, not even white space
)");
}

// 2.8 [23].
TEST(MalformedXml, DeclarationWithoutVersion) {
    EXPECT_EQ(told(R"(<?xml encoding="UTF-8"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:24 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedXml, DeclarationInWrongOrder) {
    EXPECT_EQ(told(R"(<?xml encoding="UTF-8" version="1.0"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:32 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedXml, DeclarationUnclosed) {
    EXPECT_EQ(told(R"(<?xml version="1.0">
<circuit format="1"/>)"),
              R"(error 1:1-1:21 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedXml, DeclarationWithoutQuotes) {
    EXPECT_EQ(told(R"(<?xml version=1.0?>
<circuit format="1"/>)"),
              R"(error 1:1-1:16 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedXml, DeclarationWithoutBlank) {
    EXPECT_EQ(told(R"(<?xml version="1.0"encoding="UTF-8"?>
<circuit format="1"/>)"),
              R"(error 1:1-1:29 the XML declaration is malformed
  expected: <?xml version="1.0" encoding="UTF-8"?>
)");
}

TEST(MalformedXml, OtherVersion) {
    EXPECT_EQ(told(R"(<?xml version="1.1"?>
<circuit format="1"/>)"),
              R"(error 1:16-1:19 XML version '1.1'
  expected: version="1.0"
  means: 1.0
)");
}

TEST(MalformedXml, StandaloneMaybe) {
    EXPECT_EQ(told(R"(<?xml version="1.0" standalone="maybe"?>
<circuit format="1"/>)"),
              R"(error 1:33-1:38 standalone is 'maybe'
  expected: yes or no
)");
}

TEST(MalformedXml, DeclaredLatin1) {
    EXPECT_EQ(told("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>\n<circuit format=\"1\" "
                   "title=\"K\xFChler\"/>"),
              R"(error 1:31-1:41 the file is declared to be in 'ISO-8859-1'
  expected: UTF-8; save the file in that encoding and declare encoding="UTF-8"
  means: UTF-8
)");
}

TEST(MalformedXml, Latin1WithoutDeclaration) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"K\xFChler\"/>"),
              R"(error 1:29-1:30 the byte FC is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, Utf16WithMark) {
    EXPECT_EQ(told(std::string_view("\xFF\xFE<\000c\000/\000>\000", 10)),
              R"(error 1:1-1:3 the file is in UTF-16
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, Utf16WithoutMark) {
    EXPECT_EQ(told(std::string_view("\000<\000c\000/\000>", 8)),
              R"(error 1:1-1:3 the file is in UTF-16
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, Utf32) {
    EXPECT_EQ(told(std::string_view("\xFF\xFE\000\000<\000\000\000", 8)),
              R"(error 1:1-1:3 the file is in UTF-32
  expected: UTF-8; save the file in that encoding
)");
}

// RFC 3629, section 3.
TEST(MalformedXml, OverlongUtf8) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xC0\xAF\"/>"),
              R"(error 1:28-1:29 the byte C0 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// RFC 3629, section 3.
TEST(MalformedXml, SurrogateInUtf8) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xED\xA0\x80\"/>"),
              R"(error 1:28-1:29 the byte ED is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// RFC 3629, section 3.
TEST(MalformedXml, Utf8BeyondUnicode) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xF4\x90\x80\x80\"/>"),
              R"(error 1:28-1:29 the byte F4 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, Utf8CutShort) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xE2\x82\"/>"),
              R"(error 1:28-1:29 the byte E2 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, Utf8CutShortByTheEnd) {
    EXPECT_EQ(told("<circuit format=\"1\"/>\xE2\x82"),
              R"(error 1:22-1:23 the byte E2 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, BrokenUtf8InComment) {
    EXPECT_EQ(told("<circuit format=\"1\"><!-- \xFF --></circuit>"),
              R"(error 1:26-1:27 the byte FF is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

TEST(MalformedXml, BrokenUtf8FarInside) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <!-- "
                   "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"
                   "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"
                   "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx \x80 --></circuit>"),
              R"(error 2:209-2:210 the byte 80 is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// 2.2 [2].
TEST(MalformedXml, Nul) {
    EXPECT_EQ(
        told(std::string_view("<circuit format=\"1\">\n  <load id=\"D\000\"/>\n</circuit>", 49)),
        R"(error 2:14-2:15 the character U+0000 is not allowed in XML
  expected: no control characters but tab and line ends
)");
}

// 2.2 [2].
TEST(MalformedXml, ControlCharacter) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\x1B[31mred\"/>"),
              R"(error 1:28-1:29 the character U+001B is not allowed in XML
  expected: no control characters but tab and line ends
)");
}

// 2.2 [2].
TEST(MalformedXml, NonCharacter) {
    EXPECT_EQ(told("<circuit format=\"1\" title=\"\xEF\xBF\xBF\"/>"),
              R"(error 1:28-1:29 the character U+FFFF is not allowed in XML
  expected: no control characters but tab and line ends
)");
}

// 2.3 [4]: U+00D7 is no name character.
TEST(MalformedXml, MultiplicationSignInName) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <a\xC3\x97"
                   "b/>\n</circuit>"),
              "error 2:5-2:6 '\xC3\x97' cannot stand here\n  expected: white space, '>' or '/>'\n");
}

TEST(MalformedXml, ColumnsAreCharacters) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <!-- \xC3\x96l, 40 \xC2\xB0"
                   "C --> <load id=\"\xC3\x98&x;\"/>\n</circuit>"),
              R"(error 2:33-2:36 the entity '&x;' is unknown
  expected: '&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number (&#176;)
)");
}

// The broken byte stands first.
TEST(MalformedXml, EarlierPlaceWins) {
    EXPECT_EQ(
        told("<circuit format=\"1\" title=\"\xFF\">\n  <pump id=\"P1\" id=\"P2\"/>\n</circuit>"),
        R"(error 1:28-1:29 the byte FF is not valid UTF-8 here
  expected: UTF-8; save the file in that encoding
)");
}

// The attribute stands first.
TEST(MalformedXml, EarlierPlaceWinsTheOtherWay) {
    EXPECT_EQ(
        told("<circuit format=\"1\">\n  <pump id=\"P1\" id=\"P2\"/>\n<!-- \xFF --></circuit>"),
        R"(error 2:17-2:19 the attribute 'id' is there twice
  expected: each attribute once in an element
)");
}

TEST(MalformedXml, OnlyTheFirstPlace) {
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
