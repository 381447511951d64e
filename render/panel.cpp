#include <loopwright/render/panel.h>

#include <loopwright/base/utf8.h>
#include <loopwright/render/label_text.h>

namespace loopwright {

namespace {

constexpr double module = 2.5;

}  // namespace

void add_line(Panel& panel, Point from, Point to, double width, Dash dash) {
    panel.primitives.push_back(
        {Polyline{.points = {from, to}, .pen = {.width = width, .dash = dash}}, {}});
}

void add_box(Panel& panel, Point from, Point to, double width) {
    panel.primitives.push_back({Polyline{.points = {from, {to.x, from.y}, to, {from.x, to.y}},
                                         .closed = true,
                                         .pen = {.width = width}},
                                {}});
}

void add_text(Panel& panel, Point baseline, std::string_view text, double height, Anchor anchor) {
    if (text.empty()) return;
    panel.primitives.push_back(
        {Text{.at = baseline, .text = std::string(text), .height = height, .anchor = anchor}, {}});
}

Panel list_heading(std::string_view text) {
    constexpr double height = 6.0;
    Panel panel{.height = height};
    add_text(panel, {list_inset, 4.2}, text, large_text);
    add_line(panel, {0.0, height}, {panel_width, height}, thick);
    return panel;
}

Panel list_paragraph(std::string_view text) {
    Panel panel;
    panel.height = add_paragraph(panel, {list_inset, 3.6}, text, list_right - list_inset) + 1.9;
    return panel;
}

double add_paragraph(Panel& panel, Point at, std::string_view text, double width, double height) {
    double last = at.y;
    for (const std::string& line : broken(text, height, width)) {
        add_text(panel, at, line, height);
        last = at.y;
        at.y += text_pitch(height);
    }
    return last;
}

std::string fitted(std::string_view text, double height, double width) {
    if (text_width_m(text, height) * module <= width) return std::string(text);
    constexpr std::string_view cut = "...";
    std::string kept;
    while (!text.empty()) {
        const utf8::Character character = utf8::first(text);
        std::string longer = kept;
        longer += text.substr(0, character.length);
        if (text_width_m(longer + std::string(cut), height) * module > width) break;
        kept = std::move(longer);
        text.remove_prefix(character.length);
    }
    return kept + std::string(cut);
}

void append_moved(std::vector<Primitive>& out, const std::vector<Primitive>& in, Point by) {
    for (Primitive primitive : in) {
        if (auto* line = std::get_if<Polyline>(&primitive.shape)) {
            for (Point& p : line->points) p = {p.x + by.x, p.y + by.y};
        } else if (auto* arc = std::get_if<Arc>(&primitive.shape)) {
            arc->centre = {arc->centre.x + by.x, arc->centre.y + by.y};
        } else if (auto* text = std::get_if<Text>(&primitive.shape)) {
            text->at = {text->at.x + by.x, text->at.y + by.y};
        }
        out.push_back(std::move(primitive));
    }
}

}  // namespace loopwright
