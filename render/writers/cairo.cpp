// PDF and PNG: the display list played to Cairo, text by Pango without hinting, so that letters
// stand where the SVG has them.

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <cmath>
#include <memory>
#include <new>
#include <stdexcept>
#include <string>

#include <loopwright/render/render.h>
#include <loopwright/render/text_metrics.h>
#include <loopwright/render/writers/stroke_style.h>

namespace loopwright {

namespace {

constexpr double points_per_inch = 72.0;
constexpr double mm_per_inch = 25.4;
// Cairo puts the clock into a PDF unless it is told a date.
constexpr const char* fixed_date = "2000-01-01T00:00:00Z";

template <auto free>
struct Free {
    template <typename T>
    void operator()(T* thing) const {
        free(thing);
    }
};
using Surface = std::unique_ptr<cairo_surface_t, Free<cairo_surface_destroy>>;
using Canvas = std::unique_ptr<cairo_t, Free<cairo_destroy>>;
using FontOptions = std::unique_ptr<cairo_font_options_t, Free<cairo_font_options_destroy>>;
using FontDescription = std::unique_ptr<PangoFontDescription, Free<pango_font_description_free>>;
using TextLayout = std::unique_ptr<PangoLayout, Free<g_object_unref>>;
using FontMap = std::unique_ptr<PangoFontMap, Free<g_object_unref>>;
using TextContext = std::unique_ptr<PangoContext, Free<g_object_unref>>;

void check(cairo_status_t status) {
    if (status == CAIRO_STATUS_NO_MEMORY) throw std::bad_alloc();
    if (status != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(std::string("the drawing cannot be written: ") +
                                 cairo_status_to_string(status));
}

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

class Player {
  public:
    /// `scale`: device units a millimetre.
    Player(cairo_surface_t* surface, double scale)
        : canvas_(cairo_create(surface)),
          fonts_(pango_cairo_font_map_new()),
          context_(pango_font_map_create_context(fonts_.get())),
          layout_(nullptr) {
        check(cairo_status(canvas_.get()));
        cairo_scale(canvas_.get(), scale, scale);
        const FontOptions options(cairo_font_options_create());
        cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
        cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
        cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
        pango_cairo_context_set_font_options(context_.get(), options.get());
        pango_context_set_round_glyph_positions(context_.get(), FALSE);
        // Else the program's locale, for which a font may hold other shapes of the same letters.
        pango_context_set_language(context_.get(), pango_language_from_string("en"));
        pango_cairo_update_context(canvas_.get(), context_.get());
        layout_.reset(pango_layout_new(context_.get()));
        cairo_set_line_join(canvas_.get(), CAIRO_LINE_JOIN_ROUND);
    }

    void play(const Drawing& drawing) {
        set_colour(Paint::paper);
        cairo_rectangle(canvas_.get(), 0, 0, rounded(drawing.width), rounded(drawing.height));
        cairo_fill(canvas_.get());
        for (const Group& group : drawing.groups)
            for (const Primitive& primitive : group.primitives)
                std::visit([this](const auto& shape) { play(shape); }, primitive.shape);
        cairo_show_page(canvas_.get());
        check(cairo_status(canvas_.get()));
    }

  private:
    void set_colour(Paint paint) {
        const unsigned rgb = colour_of(paint);
        cairo_set_source_rgb(canvas_.get(), (rgb >> 16U & 0xFFU) / 255.0,
                             (rgb >> 8U & 0xFFU) / 255.0, (rgb & 0xFFU) / 255.0);
    }

    void paint(const Pen& pen, Paint fill, const std::vector<double>& dashes) {
        if (fill != Paint::none) {
            set_colour(fill);
            cairo_fill_preserve(canvas_.get());
        }
        if (pen.paint != Paint::none) {
            set_colour(pen.paint);
            cairo_set_line_width(canvas_.get(), rounded(pen.width));
            cairo_set_dash(canvas_.get(), dashes.data(), static_cast<int>(dashes.size()), 0);
            cairo_stroke_preserve(canvas_.get());
        }
        cairo_new_path(canvas_.get());
    }

    void play(const Polyline& line) {
        for (const Point& p : line.points) cairo_line_to(canvas_.get(), rounded(p.x), rounded(p.y));
        if (line.closed) cairo_close_path(canvas_.get());
        paint(line.pen, line.fill, dash_pattern(line));
    }

    void play(const Arc& arc) {
        constexpr double turn = 6.283185307179586;
        cairo_arc(canvas_.get(), rounded(arc.centre.x), rounded(arc.centre.y), rounded(arc.radius),
                  arc.full ? 0.0 : arc.from, arc.full ? turn : arc.to);
        if (arc.full) cairo_close_path(canvas_.get());
        paint(arc.pen, arc.fill, dash_pattern(arc));
    }

    void play(const Text& text) {
        const std::string drawn = drawn_text(text.text);
        const FontDescription font(pango_font_description_new());
        pango_font_description_set_family(font.get(), std::string(font_family).c_str());
        pango_font_description_set_absolute_size(font.get(),
                                                 rounded(font_size(text.height)) * PANGO_SCALE);
        pango_layout_set_font_description(layout_.get(), font.get());
        pango_layout_set_text(layout_.get(), drawn.data(), static_cast<int>(drawn.size()));
        check_font();
        PangoRectangle logical;
        pango_layout_get_extents(layout_.get(), nullptr, &logical);
        const double width = static_cast<double>(logical.width) / PANGO_SCALE;
        const double shift = text.anchor == Anchor::start    ? 0.0
                             : text.anchor == Anchor::middle ? width / 2
                                                             : width;
        const double baseline =
            static_cast<double>(pango_layout_get_baseline(layout_.get())) / PANGO_SCALE;
        set_colour(text.paint);
        cairo_move_to(canvas_.get(), rounded(text.at.x) - shift, rounded(text.at.y) - baseline);
        pango_cairo_show_layout(canvas_.get(), layout_.get());
        cairo_new_path(canvas_.get());
    }

    /// Pango puts another font in place of a missing family or glyph without a word.
    void check_font() const {
        const TextLayout* layout = &layout_;
        for (GSList* run = pango_layout_get_line_readonly(layout->get(), 0)->runs; run != nullptr;
             run = run->next) {
            PangoFont* used = static_cast<PangoGlyphItem*>(run->data)->item->analysis.font;
            const FontDescription face(pango_font_describe(used));
            if (font_family == pango_font_description_get_family(face.get())) continue;
            throw std::runtime_error("the font " + std::string(font_family) +
                                     " is not installed (Debian package " +
                                     std::string(font_package) + ")");
        }
    }

    Canvas canvas_;
    FontMap fonts_;
    TextContext context_;
    TextLayout layout_;
};

}  // namespace

std::string to_pdf(const Drawing& drawing) {
    constexpr double scale = points_per_inch / mm_per_inch;
    std::string bytes;
    const Surface surface(cairo_pdf_surface_create_for_stream(append, &bytes, drawing.width * scale,
                                                              drawing.height * scale));
    check(cairo_surface_status(surface.get()));
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE,
                                   drawn_text(drawing.title).c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_SUBJECT,
                                   drawn_text(drawing.description).c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, fixed_date);
    Player(surface.get(), scale).play(drawing);
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()));
    return bytes;
}

std::string to_png(const Drawing& drawing, double dpi) {
    if (!(dpi >= 36.0 && dpi <= 1200.0)) throw std::logic_error("dpi outside 36 to 1200");
    const double scale = dpi / mm_per_inch;
    const auto pixels = [scale](double mm) { return static_cast<int>(std::lround(mm * scale)); };
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels(drawing.width),
                                                     pixels(drawing.height)));
    check(cairo_surface_status(surface.get()));
    Player(surface.get(), scale).play(drawing);
    std::string bytes;
    check(cairo_surface_write_to_png_stream(surface.get(), append, &bytes));
    return bytes;
}

}  // namespace loopwright
