#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/parser/scan.h>
#include <loopwright/parser/xml_reader.h>

// The tables of the scan, and the decoded values that its spans lead to. What the scan refuses is
// in malformed_xml_test.cpp.

namespace loopwright {
namespace {

constexpr std::size_t depth = 64;

std::string_view at(std::string_view text, Span span) {
    return text.substr(span.begin, span.end - span.begin);
}

// The value of the root's only attribute.
std::string value_of(const std::string& quoted) {
    const std::string text = "<a b=" + quoted + "/>";
    const XmlResult result = read_xml(text, depth);
    EXPECT_TRUE(result.document) << text;
    return result.document ? std::string(result.document->value(result.document->attribute(0)))
                           : std::string();
}

bool accepted(const std::string& text) { return !scan_xml(text, depth).trouble; }

std::string nested(std::size_t levels) {
    std::string text;
    for (std::size_t i = 0; i < levels; ++i) {
        text += "<a>";
    }
    for (std::size_t i = 0; i < levels; ++i) {
        text += "</a>";
    }
    return text;
}

TEST(Scan, SpansOfElements) {
    const std::string text =
        "<?xml version=\"1.0\"?>\n<!-- a --><one >\n <two/><three><four\n/>"
        "</three ></one>";
    const Scan scan = scan_xml(text, depth);
    ASSERT_FALSE(scan.trouble);
    ASSERT_EQ(scan.elements.size(), 4U);
    EXPECT_EQ(at(text, scan.elements[0].name()), "one");
    EXPECT_EQ(at(text, scan.elements[0].tag()), "<one >");
    EXPECT_EQ(at(text, scan.elements[1].tag()), "<two/>");
    EXPECT_EQ(at(text, scan.elements[2].tag()), "<three>");
    EXPECT_EQ(at(text, scan.elements[3].name()), "four");
    EXPECT_EQ(at(text, scan.elements[3].tag()), "<four\n/>");
    EXPECT_EQ(scan.elements[0].next, 4U);
    EXPECT_EQ(scan.elements[1].next, 2U);
    EXPECT_EQ(scan.elements[2].next, 4U);
    EXPECT_EQ(scan.elements[3].next, 4U);
}

TEST(Scan, SpansOfAttributes) {
    const std::string text = "<a b=\"1\" c = '2&lt;'><d/><e f='\"'\n g=\"\"/></a>";
    const Scan scan = scan_xml(text, depth);
    ASSERT_FALSE(scan.trouble);
    ASSERT_EQ(scan.attributes.size(), 4U);
    EXPECT_EQ(scan.elements[0].attributes, 0U);
    EXPECT_EQ(scan.elements[0].attribute_count, 2U);
    EXPECT_EQ(scan.elements[1].attribute_count, 0U);
    EXPECT_EQ(scan.elements[2].attributes, 2U);
    EXPECT_EQ(scan.elements[2].attribute_count, 2U);
    EXPECT_EQ(at(text, scan.attributes[1].name()), "c");
    EXPECT_EQ(at(text, scan.attributes[1].value()), "2&lt;");
    EXPECT_EQ(at(text, scan.attributes[1].whole()), "c = '2&lt;'");
    EXPECT_EQ(at(text, scan.attributes[2].value()), "\"");
    EXPECT_EQ(at(text, scan.attributes[3].value()), "");
    EXPECT_TRUE(scan.attributes[0].plain);
    EXPECT_FALSE(scan.attributes[1].plain);
}

TEST(Scan, LiteralMeansNothingToDecode) {
    EXPECT_TRUE(scan_xml("<a b='1'/>", depth).literal);
    EXPECT_FALSE(scan_xml("<a b='&lt;'/>", depth).literal);
    EXPECT_FALSE(scan_xml("<a b='1\n2'/>", depth).literal);
    EXPECT_FALSE(scan_xml("<a b='1\t2'/>", depth).literal);
    EXPECT_FALSE(scan_xml("<a b='1\r2'/>", depth).literal);
}

// XML 1.0, 4.6 (the five entities), 4.1 (character references), 3.3.3 (attribute values) and 2.11
// (line ends).
TEST(Scan, DecodedValues) {
    EXPECT_EQ(value_of("'&lt;&gt;&amp;&apos;&quot;'"), "<>&'\"");
    EXPECT_EQ(value_of("'&#65;&#x42;&#x63;'"), "ABc");
    EXPECT_EQ(value_of("'40 &#176;C'"),
              "40 \xC2\xB0"
              "C");
    EXPECT_EQ(value_of("'&#x20AC;'"), "\xE2\x82\xAC");
    EXPECT_EQ(value_of("'&#x1F6E2;'"), "\xF0\x9F\x9B\xA2");
    EXPECT_EQ(value_of("'&amp;lt;'"), "&lt;");
    EXPECT_EQ(value_of("'a\nb\tc'"), "a b c");
    EXPECT_EQ(value_of("'a\r\nb'"), "a b");
    EXPECT_EQ(value_of("'a\rb'"), "a b");
    EXPECT_EQ(value_of("'a&#10;b'"), "a\nb");
    EXPECT_EQ(value_of("''"), "");
    EXPECT_EQ(value_of("'  a  '"), "  a  ");
}

TEST(Scan, TakesWhatXmlTakes) {
    EXPECT_TRUE(accepted("<a/>"));
    EXPECT_TRUE(accepted("\xEF\xBB\xBF<a/>"));
    EXPECT_TRUE(accepted("\xEF\xBB\xBF<?xml version=\"1.0\"?><a/>"));
    EXPECT_TRUE(accepted("<?xml version='1.0' encoding='utf-8' standalone='yes' ?>\r\n<a/>"));
    EXPECT_TRUE(accepted("<?xml version = \"1.0\" encoding=\"US-ASCII\"?><a/>"));
    EXPECT_TRUE(accepted(" \n<!----><!-- - - -> > < & -->\n<a></a\n>\t<!-- b -->\n"));
    EXPECT_TRUE(accepted("<a b='>' c=\"'\" d='\"'/>"));
    EXPECT_TRUE(accepted("<a \xC3\xA9-1.\xC2\xB7=''/>"));  // U+00E9, then U+00B7 inside
    EXPECT_TRUE(accepted("<\xC3\x84rger/>"));
    EXPECT_TRUE(accepted("<_:a.b-c1/>"));
    EXPECT_TRUE(accepted("<a b='\x7F'/>"));
}

TEST(Scan, DepthAtItsLimit) {
    EXPECT_TRUE(accepted(nested(depth)));
    const Scan scan = scan_xml(nested(depth + 1), depth);
    ASSERT_TRUE(scan.trouble);
    EXPECT_EQ(scan.trouble->message, "elements are nested deeper than 64");
    EXPECT_EQ(scan.trouble->expected, "at most 64 elements one inside the other");
    EXPECT_EQ(scan.trouble->span.begin, 3 * depth + 1);
    EXPECT_EQ(scan.trouble->span.end, 3 * depth + 2);
}

TEST(Scan, DepthOfAHundredThousand) {
    const Scan scan = scan_xml(nested(100'000), depth);
    ASSERT_TRUE(scan.trouble);
    EXPECT_EQ(scan.trouble->message, "elements are nested deeper than 64");
}

// More attributes than are compared with each other one by one.
TEST(Scan, DuplicateAmongManyAttributes) {
    std::string text = "<a";
    for (int i = 0; i < 20'000; ++i) {
        text += " b" + std::to_string(i) + "=''";
    }
    EXPECT_TRUE(accepted(text + "/>"));
    const Scan scan = scan_xml(text + " b7=''/>", depth);
    ASSERT_TRUE(scan.trouble);
    EXPECT_EQ(scan.trouble->message, "the attribute 'b7' is there twice");
}

// Wherever a file is cut, it is refused, and without a look behind its end.
TEST(Scan, EveryHeadOfAFileIsRefused) {
    const std::string text =
        "\xEF\xBB\xBF<?xml version='1.0' encoding='UTF-8'?>\n<!-- a - b -->"
        "<a b='&#x20AC;&lt;\xE2\x82\xAC' \xC3\xA9=\"\r\n\"><c/></a>";
    ASSERT_TRUE(accepted(text));
    for (std::size_t length = 0; length < text.size(); ++length) {
        EXPECT_FALSE(accepted(text.substr(0, length))) << length;
    }
}

}  // namespace
}  // namespace loopwright
