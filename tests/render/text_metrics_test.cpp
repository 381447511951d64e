// The table of advance widths against the font itself, as Pango and fontconfig see it.

#include <fontconfig/fontconfig.h>
#include <gtest/gtest.h>
#include <pango/pangocairo.h>

#include <string>

#include <loopwright/render/font_widths.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright::testing {
namespace {

std::string utf8_of(char32_t code) {
    char bytes[6];
    return std::string(bytes, static_cast<std::size_t>(g_unichar_to_utf8(code, bytes)));
}

/// Pango without hinting, the em set to as many units as the font has.
class Ruler {
  public:
    Ruler() : fonts_(pango_cairo_font_map_new()), context_(pango_font_map_create_context(fonts_)) {
        cairo_font_options_t* options = cairo_font_options_create();
        cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
        cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
        pango_cairo_context_set_font_options(context_, options);
        cairo_font_options_destroy(options);
        pango_context_set_round_glyph_positions(context_, FALSE);
        layout_ = pango_layout_new(context_);
        PangoFontDescription* font = pango_font_description_from_string("osifont");
        pango_font_description_set_absolute_size(font, font_units * PANGO_SCALE);
        pango_layout_set_font_description(layout_, font);
        pango_font_description_free(font);
    }
    Ruler(const Ruler&) = delete;
    Ruler& operator=(const Ruler&) = delete;
    ~Ruler() {
        g_object_unref(layout_);
        g_object_unref(context_);
        g_object_unref(fonts_);
    }

    void set(const std::string& text) {
        pango_layout_set_text(layout_, text.data(), static_cast<int>(text.size()));
    }
    double width() const {
        PangoRectangle logical;
        pango_layout_get_extents(layout_, nullptr, &logical);
        return static_cast<double>(logical.width) / PANGO_SCALE;
    }
    double ink_height() const {
        PangoRectangle ink;
        pango_layout_get_extents(layout_, &ink, nullptr);
        return static_cast<double>(ink.height) / PANGO_SCALE;
    }
    std::string family() const {
        GSList* runs = pango_layout_get_line_readonly(layout_, 0)->runs;
        PangoFont* font = static_cast<PangoGlyphItem*>(runs->data)->item->analysis.font;
        PangoFontDescription* face = pango_font_describe(font);
        std::string name = pango_font_description_get_family(face);
        pango_font_description_free(face);
        return name;
    }

  private:
    PangoFontMap* fonts_ = nullptr;
    PangoContext* context_ = nullptr;
    PangoLayout* layout_ = nullptr;
};

TEST(TextMetrics, EveryGlyphIsAsWideAsPangoSays) {
    Ruler ruler;
    ASSERT_GT(glyphs().size(), 600u);
    for (const char32_t code : glyphs()) {
        // Between two letters, so that a space at an end counts.
        ruler.set("HH");
        const double frame = ruler.width();
        ruler.set("H" + utf8_of(code) + "H");
        EXPECT_NEAR(ruler.width() - frame, *glyph_advance(code), 1.0) << static_cast<int>(code);
        EXPECT_EQ(ruler.family(), font_family);
    }
}

// The font draws some pairs closer (AV, To): a text is never wider than we say.
TEST(TextMetrics, NoPairIsWiderThanItsGlyphs) {
    Ruler ruler;
    int closer = 0;
    for (const char32_t a : glyphs())
        for (const char32_t b : glyphs()) {
            if (a > 0x17F || b > 0x17F) continue;
            ruler.set(utf8_of(a) + utf8_of(b));
            const double extra = ruler.width() - *glyph_advance(a) - *glyph_advance(b);
            ASSERT_LE(extra, 1.0) << static_cast<int>(a) << ' ' << static_cast<int>(b);
            closer += extra < -1.0 ? 1 : 0;
        }
    EXPECT_GT(closer, 0);
}

TEST(TextMetrics, WordsAreAsWideAsPangoSays) {
    Ruler ruler;
    for (const char* text : {"crossport A to B", "\u00B171 cm3/rev", "\u03B210(c) = 200",
                             "U1/P1.L2 fi ffl", "Kühler"}) {
        ruler.set(text);
        EXPECT_NEAR(text_width(text, 1510.0), ruler.width(), 2.0) << text;
    }
}

TEST(TextMetrics, CapitalsHaveTheHeightAskedFor) {
    Ruler ruler;
    ruler.set("H");
    EXPECT_NEAR(ruler.ink_height() / font_units, capital_height, 1e-3);
    EXPECT_NEAR(capital_height, 0.737, 0.0005);  // as measured when the font was chosen
    EXPECT_NEAR(font_size(2.5) * capital_height, 2.5, 1e-12);
}

TEST(TextMetrics, TableHoldsWhatTheFontHolds) {
    FcPattern* pattern = FcNameParse(reinterpret_cast<const FcChar8*>("osifont"));
    FcObjectSet* wanted = FcObjectSetBuild(FC_CHARSET, nullptr);
    FcFontSet* found = FcFontList(nullptr, pattern, wanted);
    ASSERT_EQ(found->nfont, 1);
    FcCharSet* charset = nullptr;
    ASSERT_EQ(FcPatternGetCharSet(found->fonts[0], FC_CHARSET, 0, &charset), FcResultMatch);
    for (char32_t code = 0x20; code < 0x3000; ++code) {
        const bool combining = code >= 0x300 && code < 0x370;
        const bool has = !combining && code != 0x7F && FcCharSetHasChar(charset, code);
        EXPECT_EQ(glyph_advance(code).has_value(), has) << static_cast<int>(code);
    }
    FcFontSetDestroy(found);
    FcObjectSetDestroy(wanted);
    FcPatternDestroy(pattern);
}

TEST(TextMetrics, WidthGrowsWithTheHeightOnly) {
    EXPECT_NEAR(text_width("M1", 5.0), 2 * text_width("M1", 2.5), 1e-12);
    EXPECT_EQ(text_width("", 2.5), 0.0);
    EXPECT_NEAR(text_width("H", 1510.0), 1462.0, 1e-9);  // hmtx of the font
}

// The font lacks these; Pango would take another one without a word.
TEST(TextMetrics, WhatTheFontLacksIsReplaced) {
    EXPECT_EQ(drawn_text("A\u2192B"), "A->B");
    EXPECT_EQ(drawn_text("\u22125 K"), "-5 K");
    EXPECT_EQ(drawn_text("\u2026"), "...");
    EXPECT_EQ(drawn_text("\u221A2"), "\u25A12");
    EXPECT_EQ(drawn_text("a\x07"
                         "b\xFF"),
              "a\u25A1b\u25A1");
    EXPECT_EQ(drawn_text("Kühler 30 °C ± 2"), "Kühler 30 °C ± 2");
    EXPECT_EQ(text_width("\u2192", 2.5), text_width("->", 2.5));
}

TEST(TextMetrics, MissingGlyphsAreNamed) {
    EXPECT_TRUE(missing_glyphs("A\u2192B \u2026").empty()) << "these are spelled out";
    EXPECT_EQ(missing_glyphs("\u221A2 \u221A3 \u6CB9\xFF"),
              (std::vector<char32_t>{U'\u221A', U'\u6CB9', U'\uFFFD'}));
}

}  // namespace
}  // namespace loopwright::testing
