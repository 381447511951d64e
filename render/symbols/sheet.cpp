// All symbols on one sheet: what `kinds --symbols` shows, and what a person checks by eye.

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include <loopwright/parser/reader.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/symbols/variants.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

using namespace metrics;

namespace {

// mm
constexpr double sheet_width = 594.0;
constexpr double border = 15.0;
constexpr double column_gap = 8.0;
constexpr double row_gap = 9.0;
constexpr double caption_gap = 3.0;
constexpr double caption_pitch = 4.0;
constexpr double caption_mm = 2.5;
constexpr double heading_mm = 5.0;

struct Cell {
    std::vector<std::string> caption = {};
    Circuit circuit = {};
    Symbol symbol = {};
    Box ink = {};  ///< M
    double width = 0.0;
    double height = 0.0;  ///< without the caption
};

Cell cell_of(const SymbolVariant& variant) {
    ReadResult read = read_circuit_text(
        fmt::format("<circuit format=\"1\">{}</circuit>", variant.xml), "symbols");
    if (!read.circuit || read.circuit->components.empty())
        throw std::logic_error("the variant cannot be read: " + std::string(variant.xml));
    Cell cell{.circuit = std::move(*read.circuit)};
    const Component& component = cell.circuit.components.front();
    cell.symbol = variant.local_mark
                      ? local_reservoir(cell.circuit, component, component.ports.begin)
                      : symbol_of(cell.circuit, component);
    cell.caption = {std::string(component.kind->title)};
    if (!variant.words.empty()) cell.caption.emplace_back(variant.words);
    cell.ink = cell.symbol.body;
    for (const PortAnchor& port : cell.symbol.ports) {
        cell.ink.left = std::min({cell.ink.left, port.at.x, port.letter.x - 1.0});
        cell.ink.right = std::max({cell.ink.right, port.at.x, port.letter.x + 1.0});
        cell.ink.top = std::min(cell.ink.top, port.at.y);
        cell.ink.bottom = std::max(cell.ink.bottom, port.at.y);
    }
    cell.width = (cell.ink.right - cell.ink.left) * module_mm;
    cell.height = (cell.ink.bottom - cell.ink.top) * module_mm;
    for (const std::string& line : cell.caption)
        cell.width = std::max(cell.width, text_width(line, caption_mm));
    return cell;
}

void add_text(Group& group, Point at, std::string text, double height, Role role) {
    group.primitives.push_back(
        {Text{.at = at, .text = std::move(text), .height = height, .anchor = Anchor::middle},
         {.role = role}});
}

/// The symbol with its origin at a point of the sheet, M to mm.
void add_symbol(Group& group, const Cell& cell, Point origin) {
    const auto on_sheet = [origin](Point p) {
        return Point{origin.x + p.x * module_mm, origin.y + p.y * module_mm};
    };
    for (Primitive primitive : cell.symbol.primitives) {
        if (auto* line = std::get_if<Polyline>(&primitive.shape)) {
            for (Point& p : line->points) p = on_sheet(p);
        } else if (auto* arc = std::get_if<Arc>(&primitive.shape)) {
            arc->centre = on_sheet(arc->centre);
            arc->radius *= module_mm;
        } else {
            Text& text = std::get<Text>(primitive.shape);
            text.at = on_sheet(text.at);
        }
        group.primitives.push_back(std::move(primitive));
    }
    for (const PortAnchor& port : cell.symbol.ports)
        add_text(group, on_sheet(port.letter), std::string(cell.circuit.ports[port.port].letter),
                 letter_mm, Role::port_letter);
}

}  // namespace

Drawing symbol_sheet() {
    Drawing sheet{.width = sheet_width,
                  .title = "Symbols",
                  .description =
                      "All kinds of components with their variants, symbols drawn after "
                      "ISO 1219-1:2012"};
    Group heading{.id = "heading"};
    heading.primitives.push_back({Text{.at = {border, border + heading_mm},
                                       .text = "Symbols, drawn after ISO 1219-1:2012",
                                       .height = heading_mm},
                                  {}});
    sheet.groups.push_back(std::move(heading));

    std::vector<Cell> cells;
    for (const SymbolVariant& variant : symbol_variants()) cells.push_back(cell_of(variant));
    double top = border + heading_mm + row_gap;
    std::size_t first = 0;
    while (first < cells.size()) {
        std::size_t last = first;
        double width = 0.0;
        double height = 0.0;
        while (last < cells.size() && width + cells[last].width <= sheet_width - 2 * border) {
            width += cells[last].width + column_gap;
            height = std::max(height, cells[last].height);
            ++last;
        }
        double x = border;
        for (std::size_t i = first; i < last; ++i) {
            const Cell& cell = cells[i];
            Group group{.tag = {.role = Role::symbol},
                        .id = fmt::format("symbol-{}", i + 1),
                        .title = fmt::format("{}", fmt::join(cell.caption, ", "))};
            const double middle = x + cell.width / 2;
            add_symbol(group, cell,
                       {middle - (cell.ink.left + cell.ink.right) / 2 * module_mm,
                        top + (height - cell.height) / 2 - cell.ink.top * module_mm});
            double baseline = top + height + caption_gap + caption_mm;
            for (const std::string& line : cell.caption) {
                add_text(group, {middle, baseline}, line, caption_mm, Role::value);
                baseline += caption_pitch;
            }
            sheet.groups.push_back(std::move(group));
            x += cell.width + column_gap;
        }
        top += height + caption_gap + 2 * caption_pitch + row_gap;
        first = last;
    }
    sheet.height = top - row_gap + border;
    return sheet;
}

}  // namespace loopwright
