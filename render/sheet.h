#pragma once

#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/panel.h>

/// The sheet round the circuit: sizes and frame after ISO 5457, title block with the fields of
/// ISO 7200, lists. Figures from the design reference, section 3.6.
namespace loopwright {

struct SheetSize {
    std::string_view name = {};
    double width = 0.0;  ///< mm, trimmed
    double height = 0.0;
};

/// A4 (upright), A3, A2, A1, A0.
std::span<const SheetSize> sheet_sizes();
/// Null where there is no sheet of that name.
const SheetSize* find_sheet(std::string_view name);

/// The drawing space inside the frame begins there; a layout's (0, 0) is this corner.
inline constexpr double margin_left = 20.0;
inline constexpr double margin = 10.0;

/// Frame, centring marks, grid fields.
std::vector<Primitive> sheet_frame(const SheetSize& size);

/// `document`: its type; `note`: what is said of symbols and units.
Panel title_block(const Circuit& circuit, const SheetSize& size,
                  std::string_view document = "Hydraulic circuit diagram",
                  std::string_view note = "Symbols drawn after ISO 1219-1:2012. No scale.");
PanelList parts_list(const Circuit& circuit);
/// What reviewers have remarked; empty where they have not.
PanelList remarks_list(const Circuit& circuit);
/// What the legend has to explain besides lines.
struct LegendNeeds {
    bool frames = false;
    bool findings = false;
    bool values = false;
};
PanelList legend(const Circuit& circuit, const LegendNeeds& needs);
PanelList cautions();

/// Where panels stand: in columns of the title block's width from the right edge, from the bottom
/// up to what the circuit's drawing (`ink`, moved by `offset`) leaves free. Nothing where they do
/// not fit.
struct PlacedPanel {
    const Panel* panel = nullptr;
    Point at = {};  ///< on the sheet
};
std::optional<std::vector<PlacedPanel>> arrange_panels(std::span<const GridBox> ink,
                                                       GridPoint offset, const SheetSize& size,
                                                       const Panel& title,
                                                       std::span<const PanelList> lists);

/// Moves the layout to its place on the sheet, in the middle of what the lists leave; false where
/// they do not fit together.
bool place_on_sheet(const Circuit& circuit, Layout& layout, const SheetSize& size,
                    std::span<const PanelList> lists);

/// Moves the layout to its place on the smallest sheet that holds it and its lists, or on the one
/// that is named. False where it does not fit.
bool fit_to_sheet(const Circuit& circuit, Layout& layout, std::string_view wish);
/// What to say then.
std::length_error too_large(const Circuit& circuit, const Layout& layout, std::string_view wish);

/// Boxes of all that the layout covers, quarter modules.
std::vector<GridBox> ink_of(const Circuit& circuit, const Layout& layout);

}  // namespace loopwright
