#include <loopwright/render/writers/stroke_style.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

namespace loopwright {

namespace {

// In line widths d (ISO 128-2, from memory).
constexpr double dash_widths = 12.0;
constexpr double gap_widths = 3.0;
constexpr double long_widths = 24.0;
constexpr double dot_widths = 0.5;

/// Adds one run; its first dash joins the last one of the run before.
void add_run(std::vector<double>& pattern, double length, const Pen& pen) {
    double gap = gap_widths * pen.width;
    const double dot = pen.dash == Dash::chain ? dot_widths * pen.width : 0.0;
    const double wanted = (pen.dash == Dash::chain ? long_widths : dash_widths) * pen.width;
    double between = pen.dash == Dash::chain ? 2 * gap + dot : gap;
    // On a short run two dashes must still show.
    if (pen.dash == Dash::dashed && length < 3 * gap) between = gap = length / 3;
    const double period = wanted + between;
    const int least = pen.dash == Dash::dashed ? 2 : 1;
    const int dashes = std::max(least, static_cast<int>(std::lround((length + between) / period)));
    const double dash = (length - (dashes - 1) * between) / dashes;
    for (int i = 0; i < dashes; ++i) {
        if (i == 0 && !pattern.empty()) {
            pattern.back() += dash;
        } else {
            pattern.push_back(dash);
        }
        if (i + 1 == dashes) break;
        pattern.push_back(gap);
        if (pen.dash == Dash::dashed) continue;
        pattern.push_back(dot);
        pattern.push_back(gap);
    }
}

void close(std::vector<double>& pattern) {
    constexpr double never = 10.0;
    for (double& length : pattern) length = rounded(length);
    // The last dash outruns the primitive, so that rounding cannot open its end.
    pattern.back() += never;
    pattern.push_back(never);
}

}  // namespace

double rounded(double mm) { return std::round(mm * 1000.0) / 1000.0 + 0.0; }

std::string number_text(double mm) {
    std::string text = fmt::format("{:.3f}", rounded(mm));
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

unsigned colour_of(Paint paint) {
    // The band is light and the mark dark, so that grey print tells them apart; so with the ground
    // and the figures on it.
    switch (paint) {
        case Paint::ink:
            return 0x000000;
        case Paint::paper:
            return 0xFFFFFF;
        case Paint::faint:
            return 0x7A7A7A;
        case Paint::mark:
            return 0xB71C1C;
        case Paint::band:
            return 0xFFD9A0;
        case Paint::value:
            return 0x14457F;
        case Paint::ground:
            return 0xE0EBF8;
        case Paint::none:
            break;
    }
    throw std::logic_error("no colour");
}

std::string colour_text(Paint paint) { return fmt::format("#{:06x}", colour_of(paint)); }

std::vector<double> dash_pattern(const Polyline& line) {
    std::vector<double> pattern;
    if (line.pen.dash == Dash::continuous || line.pen.paint == Paint::none) return pattern;
    const std::size_t count = line.points.size();
    for (std::size_t i = 0; i + 1 < count + (line.closed ? 1 : 0); ++i) {
        const Point a = line.points[i];
        const Point b = line.points[(i + 1) % count];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        if (length > 0.0) add_run(pattern, length, line.pen);
    }
    if (!pattern.empty()) close(pattern);
    return pattern;
}

std::vector<double> dash_pattern(const Arc& arc) {
    std::vector<double> pattern;
    if (arc.pen.dash == Dash::continuous || arc.pen.paint == Paint::none) return pattern;
    constexpr double turn = 6.283185307179586;
    const double angle = arc.full ? turn : std::fmod(arc.to - arc.from + 2 * turn, turn);
    add_run(pattern, arc.radius * angle, arc.pen);
    close(pattern);
    return pattern;
}

}  // namespace loopwright
