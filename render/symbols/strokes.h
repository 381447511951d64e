#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/render/symbol.h>

namespace loopwright {

/// Draws one component's symbol, modules, at rest about the origin. Each call adds one primitive
/// (an arrow two: line and head). A stroke of a stub carries the port in its tag; all other strokes
/// make up the body.
class Strokes {
  public:
    Strokes(const Circuit& circuit, const Component& component)
        : circuit_(circuit), component_(component) {
        symbol_.kind = component.kind->name;
    }

    const Circuit& circuit() const { return circuit_; }
    const Component& component() const { return component_; }
    bool is_yes(std::string_view attribute) const { return circuit_.is_yes(component_, attribute); }
    /// Whether a choice stands at that word.
    bool is(std::string_view attribute, std::string_view word) const {
        return circuit_.choice(component_, attribute) == word;
    }
    /// A whole number; 0 where it is unknown.
    int count(std::string_view attribute) const {
        return static_cast<int>(circuit_.figure(component_, attribute).value_or(0.0));
    }
    /// Whether the component has a port of that letter.
    bool has_port(std::string_view letter) const;
    bool is_given(std::string_view attribute) const {
        return circuit_.attribute(component_, attribute) != nullptr;
    }

    void line(Point from, Point to, Dash dash = Dash::continuous);
    void path(std::vector<Point> points, Dash dash = Dash::continuous);
    void shape(std::vector<Point> points, Paint fill = Paint::none);
    void box(double left, double top, double right, double bottom);
    void circle(Point centre, double radius, Paint fill = Paint::none);
    /// Part of a circle, clockwise, radians from the x axis.
    void arc(Point centre, double radius, double from, double to);
    /// A joint inside a component.
    void dot(Point at);
    /// Filled equilateral triangle that points that way.
    void triangle(Point apex, Side towards, double side);
    /// Line with a filled head at its end.
    void arrow(Point from, Point to);
    void head(Point from, Point to, double scale = 1.0);
    /// Level or upright zigzag.
    void spring(Point from, Point to, double half);
    /// Upright text about its middle.
    void text(Point middle, std::string_view text, double height_mm);
    /// T-bar of a blocked port at the edge of a box; `inwards` is -1 at a lower edge, 1 at an
    /// upper.
    void blocked(Point at, double inwards);
    /// Two chevrons beside an upright line.
    void orifice(Point at);
    /// The same, small, as a mark on a path through `at` that runs in the direction of (dx, dy).
    void throttle_mark(Point at, double dx, double dy, double scale = 1.0);

    /// The stub of the port with that letter, from its end on the grid to the body; adds the
    /// anchor. Nothing where the component has no such port.
    void stub(std::string_view letter, Point end, Side side, Point body,
              Dash dash = Dash::continuous);
    void stub(Index port, Point end, Side side, Point body, Dash dash = Dash::continuous);
    /// Only the anchor, where the stub is no straight stroke of its own.
    void anchor(Index port, Point end, Side side);
    /// Where a shaft meets the symbol; `far`: that of the second of two named ends.
    void shaft(Point at, Side side, bool far = false) { symbol_.shafts.push_back({at, side, far}); }
    /// A shaft end of its own, where no shaft of the circuit is drawn to it.
    void free_shaft(Point at, Side side, bool far = false);
    /// The two lines of a shaft, level.
    void shaft_lines(double from, double to);
    void keep_upright() { symbol_.upright = true; }

    /// The symbol with its body and its letters placed.
    Symbol finish();

  private:
    void chevrons(Point at, double dx, double dy, double throat, double scale);
    void add(Polyline line, Index port = none);

    const Circuit& circuit_;
    const Component& component_;
    Symbol symbol_ = {};
};

}  // namespace loopwright
