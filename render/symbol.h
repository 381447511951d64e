#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>

/// Symbols on the module grid. Coordinates in modules M (2.5 mm), x to the right, y downwards, the
/// symbol's own origin at (0, 0) in its rest attitude. Recipes and dimensions:
/// shared design reference "Drawing-standard facts", section 2; sizes are from memory of
/// ISO 1219-1:2012 unless said otherwise, so sheets say "drawn after ISO 1219".
namespace loopwright {

/// Which way a stub leaves the symbol.
enum class Side : std::uint8_t { left, right, up, down };

/// Where a line joins: the stub's end, on the 1 M grid.
struct PortAnchor {
    Index port = none;  ///< the circuit's port
    Point at = {};      ///< M
    Side side = Side::up;
    Point letter = {};  ///< M, middle of the port letter's baseline; letters stay upright
};

/// Where a shaft meets the symbol (left and right end of the axis through it).
struct ShaftAnchor {
    Point at = {};
    Side side = Side::left;
    bool far = false;  ///< of the second of two named ends
};

/// The shaft of the circuit that meets the symbol there; `none` where none does.
inline Index shaft_at(const Component& component, const ShaftAnchor& anchor) {
    return anchor.far ? component.far_shaft : component.shaft;
}

struct Box {
    double left = 0.0;
    double top = 0.0;
    double right = 0.0;
    double bottom = 0.0;
};

/// A symbol ready to be placed. Shapes are in M (pen widths in mm; text height in mm).
struct Symbol {
    std::string_view kind = {};
    std::vector<Primitive> primitives = {};
    std::vector<PortAnchor> ports = {};
    std::vector<ShaftAnchor> shafts = {};
    Box body = {};         ///< all strokes but the stubs
    bool upright = false;  ///< may not be turned (reservoir, text inside)
};

/// Quarter turns clockwise, then mirrored left to right if asked.
struct Attitude {
    int quarter_turns = 0;  ///< 0 to 3
    bool mirrored = false;
    friend bool operator==(const Attitude&, const Attitude&) = default;
};

/// The symbol of a component, ports as they are in the circuit.
/// Throws std::logic_error where a kind has no symbol (a test holds the list against the kinds).
Symbol symbol_of(const Circuit& circuit, const Component& component);

/// The symbol turned and mirrored about its origin. Text keeps upright and legible; the adjustment
/// arrow keeps its sense (lower left to upper right) where the recipe asks for it.
Symbol turned(const Symbol& symbol, Attitude attitude);

/// What stands beside the symbol (ISO 1219-2): the designation first, then title and figures, one
/// entry a line: "R1", "charge relief", "24 bar".
std::vector<std::string> label_lines(const Circuit& circuit, const Component& component);

/// The local reservoir mark (RS1): drawn wherever a line ends at a reservoir, as often as needed.
/// `dashed` never applies to the mark itself. Anchor at (0, -2).
Symbol local_reservoir(const Circuit& circuit, const Component& reservoir, Index port);

}  // namespace loopwright
