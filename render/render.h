#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>
#include <loopwright/render/layout.h>

/// The drawing half of the library in the order of its stages:
/// circuit -> lay_out -> Layout -> draw (with findings) -> Drawing -> to_svg / to_pdf / to_png.
namespace loopwright {

namespace hydraulics {
struct OperatingPoint;
}

/// Places and routes the whole circuit and chooses the sheet. `structure` gives the roles (loop
/// pump, motor, side, charge line ...). Deterministic. `sheet`: "A4".."A0", or empty: chosen to
/// fit.
Layout lay_out(const Circuit& circuit, const Structure& structure, std::string_view sheet = {});

/// Layout as JSON, elements named by their paths, and back. Reading gives an error text in `error`
/// where it does not fit the circuit.
std::string write_layout(const Circuit& circuit, const Layout& layout);
std::optional<Layout> read_layout(const Circuit& circuit, std::string_view json,
                                  std::string& error);

/// The finished sheet: symbols, lines, labels, frame, title block, parts list, caution block, and
/// the findings (`findings` empty: a sheet without). Only failed and inconclusive verdicts get
/// marks. `point`: a solved duty point whose figures are written at nets, lines and machines (null:
/// none). Throws std::length_error where the lists are longer than a sheet A0 holds.
Drawing draw(const Circuit& circuit, const Layout& layout, std::span<const Verdict> findings,
             const hydraulics::OperatingPoint* point = nullptr);

/// SVG 1.1 text: millimetres, text stays text, ids, classes, titles and descriptions from the tags.
std::string to_svg(const Drawing& drawing);
/// PDF bytes; the same input gives the same bytes (creation date fixed).
std::string to_pdf(const Drawing& drawing);
/// PNG bytes. `dpi` 36 to 1200.
std::string to_png(const Drawing& drawing, double dpi);

}  // namespace loopwright
