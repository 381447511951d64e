// SVG, PDF and PNG: the same bytes twice, well formed, true to the display list.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>

#include <loopwright/render/render.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/writers/stroke_style.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright::testing {
namespace {

std::size_t count(std::string_view text, std::string_view word) {
    std::size_t found = 0;
    for (std::size_t at = text.find(word); at != std::string_view::npos;
         at = text.find(word, at + word.size()))
        ++found;
    return found;
}

/// A sheet of 100 x 50 mm with one group of these primitives.
Drawing drawing_of(std::vector<Primitive> primitives) {
    Drawing drawing{.width = 100.0, .height = 50.0};
    drawing.groups.push_back({.id = "only", .primitives = std::move(primitives)});
    return drawing;
}

Drawing with_text(std::string text) {
    return drawing_of({{Text{.at = {10, 20}, .text = std::move(text)}, {}}});
}

bool is_well_formed(const std::string& svg) {
    const TemporaryFolder folder;
    const auto file = folder.write("drawing.svg", svg);
    return std::system(("xmllint --noout --nonet '" + file.string() + "'").c_str()) == 0;
}

TEST(SvgWriter, SameBytesTwice) { EXPECT_EQ(to_svg(symbol_sheet()), to_svg(symbol_sheet())); }

TEST(SvgWriter, WellFormed) { EXPECT_TRUE(is_well_formed(to_svg(symbol_sheet()))); }

TEST(SvgWriter, OneElementAPrimitive) {
    const Drawing sheet = symbol_sheet();
    std::size_t lines = 0;
    std::size_t circles = 0;
    std::size_t parts_of_circles = 0;
    std::size_t texts = 0;
    for (const Group& group : sheet.groups)
        for (const Primitive& primitive : group.primitives) {
            lines += std::holds_alternative<Polyline>(primitive.shape) ? 1 : 0;
            if (const auto* arc = std::get_if<Arc>(&primitive.shape))
                ++(arc->full ? circles : parts_of_circles);
            texts += std::holds_alternative<Text>(primitive.shape) ? 1 : 0;
        }
    const std::string svg = to_svg(sheet);
    EXPECT_EQ(count(svg, "<polyline ") + count(svg, "<polygon "), lines);
    EXPECT_EQ(count(svg, "<circle "), circles);
    EXPECT_EQ(count(svg, "<text "), texts);
    EXPECT_EQ(count(svg, "<g "), sheet.groups.size() + 1);
    EXPECT_EQ(count(svg, "<path "), parts_of_circles);
    EXPECT_GT(parts_of_circles, 0u);
}

TEST(SvgWriter, WholeTextOfASmallDrawing) {
    Drawing drawing{.width = 20.0, .height = 10.0, .title = "T", .description = "D"};
    const Tag tag{.role = Role::symbol, .component = 0};
    drawing.groups.push_back(
        {.tag = tag,
         .id = "component-P1",
         .title = "P1",
         .description = "pump",
         .primitives = {
             {Polyline{.points = {{1, 2}, {3.00049, -0.0001}}}, tag},
             {Polyline{.points = {{0, 0}, {1, 0}, {0, 1}}, .closed = true, .fill = Paint::ink},
              tag},
             {Arc{.centre = {5, 5}, .radius = 2.5}, tag},
             {Arc{.centre = {5, 5},
                  .radius = 2,
                  .from = 0,
                  .to = 1.5707963267948966,
                  .full = false},
              tag},
             {Text{.at = {1, 9}, .text = "A", .anchor = Anchor::middle},
              {.role = Role::port_letter}}}});
    EXPECT_EQ(to_svg(drawing),
              R"(<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="20mm" height="10mm" viewBox="0 0 20 10" role="img">
<title>T</title>
<desc>D</desc>
<rect class="paper" width="20" height="10" fill="#ffffff"/>
<g fill="none" stroke-linejoin="round" font-family="osifont" font-weight="normal" xml:space="preserve">
<g id="component-P1" class="symbol">
<title>P1</title>
<desc>pump</desc>
<polyline points="1,2 3,0" stroke="#000000" stroke-width="0.25"/>
<polygon points="0,0 1,0 0,1" fill="#000000" stroke="#000000" stroke-width="0.25"/>
<circle cx="5" cy="5" r="2.5" stroke="#000000" stroke-width="0.25"/>
<path d="M 7 5 A 2 2 0 0 1 5 7" stroke="#000000" stroke-width="0.25"/>
<text class="port-letter" x="1" y="9" font-size="3.391" text-anchor="middle" fill="#000000">A</text>
</g>
</g>
</svg>
)");
}

TEST(SvgWriter, EscapesAndShowsControls) {
    Drawing drawing = with_text("a<b & \"c\"\x01\x1F\x7F\xFF");
    drawing.title = "<&>\"\x02\xC2\x85\xE2\x80\xAE\xFE\xEF\xBF\xBF";
    drawing.groups[0].title = "]]>";
    drawing.groups[0].id = "a\"b";
    const std::string svg = to_svg(drawing);
    EXPECT_TRUE(is_well_formed(svg));
    EXPECT_NE(svg.find("a&lt;b &amp; &quot;c&quot;\u25A1\u25A1\u25A1\u25A1</text>"),
              std::string::npos);
    EXPECT_NE(svg.find("<title>&lt;&amp;&gt;&quot;\u2402\uFFFD\uFFFD\uFFFD\uFFFD</title>"),
              std::string::npos);
    EXPECT_NE(svg.find("<title>]]&gt;</title>"), std::string::npos);
}

TEST(SvgWriter, FindingsKeepTheirNumber) {
    Drawing drawing = with_text("1");
    drawing.groups[0].tag = {.role = Role::finding, .finding = 3};
    EXPECT_NE(to_svg(drawing).find("class=\"finding finding-3\""), std::string::npos);
}

TEST(StrokeStyle, NumbersAreShort) {
    EXPECT_EQ(number_text(0.25), "0.25");
    EXPECT_EQ(number_text(10.0), "10");
    EXPECT_EQ(number_text(-0.0001), "0");
    EXPECT_EQ(number_text(1.0 / 3.0), "0.333");
    EXPECT_EQ(number_text(-2.5), "-2.5");
    EXPECT_EQ(number_text(100.0), "100");
}

std::vector<double> dashes_of(double length, Dash dash, double width = 0.25) {
    return dash_pattern(
        Polyline{.points = {{0, 0}, {length, 0}}, .pen = {.width = width, .dash = dash}});
}

// ISO 128-2 (from memory): dash 12 d, gap 3 d; long dash 24 d, gap 3 d, dot 0.5 d, gap 3 d. A run
// begins and ends on a dash, so the dash gives way a little.
TEST(StrokeStyle, DashesFillTheRun) {
    for (double length = 1.0; length < 200.0; length += 1.37)
        for (const Dash dash : {Dash::dashed, Dash::chain}) {
            std::vector<double> pattern = dashes_of(length, dash);
            ASSERT_EQ(pattern.size() % 2, 0u);
            // The last dash and gap reach beyond the end.
            pattern.pop_back();
            pattern.back() -= 10.0;
            EXPECT_NEAR(std::accumulate(pattern.begin(), pattern.end(), 0.0), length, 0.05);
            EXPECT_NEAR(pattern.front(), pattern.back(), 0.0015) << "ends on a whole dash";
            if (dash == Dash::dashed) {
                EXPECT_GE(pattern.size(), 3u) << "two dashes show";
            }
            if (length > 30.0) {
                EXPECT_NEAR(pattern.front(), dash == Dash::dashed ? 3.0 : 6.0, 1.2);
                EXPECT_NEAR(pattern[1], 0.75, 1e-9);
                if (dash == Dash::chain) {
                    EXPECT_NEAR(pattern[2], 0.125, 1e-9);
                }
            }
        }
    EXPECT_TRUE(dashes_of(10.0, Dash::continuous).empty());
}

TEST(StrokeStyle, CornersAreClosed) {
    const Polyline bent{.points = {{0, 0}, {10, 0}, {10, 7}}, .pen = {.dash = Dash::dashed}};
    const std::vector<double> pattern = dash_pattern(bent);
    double at = 0.0;
    bool corner_is_drawn = false;
    for (std::size_t i = 0; i < pattern.size(); i += 2) {
        corner_is_drawn = corner_is_drawn || (at < 9.9 && at + pattern[i] > 10.1);
        at += pattern[i] + pattern[i + 1];
    }
    EXPECT_TRUE(corner_is_drawn);
}

// Marks, bands and ink must be told apart on a black-and-white print. Weights: ITU-R BT.601.
TEST(StrokeStyle, PaintsDifferInGrey) {
    const auto grey = [](Paint paint) {
        const unsigned rgb = colour_of(paint);
        return (0.299 * (rgb >> 16U & 0xFFU) + 0.587 * (rgb >> 8U & 0xFFU) +
                0.114 * (rgb & 0xFFU)) /
               255.0;
    };
    EXPECT_EQ(grey(Paint::ink), 0.0);
    EXPECT_NEAR(grey(Paint::paper), 1.0, 1e-12);
    EXPECT_LT(grey(Paint::band), 0.92) << "seen on the paper";
    EXPECT_GT(grey(Paint::band), 0.7) << "ink is read on it";
    EXPECT_GT(grey(Paint::band) - grey(Paint::mark), 0.4);
    EXPECT_GT(grey(Paint::mark), 0.15);
    EXPECT_THROW(colour_of(Paint::none), std::logic_error);
}

TEST(CairoWriter, SameBytesTwice) {
    const Drawing sheet = symbol_sheet();
    EXPECT_EQ(to_pdf(sheet), to_pdf(sheet));
    EXPECT_EQ(to_png(sheet, 60), to_png(sheet, 60));
}

TEST(CairoWriter, PdfHasNoClockInIt) {
    const std::string pdf = to_pdf(with_text("A"));
    EXPECT_EQ(pdf.substr(0, 5), "%PDF-");
    EXPECT_NE(pdf.find("/CreationDate (20000101000000Z)"), std::string::npos);
    EXPECT_EQ(count(pdf, "Date ("), 1u);
    EXPECT_NE(pdf.find("/MediaBox [ 0 0 283.464567 141.732283 ]"), std::string::npos)
        << "100 mm x 50 mm in points of 1/72 inch";
}

TEST(CairoWriter, PngHasTheSizeOfTheSheet) {
    const std::string png = to_png(with_text("A"), 127.0);
    EXPECT_EQ(png.substr(0, 8), "\x89PNG\r\n\x1A\n");
    const auto number = [&](std::size_t at) {
        return static_cast<unsigned char>(png[at + 2]) * 256 +
               static_cast<unsigned char>(png[at + 3]);
    };
    EXPECT_EQ(number(16), 500) << "100 mm at 5 pixels a mm";
    EXPECT_EQ(number(20), 250);
}

TEST(CairoWriter, ResolutionHasLimits) {
    for (const double dpi : {0.0, 35.0, 1201.0, -1.0, std::nan("")})
        EXPECT_THROW(to_png(with_text("A"), dpi), std::logic_error);
}

TEST(CairoWriter, TextThatTheFontLacksIsNoTrouble) {
    EXPECT_NO_THROW(to_pdf(with_text("\u221A \u6CB9 \x01\xFF")));
    EXPECT_NO_THROW(to_pdf(with_text("")));
    EXPECT_NO_THROW(to_pdf(with_text("one\ntwo")));
}

}  // namespace
}  // namespace loopwright::testing
