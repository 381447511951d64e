// The SVG, drawn by another renderer, against our own PNG: geometry equal, text within a pixel.

#include <cairo.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>

#include <loopwright/render/render.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright::testing {
namespace {

constexpr double dpi = 200.0;

struct Picture {
    int width = 0;
    int height = 0;
    std::vector<int> grey = {};

    int at(int x, int y) const {
        return grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                    static_cast<std::size_t>(x)];
    }
};

Picture load(const std::string& file) {
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_image_surface_create_from_png(file.c_str()), cairo_surface_destroy);
    Picture picture{.width = cairo_image_surface_get_width(surface.get()),
                    .height = cairo_image_surface_get_height(surface.get())};
    const int stride = cairo_image_surface_get_stride(surface.get());
    const unsigned char* data = cairo_image_surface_get_data(surface.get());
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            picture.grey.push_back(data[y * stride + 4 * x + 1]);  // green
    return picture;
}

struct Pair {
    Picture svg = {};
    Picture own = {};
};

Pair both(const Drawing& drawing) {
    const TemporaryFolder folder;
    const std::string svg = folder.write("a.svg", to_svg(drawing)).string();
    const std::string own = folder.write("own.png", to_png(drawing, dpi)).string();
    Pair pair{.own = load(own)};
    const std::string rendered = (folder.path() / "svg.png").string();
    const std::string command =
        fmt::format("rsvg-convert -d {0} -p {0} -o '{1}' '{2}'", dpi, rendered, svg);
    if (std::system(command.c_str()) != 0) {
        ADD_FAILURE() << command;
        return pair;
    }
    pair.svg = load(rendered);
    // It rounds the number of pixels up, we to the nearest: at most one more at each edge.
    EXPECT_LE(pair.svg.width - pair.own.width, 1);
    EXPECT_LE(pair.svg.height - pair.own.height, 1);
    EXPECT_GE(pair.svg.width, pair.own.width);
    EXPECT_GE(pair.svg.height, pair.own.height);
    return pair;
}

Drawing only(const Drawing& drawing, bool text) {
    Drawing out = drawing;
    for (Group& group : out.groups)
        group.primitives.erase(std::remove_if(group.primitives.begin(), group.primitives.end(),
                                              [text](const Primitive& p) {
                                                  return std::holds_alternative<Text>(p.shape) !=
                                                         text;
                                              }),
                               group.primitives.end());
    return out;
}

/// Dark pixels of `a` without a darkish one in `b` next to them.
int strays(const Picture& a, const Picture& b) {
    int count = 0;
    for (int y = 1; y + 1 < a.height; ++y)
        for (int x = 1; x + 1 < a.width; ++x) {
            if (a.at(x, y) > 100) continue;
            bool found = false;
            for (int dy = -1; dy <= 1 && !found; ++dy)
                for (int dx = -1; dx <= 1 && !found; ++dx) found = b.at(x + dx, y + dy) < 180;
            count += found ? 0 : 1;
        }
    return count;
}

/// A dark picture has something in it that could be misplaced.
long dark(const Picture& picture) {
    return std::count_if(picture.grey.begin(), picture.grey.end(), [](int g) { return g < 100; });
}

TEST(ProofSameLook, GeometryIsEqual) {
    Drawing sheet = only(symbol_sheet(), false);
    // What no symbol has: a chain line, a dashed circle, an arc, the other paints.
    sheet.groups.push_back(
        {.primitives = {
             {Polyline{.points = {{10, 10}, {90, 10}, {90, 30}}, .pen = {.dash = Dash::chain}}, {}},
             {Arc{.centre = {120, 15}, .radius = 7, .pen = {.dash = Dash::dashed}}, {}},
             {Arc{.centre = {150, 15}, .radius = 7, .from = 1, .to = 5, .full = false}, {}},
             {Polyline{.points = {{170, 15}, {200, 15}},
                       .pen = {.paint = Paint::band, .width = 2.5}},
              {}},
             {Polyline{.points = {{210, 10}, {220, 20}, {200, 20}},
                       .closed = true,
                       .pen = {.paint = Paint::mark, .width = 0.5},
                       .fill = Paint::paper},
              {}}}});
    const Pair pair = both(sheet);
    ASSERT_FALSE(HasFailure());
    ASSERT_GT(dark(pair.own), 10'000);
    int worst = 0;
    for (int y = 0; y < pair.own.height; ++y)
        for (int x = 0; x < pair.own.width; ++x)
            worst = std::max(worst, std::abs(pair.svg.at(x, y) - pair.own.at(x, y)));
    // A stroke is two pixels wide: what the two differ by in smoothing an edge is less than a sixth
    // of a pixel.
    EXPECT_LE(worst, 40);
}

TEST(ProofSameLook, TextStandsWithinAPixel) {
    const Pair pair = both(only(symbol_sheet(), true));
    ASSERT_FALSE(HasFailure());
    ASSERT_GT(dark(pair.own), 5'000);
    EXPECT_EQ(strays(pair.svg, pair.own), 0);
    EXPECT_EQ(strays(pair.own, pair.svg), 0);
}

/// What a command prints.
std::string output_of(const std::string& command, const TemporaryFolder& folder) {
    const std::string file = (folder.path() / "output.txt").string();
    EXPECT_EQ(std::system((command + " > '" + file + "'").c_str()), 0) << command;
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

TEST(ProofSameLook, PdfCanBeSearchedAndHasOneFont) {
    const TemporaryFolder folder;
    const std::string pdf = folder.write("a.pdf", to_pdf(symbol_sheet())).string();
    const std::string text = output_of("pdftotext -layout '" + pdf + "' -", folder);
    for (const char* words :
         {"Symbols, drawn after ISO 1219-1:2012", "flushing valve", "pilot-operated, adjustable"})
        EXPECT_NE(text.find(words), std::string::npos) << words;
    const std::string fonts = output_of("pdffonts '" + pdf + "'", folder);
    EXPECT_EQ(std::count(fonts.begin(), fonts.end(), '\n'), 3) << fonts;  // two of heading
    EXPECT_NE(fonts.find("osifont"), std::string::npos) << fonts;
}

}  // namespace
}  // namespace loopwright::testing
