#include <loopwright/render/label_text.h>

#include <algorithm>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/symbol.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

namespace {

constexpr double module = 2.5;  // mm
// Titles are broken where they are wider than this, figures only where they are much wider, mm.
constexpr double widest_title = 24.0;
constexpr double widest_figures = 30.0;
constexpr double below_baseline = 0.3;  // M

LabelText measured(std::vector<std::string> lines, double height, double pitch) {
    LabelText text{.lines = std::move(lines)};
    for (const std::string& line : text.lines)
        text.width = std::max(text.width, text_width_m(line, height));
    if (!text.lines.empty())
        text.height =
            height / module + pitch * static_cast<double>(text.lines.size() - 1) + below_baseline;
    return text;
}

}  // namespace

double text_width_m(std::string_view text, double height) {
    return text_width(text, height) / module;
}

std::vector<std::string> broken(std::string_view text, double height, double width) {
    std::vector<std::string> lines;
    std::string line;
    while (!text.empty()) {
        const std::size_t blank = text.find(' ');
        const std::string_view word = text.substr(0, blank);
        text = blank == std::string_view::npos ? std::string_view{} : text.substr(blank + 1);
        if (word.empty()) continue;
        std::string longer = line;
        if (!longer.empty()) longer += ' ';
        longer += word;
        if (!line.empty() && text_width_m(longer, height) * module > width) {
            lines.push_back(std::move(line));
            line = word;
        } else {
            line = std::move(longer);
        }
    }
    // A letter that ends a title is not left alone: it would pass for a port's.
    if (line.size() <= 2 && !lines.empty()) {
        std::string& above = lines.back();
        const std::size_t blank = above.rfind(' ');
        if (blank != std::string::npos) {
            line = above.substr(blank + 1) + ' ' + line;
            above.resize(blank);
        }
    }
    if (!line.empty()) lines.push_back(std::move(line));
    return lines;
}

LabelText label_text(const Circuit& circuit, const Component& component) {
    std::vector<std::string> lines;
    for (const std::string& line : label_lines(circuit, component)) {
        const double widest = line == component.title ? widest_title : widest_figures;
        for (std::string& piece : broken(line, label_text_height, widest))
            lines.push_back(std::move(piece));
    }
    return measured(std::move(lines), label_text_height, label_pitch);
}

LabelText first_line(const LabelText& text) {
    if (text.lines.empty()) return text;
    return measured({text.lines.front()}, label_text_height, label_pitch);
}

LabelText small_text_of(std::string text) {
    return measured({std::move(text)}, line_text_height, label_pitch);
}

LabelText line_text(const Circuit&, const Line& line) {
    std::string text(line.path);
    if (line.bore) {
        text += ' ';
        text += format_quantity(line.bore->si(), Dimension::length);
    }
    return small_text_of(std::move(text));
}

}  // namespace loopwright
