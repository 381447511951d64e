// What is worked out from the strokes of a symbol: its body and the places of its port letters.

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <numeric>
#include <utility>
#include <vector>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

using namespace metrics;

namespace {

void widen(Box& box, Point point) {
    box.left = std::min(box.left, point.x);
    box.top = std::min(box.top, point.y);
    box.right = std::max(box.right, point.x);
    box.bottom = std::max(box.bottom, point.y);
}

Box box_of(const Text& text) {
    const double width = text_width(text.text, text.height) / module_mm;
    const double left = text.anchor == Anchor::start    ? text.at.x
                        : text.anchor == Anchor::middle ? text.at.x - width / 2
                                                        : text.at.x - width;
    return {left, text.at.y - text.height / module_mm, left + width, text.at.y};
}

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/// Whether the run from a to b passes the inside of the box (Liang and Barsky's clipping, 1984).
bool meets(const Box& box, Point a, Point b) {
    double from = 0.0;
    double to = 1.0;
    const std::array<std::array<double, 2>, 4> edges{{{a.x - b.x, a.x - box.left},
                                                      {b.x - a.x, box.right - a.x},
                                                      {a.y - b.y, a.y - box.top},
                                                      {b.y - a.y, box.bottom - a.y}}};
    for (const auto& [p, q] : edges) {
        if (p == 0.0) {
            if (q < 0.0) return false;
        } else if (p < 0.0) {
            from = std::max(from, q / p);
        } else {
            to = std::min(to, q / p);
        }
    }
    return from < to;
}

/// Whether a point is inside a closed outline (even-odd rule).
bool holds(const std::vector<Point>& outline, Point point) {
    bool inside = false;
    Point a = outline.back();
    for (const Point& b : outline) {
        if ((a.y > point.y) != (b.y > point.y) &&
            point.x < (b.x - a.x) * (point.y - a.y) / (b.y - a.y) + a.x)
            inside = !inside;
        a = b;
    }
    return inside;
}

bool meets(const Box& box, const Primitive& primitive) {
    if (const auto* line = std::get_if<Polyline>(&primitive.shape)) {
        const std::size_t count = line->points.size();
        for (std::size_t i = 0; i + 1 < count + (line->closed ? 1 : 0); ++i)
            if (meets(box, line->points[i], line->points[(i + 1) % count])) return true;
        return line->closed && holds(line->points, {box.left, box.top});
    }
    if (const auto* arc = std::get_if<Arc>(&primitive.shape)) {
        const Point near{std::clamp(arc->centre.x, box.left, box.right),
                         std::clamp(arc->centre.y, box.top, box.bottom)};
        return std::hypot(near.x - arc->centre.x, near.y - arc->centre.y) < arc->radius;
    }
    return overlap(box, box_of(std::get<Text>(primitive.shape)));
}

Box letter_box(Point letter, double half) {
    return {letter.x - half - letter_clear, letter.y - letter_mm / module_mm - letter_clear,
            letter.x + half + letter_clear, letter.y + letter_clear};
}

/// Places beside the stub's end, the better ones first. An upright stub has its letter on the outer
/// side or on the inner; a level one above it or below.
std::vector<Point> letter_places(const PortAnchor& port, double half) {
    constexpr double high = letter_mm / module_mm;
    const Point at = port.at;
    switch (port.side) {
        case Side::up:
        case Side::down: {
            const double outer = at.x < 0.0 ? -1.0 : 1.0;
            std::vector<Point> places;
            for (const LetterSpot& spot : letter_spots) {
                const double y =
                    port.side == Side::up ? at.y + high + spot.inset : at.y - spot.inset;
                for (const double side : {outer, -outer})
                    places.push_back({at.x + side * (spot.gap + half), y});
            }
            return places;
        }
        case Side::left:
        case Side::right: {
            const double inwards = port.side == Side::left ? 1.0 : -1.0;
            const double x = at.x + inwards * (half + level_letter_inset);
            return {{x, at.y - level_letter_gap}, {x, at.y + level_letter_gap + high}};
        }
    }
    return {at};
}

}  // namespace

Box body_of(const Symbol& symbol) {
    Box box{1e9, 1e9, -1e9, -1e9};
    for (const Primitive& primitive : symbol.primitives) {
        if (primitive.tag.port != none) continue;
        if (const auto* line = std::get_if<Polyline>(&primitive.shape)) {
            for (const Point& p : line->points) widen(box, p);
        } else if (const auto* arc = std::get_if<Arc>(&primitive.shape)) {
            widen(box, {arc->centre.x - arc->radius, arc->centre.y - arc->radius});
            widen(box, {arc->centre.x + arc->radius, arc->centre.y + arc->radius});
        } else {
            const Box text = box_of(std::get<Text>(primitive.shape));
            widen(box, {text.left, text.top});
            widen(box, {text.right, text.bottom});
        }
    }
    return box;
}

namespace {

/// Gives each letter, in that order, the first of its places that is free; tells how many found
/// none and took their best place nevertheless.
int place_in_order(Symbol& symbol, std::span<const double> halves,
                   const std::vector<std::size_t>& order) {
    int crowded = 0;
    std::vector<Box> taken;
    for (const std::size_t i : order) {
        PortAnchor& port = symbol.ports[i];
        const auto is_free = [&](Point place) {
            const Box box = letter_box(place, halves[i]);
            return std::none_of(symbol.primitives.begin(), symbol.primitives.end(),
                                [&](const Primitive& p) { return meets(box, p); }) &&
                   std::none_of(taken.begin(), taken.end(),
                                [&](const Box& other) { return overlap(box, other); });
        };
        const auto places = letter_places(port, halves[i]);
        const auto found = std::find_if(places.begin(), places.end(), is_free);
        if (found == places.end()) ++crowded;
        port.letter = found == places.end() ? places.front() : *found;
        taken.push_back(letter_box(port.letter, halves[i]));
    }
    return crowded;
}

/// Letters that stand nearer to another port than to their own.
std::ptrdiff_t letters_astray(const Symbol& symbol) {
    const auto off = [](const PortAnchor& letter, const PortAnchor& port) {
        return std::hypot(letter.letter.x - port.at.x,
                          letter.letter.y - letter_mm / module_mm / 2 - port.at.y);
    };
    return std::count_if(symbol.ports.begin(), symbol.ports.end(), [&](const PortAnchor& letter) {
        return std::any_of(symbol.ports.begin(), symbol.ports.end(), [&](const PortAnchor& p) {
            return off(letter, p) < off(letter, letter);
        });
    });
}

}  // namespace

void place_letters(Symbol& symbol, std::span<const double> halves) {
    std::vector<std::size_t> order(symbol.ports.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const int crowded = place_in_order(symbol, halves, order);
    const std::ptrdiff_t astray = letters_astray(symbol);
    if (crowded == 0 && astray == 0) return;
    // What comes last may have had no other place: once more the other way round.
    Symbol other = symbol;
    std::reverse(order.begin(), order.end());
    const int other_crowded = place_in_order(other, halves, order);
    if (std::pair(other_crowded, letters_astray(other)) < std::pair(crowded, astray))
        symbol.ports = std::move(other.ports);
}

double letter_half(const PortAnchor& anchor) {
    const double aside = std::abs(anchor.letter.x - anchor.at.x);
    if (anchor.side == Side::left || anchor.side == Side::right) return aside - level_letter_inset;
    // Its inset tells which of the gaps it was given.
    const double inset = anchor.side == Side::down
                             ? anchor.at.y - anchor.letter.y
                             : anchor.letter.y - anchor.at.y - letter_mm / module_mm;
    const auto off = [inset](const LetterSpot& spot) { return std::abs(spot.inset - inset); };
    const auto* spot =
        std::min_element(std::begin(letter_spots), std::end(letter_spots),
                         [&](const LetterSpot& a, const LetterSpot& b) { return off(a) < off(b); });
    return aside - spot->gap;
}

}  // namespace loopwright
