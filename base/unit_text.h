#pragma once

#include <span>
#include <string>
#include <string_view>

#include <loopwright/base/dimension.h>

namespace loopwright {

/// One accepted spelling of a unit: SI value = number * factor + offset, or the tangent of it.
struct Unit {
    std::string_view spelling = {};
    Dimension dimension = Dimension::ratio;
    double factor = 1.0;
    double offset = 0.0;          ///< temperatures, and pressures written absolute, have one
    bool slope_as_angle = false;  ///< a grade given as the angle of its slope, below 90 deg
};

/// The standard atmosphere (10th CGPM, 1954), Pa: what lies between a pressure over the atmosphere
/// and the same one written absolute.
inline constexpr double standard_atmosphere = 101'325.0;

/// The trade's unit table: every spelling that a circuit may use, the dimensions in their order.
/// The first spelling of a dimension is the one that the program itself prints (but see
/// `format_quantity`). Factors follow from definitions (NIST SP 811, 2008, appendix B, for the
/// customary units); tests repeat them from there. A gallon is the US liquid gallon, horsepower
/// `hp` is 550 ft.lbf/s and `PS` is
/// metric; Btu and kcal are those of the International Table; columns of mercury and water are the
/// conventional ones.
std::span<const Unit> units();

/// What became of a text that should be a quantity. Exactly one of the two holds: `ok()`, or
/// `message` says what is wrong, `expected` what would be right, `suggestion` the likely meaning
/// (may be empty).
struct ParsedQuantity {
    double si = 0.0;
    std::string message = {};
    std::string expected = {};
    std::string suggestion = {};

    bool ok() const { return message.empty(); }
};

/// Reads "71 cm3/rev", "-10 degC", "0.8 bar abs", "20 %" as a quantity of `dimension`.
/// A number needs its unit, but for ratios; decimal point, no grouping, no hexadecimal, finite.
/// Blanks may stand before, between (none or more) and behind. A pressure written absolute is
/// taken over the standard atmosphere; where an absolute pressure is asked for it must be written
/// so. Independent of the locale. Never throws on bad text.
ParsedQuantity parse_quantity(std::string_view text, Dimension dimension);

/// "a pressure such as 24 bar": what a text of that dimension looks like, for messages.
std::string_view example(Dimension dimension);

/// Text as printed for people, in the trade's unit: "71 cm3/rev", "24 bar". At most four
/// significant digits unless the number is a whole one; the same bytes in every locale. A ratio is
/// a bare number; lengths take um below 0.1 mm and m from 1 m on.
std::string format_quantity(double si, Dimension dimension);

}  // namespace loopwright
