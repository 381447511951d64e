#pragma once

#include <cmath>
#include <string>
#include <vector>

#include <loopwright/render/symbol.h>
#include <loopwright/render/symbols/variants.h>
#include <loopwright/tests/support/circuit_text.h>

/// Symbols as tests look at them.
namespace loopwright::testing {

/// A circuit of one component (or two, for a reservoir mark) and its symbol.
struct DrawnVariant {
    Circuit circuit = {};
    Symbol symbol = {};

    const Component& component() const { return circuit.components.front(); }
    const PortAnchor& anchor(std::string_view letter) const {
        for (const PortAnchor& port : symbol.ports)
            if (circuit.ports[port.port].letter == letter) return port;
        throw std::logic_error("no port " + std::string(letter));
    }
};

inline DrawnVariant drawn(std::string_view xml, bool local_mark = false) {
    DrawnVariant variant{.circuit = circuit_with(xml)};
    const Component& component = variant.component();
    variant.symbol = local_mark ? local_reservoir(variant.circuit, component, component.ports.begin)
                                : symbol_of(variant.circuit, component);
    return variant;
}

inline std::vector<DrawnVariant> all_variants() {
    std::vector<DrawnVariant> all;
    for (const SymbolVariant& variant : symbol_variants())
        all.push_back(drawn(variant.xml, variant.local_mark));
    return all;
}

inline std::vector<Polyline> polylines(const Symbol& symbol) {
    std::vector<Polyline> out;
    for (const Primitive& primitive : symbol.primitives)
        if (const auto* line = std::get_if<Polyline>(&primitive.shape)) out.push_back(*line);
    return out;
}

inline std::vector<Arc> arcs(const Symbol& symbol) {
    std::vector<Arc> out;
    for (const Primitive& primitive : symbol.primitives)
        if (const auto* arc = std::get_if<Arc>(&primitive.shape)) out.push_back(*arc);
    return out;
}

/// Whether it is a filled triangle with three sides of that length: the mark of oil.
inline bool is_oil_triangle(const Polyline& line, double side) {
    if (!line.closed || line.fill != Paint::ink || line.points.size() != 3) return false;
    for (std::size_t i = 0; i < 3; ++i) {
        const Point a = line.points[i];
        const Point b = line.points[(i + 1) % 3];
        if (std::abs(std::hypot(b.x - a.x, b.y - a.y) - side) > 1e-9) return false;
    }
    return true;
}

inline std::vector<Polyline> oil_triangles(const Symbol& symbol, double side) {
    std::vector<Polyline> out;
    for (const Polyline& line : polylines(symbol))
        if (is_oil_triangle(line, side)) out.push_back(line);
    return out;
}

/// Lines with a filled, slender head whose tip is their end.
inline std::vector<Polyline> arrows(const Symbol& symbol) {
    std::vector<Polyline> out;
    const std::vector<Polyline> lines = polylines(symbol);
    for (const Polyline& line : lines)
        for (const Polyline& head : lines)
            if (!line.closed && line.points.size() == 2 && head.closed && head.fill == Paint::ink &&
                !is_oil_triangle(head, 1.0) && !is_oil_triangle(head, 2.0) &&
                head.points.front() == line.points.back())
                out.push_back(line);
    return out;
}

/// Zigzags: open lines that turn back and forth many times.
inline std::vector<Polyline> springs(const Symbol& symbol) {
    std::vector<Polyline> out;
    for (const Polyline& line : polylines(symbol))
        if (!line.closed && line.points.size() >= 6 && line.pen.dash == Dash::continuous)
            out.push_back(line);
    return out;
}

inline std::vector<Polyline> dashed(const Symbol& symbol) {
    std::vector<Polyline> out;
    for (const Polyline& line : polylines(symbol))
        if (line.pen.dash == Dash::dashed) out.push_back(line);
    return out;
}

inline bool is_at(Point a, double x, double y) {
    return std::abs(a.x - x) < 1e-9 && std::abs(a.y - y) < 1e-9;
}

/// Whether a point lies on a straight run of the line.
inline bool lies_on(Point p, const Polyline& line) {
    for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
        const Point a = line.points[i];
        const Point b = line.points[i + 1];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        const double off = std::abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
        const double along = ((b.x - a.x) * (p.x - a.x) + (b.y - a.y) * (p.y - a.y)) / length;
        if (off < 1e-6 && along > -1e-6 && along < length + 1e-6) return true;
    }
    return false;
}

}  // namespace loopwright::testing
