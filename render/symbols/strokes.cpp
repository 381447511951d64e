#include <loopwright/render/symbols/strokes.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

using namespace metrics;

void Strokes::add(Polyline line, Index port) {
    symbol_.primitives.push_back({std::move(line), {.role = Role::symbol, .port = port}});
}

void Strokes::line(Point from, Point to, Dash dash) {
    add({.points = {from, to}, .pen = {.dash = dash}});
}

void Strokes::path(std::vector<Point> points, Dash dash) {
    add({.points = std::move(points), .pen = {.dash = dash}});
}

void Strokes::shape(std::vector<Point> points, Paint fill) {
    add({.points = std::move(points), .closed = true, .fill = fill});
}

void Strokes::box(double left, double top, double right, double bottom) {
    shape({{left, top}, {right, top}, {right, bottom}, {left, bottom}});
}

void Strokes::circle(Point centre, double radius, Paint fill) {
    symbol_.primitives.push_back(
        {Arc{.centre = centre, .radius = radius, .fill = fill}, {.role = Role::symbol}});
}

void Strokes::arc(Point centre, double radius, double from, double to) {
    symbol_.primitives.push_back(
        {Arc{.centre = centre, .radius = radius, .from = from, .to = to, .full = false},
         {.role = Role::symbol}});
}

void Strokes::dot(Point at) {
    symbol_.primitives.push_back({Arc{.centre = at,
                                      .radius = inner_joint_radius,
                                      .pen = {.paint = Paint::none},
                                      .fill = Paint::ink},
                                  {.role = Role::symbol}});
}

void Strokes::triangle(Point apex, Side towards, double side) {
    const double height = side * std::sqrt(3.0) / 2;
    const double half = side / 2;
    const Point a = apex;
    switch (towards) {
        case Side::up:
            shape({a, {a.x + half, a.y + height}, {a.x - half, a.y + height}}, Paint::ink);
            break;
        case Side::down:
            shape({a, {a.x - half, a.y - height}, {a.x + half, a.y - height}}, Paint::ink);
            break;
        case Side::left:
            shape({a, {a.x + height, a.y - half}, {a.x + height, a.y + half}}, Paint::ink);
            break;
        case Side::right:
            shape({a, {a.x - height, a.y + half}, {a.x - height, a.y - half}}, Paint::ink);
            break;
    }
}

void Strokes::head(Point from, Point to, double scale) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double ux = (to.x - from.x) / length;
    const double uy = (to.y - from.y) / length;
    const double back = head_length * scale;
    const double half = head_half * scale;
    shape({to,
           {to.x - ux * back - uy * half, to.y - uy * back + ux * half},
           {to.x - ux * back + uy * half, to.y - uy * back - ux * half}},
          Paint::ink);
}

void Strokes::arrow(Point from, Point to) {
    line(from, to);
    head(from, to);
}

void Strokes::spring(Point from, Point to, double half) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const int waves = static_cast<int>(std::lround(length / spring_pitch));
    const double ux = (to.x - from.x) / length;
    const double uy = (to.y - from.y) / length;
    std::vector<Point> points{from};
    for (int i = 0; i < 2 * waves; ++i) {
        const double along = length * (i + 0.5) / (2 * waves);
        const double aside = i % 2 == 0 ? half : -half;
        points.push_back({from.x + ux * along + uy * aside, from.y + uy * along - ux * aside});
    }
    points.push_back(to);
    path(std::move(points));
}

void Strokes::text(Point middle, std::string_view text, double height_mm) {
    symbol_.primitives.push_back({Text{.at = {middle.x, middle.y + height_mm / module_mm / 2},
                                       .text = std::string(text),
                                       .height = height_mm,
                                       .anchor = Anchor::middle},
                                  {.role = Role::symbol}});
}

void Strokes::blocked(Point at, double inwards) {
    const double y = at.y + inwards * blocked_stem;
    line(at, {at.x, y});
    line({at.x - blocked_half, y}, {at.x + blocked_half, y});
}

void Strokes::chevrons(Point at, double dx, double dy, double throat, double scale) {
    const double length = std::hypot(dx, dy);
    const double ux = dx / length;
    const double uy = dy / length;
    for (const double side : {-1.0, 1.0}) {
        const auto point = [&](double aside, double along) {
            return Point{at.x + scale * (-uy * aside * side + ux * along),
                         at.y + scale * (ux * aside * side + uy * along)};
        };
        path({point(orifice_x, -orifice_y), point(throat, 0.0), point(orifice_x, orifice_y)});
    }
}

void Strokes::orifice(Point at) { chevrons(at, 0, 1, orifice_throat, 1.0); }

void Strokes::throttle_mark(Point at, double dx, double dy, double scale) {
    chevrons(at, dx, dy, mark_throat, scale * throttle_mark_scale);
}

bool Strokes::has_port(std::string_view letter) const {
    const auto ports = circuit_.ports_of(component_);
    return std::any_of(ports.begin(), ports.end(),
                       [&](const Port& port) { return port.letter == letter; });
}

void Strokes::anchor(Index port, Point end, Side side) {
    symbol_.ports.push_back({port, end, side, end});
}

void Strokes::stub(Index port, Point end, Side side, Point body, Dash dash) {
    add({.points = {end, body}, .pen = {.dash = dash}}, port);
    anchor(port, end, side);
}

void Strokes::stub(std::string_view letter, Point end, Side side, Point body, Dash dash) {
    for (Index p = component_.ports.begin; p < component_.ports.end; ++p)
        if (circuit_.ports[p].letter == letter) stub(p, end, side, body, dash);
}

void Strokes::shaft_lines(double from, double to) {
    for (const double y : {-shaft_half, shaft_half}) line({from, y}, {to, y});
}

void Strokes::free_shaft(Point at, Side side, bool far) {
    if ((far ? component_.far_shaft : component_.shaft) != none) return;
    shaft_lines(at.x, at.x + (side == Side::left ? -free_shaft_length : free_shaft_length));
}

Symbol Strokes::finish() {
    symbol_.body = body_of(symbol_);
    std::vector<double> halves;
    for (const PortAnchor& port : symbol_.ports)
        halves.push_back(text_width(circuit_.ports[port.port].letter, letter_mm) / module_mm / 2);
    place_letters(symbol_, halves);
    return std::move(symbol_);
}

}  // namespace loopwright
