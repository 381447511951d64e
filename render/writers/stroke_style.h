#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <loopwright/render/drawing.h>

/// What the SVG and the Cairo writer must agree on to the digit: rounding, dashes, colours.
namespace loopwright {

/// To 1/1000 mm: what the SVG text says, and so what Cairo is given.
double rounded(double mm);
/// The rounded number in its shortest form, no exponent, never "-0".
std::string number_text(double mm);

/// A colour as 0xRRGGBB. `none` has no colour and must not be asked for.
unsigned colour_of(Paint paint);
/// "#c62828".
std::string colour_text(Paint paint);

/// Alternating lengths of strokes and gaps along the whole primitive, in mm; empty for a continuous
/// one. Each straight run begins and ends on a dash, so that corners are closed (ISO 128-2). The
/// pattern covers the primitive once and ends with a gap, so it is never seen to repeat.
std::vector<double> dash_pattern(const Polyline& line);
std::vector<double> dash_pattern(const Arc& arc);

}  // namespace loopwright
