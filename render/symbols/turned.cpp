#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

namespace {

constexpr double quarter = 1.5707963267948966;
constexpr double rounding = 1e-9;

Point turned(Point p, Attitude attitude) {
    for (int i = 0; i < attitude.quarter_turns; ++i) p = {-p.y, p.x};
    if (attitude.mirrored) p.x = -p.x;
    // No -0.0: the same place has one spelling.
    return {p.x + 0.0, p.y + 0.0};
}

Side turned(Side side, Attitude attitude) {
    constexpr Side clockwise[] = {Side::up, Side::right, Side::down, Side::left};
    int index = 0;
    while (clockwise[index] != side) ++index;
    index = (index + attitude.quarter_turns) % 4;
    if (attitude.mirrored && index % 2 == 1) index = 4 - index;
    return clockwise[index];
}

void turn(Polyline& line, Attitude attitude) {
    for (Point& p : line.points) p = turned(p, attitude);
}

void turn(Arc& arc, Attitude attitude) {
    arc.centre = turned(arc.centre, attitude);
    if (arc.full) return;
    arc.from += quarter * attitude.quarter_turns;
    arc.to += quarter * attitude.quarter_turns;
    if (!attitude.mirrored) return;
    // Mirrored, what ran clockwise runs the other way: the ends change places.
    constexpr double half = 2 * quarter;
    const double from = half - arc.to;
    arc.to = half - arc.from;
    arc.from = from;
}

/// Text keeps upright about the middle of its capitals.
void turn(Text& text, Attitude attitude) {
    const double half = text.height / metrics::module_mm / 2;
    const Point middle = turned(Point{text.at.x, text.at.y - half}, attitude);
    text.at = {middle.x, middle.y + half};
}

void move(Primitive& primitive, Point by) {
    if (auto* line = std::get_if<Polyline>(&primitive.shape))
        for (Point& p : line->points) p = {p.x + by.x, p.y + by.y};
    else if (auto* arc = std::get_if<Arc>(&primitive.shape))
        arc->centre = {arc->centre.x + by.x, arc->centre.y + by.y};
    else if (auto* text = std::get_if<Text>(&primitive.shape))
        text->at = {text->at.x + by.x, text->at.y + by.y};
}

/// An adjusting arrow: two points at 45 degrees, the next stroke a filled head at its end.
bool is_adjusting_arrow(const Primitive& first, const Primitive& second) {
    const auto* line = std::get_if<Polyline>(&first.shape);
    const auto* head = std::get_if<Polyline>(&second.shape);
    if (line == nullptr || head == nullptr || line->points.size() != 2 || !head->closed ||
        head->fill != Paint::ink || head->points.front() != line->points.back())
        return false;
    const double dx = line->points[1].x - line->points[0].x;
    const double dy = line->points[1].y - line->points[0].y;
    return dx > 0.0 && std::abs(dx + dy) < rounding;
}

}  // namespace

std::size_t first_steady(const Symbol& symbol) {
    // In symbols that may not be turned a path can look like one.
    for (std::size_t i = 0; !symbol.upright && i + 1 < symbol.primitives.size(); ++i)
        if (is_adjusting_arrow(symbol.primitives[i], symbol.primitives[i + 1])) return i;
    return symbol.primitives.size();
}

Symbol turned(const Symbol& symbol, Attitude attitude) {
    if (attitude.quarter_turns < 0 || attitude.quarter_turns > 3)
        throw std::logic_error("a symbol is turned by 0 to 3 quarters");
    Symbol out = symbol;
    const std::size_t steady = first_steady(symbol);
    for (std::size_t i = 0; i < steady; ++i)
        std::visit([attitude](auto& shape) { turn(shape, attitude); }, out.primitives[i].shape);
    Point by{};
    if (steady < out.primitives.size()) {
        const auto& ends = std::get<Polyline>(symbol.primitives[steady].shape).points;
        const Point middle{(ends[0].x + ends[1].x) / 2, (ends[0].y + ends[1].y) / 2};
        const Point to = turned(middle, attitude);
        by = {to.x - middle.x, to.y - middle.y};
        for (std::size_t i = steady; i < out.primitives.size(); ++i) move(out.primitives[i], by);
    }
    std::vector<double> halves;
    for (PortAnchor& port : out.ports) {
        halves.push_back(letter_half(port));
        // The ports of a control keep their sense with its frame.
        const auto stub =
            std::find_if(symbol.primitives.begin() + static_cast<std::ptrdiff_t>(steady),
                         symbol.primitives.end(),
                         [&port](const Primitive& p) { return p.tag.port == port.port; });
        if (stub != symbol.primitives.end()) {
            port.at = {port.at.x + by.x, port.at.y + by.y};
            continue;
        }
        port.at = turned(port.at, attitude);
        port.side = turned(port.side, attitude);
    }
    for (ShaftAnchor& shaft : out.shafts) {
        shaft.at = turned(shaft.at, attitude);
        shaft.side = turned(shaft.side, attitude);
    }
    out.body = body_of(out);
    place_letters(out, halves);
    return out;
}

}  // namespace loopwright
