#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include <loopwright/base/finding.h>

/// The display list: what a finished sheet consists of, in millimetres on the sheet, x to the
/// right, y downwards, origin at the trimmed sheet's upper left corner. Everything before makes
/// it, every writer (SVG, PDF, PNG) only plays it.
namespace loopwright {

struct Point {
    double x = 0.0;
    double y = 0.0;
    friend bool operator==(const Point&, const Point&) = default;
};

/// Line classes of the sheet: continuous (flow lines, symbols), dashed (pilot, drain, flushing,
/// bleed), chain (frames around assemblies).
enum class Dash : std::uint8_t { continuous, dashed, chain };

/// What a stroke or fill means; the theme gives it its colour. `ink` is black on a plain sheet,
/// `value` a computed figure, `ground` the tint below it.
enum class Paint : std::uint8_t { none, ink, paper, faint, mark, band, value, ground };

struct Pen {
    Paint paint = Paint::ink;
    double width = 0.25;  ///< mm
    Dash dash = Dash::continuous;
};

struct Polyline {
    std::vector<Point> points = {};
    bool closed = false;
    Pen pen = {};
    Paint fill = Paint::none;
};

/// Circle (0 to 2 pi) or arc, clockwise on the sheet from `from` to `to`, radians from the x axis.
struct Arc {
    Point centre = {};
    double radius = 0.0;
    double from = 0.0;
    double to = 0.0;
    bool full = true;
    Pen pen = {};
    Paint fill = Paint::none;
};

enum class Anchor : std::uint8_t { start, middle, end };

/// One line of text, never turned; `at` is on the baseline.
struct Text {
    Point at = {};
    std::string text = {};  ///< UTF-8
    double height = 2.5;    ///< mm, of the capitals
    Anchor anchor = Anchor::start;
    Paint paint = Paint::ink;
};

/// What a primitive belongs to. Writers make ids, classes, titles and descriptions from it.
enum class Role : std::uint8_t {
    symbol,  ///< stroke of a component's symbol
    port_letter,
    designation,  ///< the component's id or code
    value,        ///< title and figures beside a symbol
    line,         ///< a stroke of a line
    joint,        ///< junction dot
    shaft,
    frame,    ///< chain line of an assembly
    sheet,    ///< border, title block, lists, legend
    finding,  ///< mark of a finding, its band along the lines, its entry in the list
    caution,
    computed,  ///< figures of a computed point, heads that show which way oil flows
};

struct Tag {
    Role role = Role::sheet;
    Index component = none;
    Index line = none;  ///< a line of the circuit
    Index shaft = none;
    Index port = none;
    Index finding = none;  ///< number of the finding on the sheet, from 1
};

struct Primitive {
    std::variant<Polyline, Arc, Text> shape = {};
    Tag tag = {};
};

/// A group of primitives that share a component, line or finding becomes one SVG group; `title`
/// and `description` are what a reader of the SVG (or a screen reader) is told of it.
struct Group {
    Tag tag = {};
    std::string id = {};  ///< unique on the sheet, made of the element's name
    std::string title = {};
    std::string description = {};
    std::vector<Primitive> primitives = {};
};

struct Drawing {
    double width = 420.0;   ///< mm
    double height = 297.0;  ///< mm
    std::string title = {};
    std::string description = {};
    std::vector<Group> groups = {};  ///< painted in order
};

}  // namespace loopwright
