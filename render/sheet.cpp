#include <loopwright/render/hoses.h>
#include <loopwright/render/sheet.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

namespace loopwright {

namespace {

constexpr SheetSize sizes[] = {{"A4", 210.0, 297.0},
                               {"A3", 420.0, 297.0},
                               {"A2", 594.0, 420.0},
                               {"A1", 841.0, 594.0},
                               {"A0", 1189.0, 841.0}};

constexpr double quarter_module = 0.625;  // mm
constexpr double frame_pen = 0.7;
constexpr double grid_pen = 0.35;
constexpr double field = 50.0;
constexpr double field_letter = 3.5;
constexpr double edge_zone = 5.0;
// Between the circuit and the frame or a list.
constexpr double air = 7.5;

void add(std::vector<Primitive>& out, std::vector<Point> points, double width,
         bool closed = false) {
    out.push_back(
        {Polyline{.points = std::move(points), .closed = closed, .pen = {.width = width}}, {}});
}

void add_field_name(std::vector<Primitive>& out, Point centre, std::string text) {
    out.push_back({Text{.at = {centre.x, centre.y + field_letter / 2},
                        .text = std::move(text),
                        .height = field_letter,
                        .anchor = Anchor::middle},
                   {}});
}

/// Borders of the fields along one edge: 50 mm from the centre, ends cut off.
std::vector<double> field_borders(double from, double to) {
    std::vector<double> borders{from, to};
    const double centre = (from + to) / 2;
    for (double at = centre; at < to; at += field) borders.push_back(at);
    for (double at = centre - field; at > from; at -= field) borders.push_back(at);
    std::sort(borders.begin(), borders.end());
    borders.erase(std::unique(borders.begin(), borders.end()), borders.end());
    return borders;
}

/// A, B, C ... without I and O.
std::string field_letter_of(std::size_t index) {
    constexpr std::string_view letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    return {letters[index % letters.size()]};
}

}  // namespace

std::span<const SheetSize> sheet_sizes() { return sizes; }

const SheetSize* find_sheet(std::string_view name) {
    for (const SheetSize& size : sizes)
        if (size.name == name) return &size;
    return nullptr;
}

std::vector<Primitive> sheet_frame(const SheetSize& size) {
    std::vector<Primitive> out;
    const double left = margin_left;
    const double top = margin;
    const double right = size.width - margin;
    const double bottom = size.height - margin;
    add(out, {{0, 0}, {size.width, 0}, {size.width, size.height}, {0, size.height}}, thin, true);
    add(out, {{left, top}, {right, top}, {right, bottom}, {left, bottom}}, frame_pen, true);
    // The grid's outer border and its fields.
    add(out,
        {{left - edge_zone, top - edge_zone},
         {right + edge_zone, top - edge_zone},
         {right + edge_zone, bottom + edge_zone},
         {left - edge_zone, bottom + edge_zone}},
        grid_pen, true);
    const std::vector<double> across = field_borders(left, right);
    for (std::size_t i = 0; i + 1 < across.size(); ++i) {
        const double middle = (across[i] + across[i + 1]) / 2;
        add_field_name(out, {middle, top - edge_zone / 2}, fmt::format("{}", i + 1));
        add_field_name(out, {middle, bottom + edge_zone / 2}, fmt::format("{}", i + 1));
        if (i == 0) continue;
        add(out, {{across[i], top - edge_zone}, {across[i], top}}, grid_pen);
        add(out, {{across[i], bottom}, {across[i], bottom + edge_zone}}, grid_pen);
    }
    const std::vector<double> down = field_borders(top, bottom);
    for (std::size_t i = 0; i + 1 < down.size(); ++i) {
        const double middle = (down[i] + down[i + 1]) / 2;
        add_field_name(out, {left - edge_zone / 2, middle}, field_letter_of(i));
        add_field_name(out, {right + edge_zone / 2, middle}, field_letter_of(i));
        if (i == 0) continue;
        add(out, {{left - edge_zone, down[i]}, {left, down[i]}}, grid_pen);
        add(out, {{right, down[i]}, {right + edge_zone, down[i]}}, grid_pen);
    }
    // Centring marks: from the edge zone 5 mm into the drawing space.
    const double cx = (left + right) / 2;
    const double cy = (top + bottom) / 2;
    add(out, {{cx, top - edge_zone}, {cx, top + edge_zone}}, frame_pen);
    add(out, {{cx, bottom + edge_zone}, {cx, bottom - edge_zone}}, frame_pen);
    add(out, {{left - edge_zone, cy}, {left + edge_zone, cy}}, frame_pen);
    add(out, {{right + edge_zone, cy}, {right - edge_zone, cy}}, frame_pen);
    return out;
}

namespace {

GridBox grid_box_of(GridPoint a, GridPoint b) {
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

}  // namespace

std::vector<GridBox> ink_of(const Circuit& circuit, const Layout& layout) {
    std::vector<GridBox> boxes;
    for (const Wire& wire : layout.wires) {
        boxes.push_back(grid_box_of(wire.from, wire.to));
        if (wire.sag != 0) boxes.push_back(sag_box(wire));
    }
    for (const ShaftRun& run : layout.shafts) boxes.push_back(grid_box_of(run.from, run.to));
    for (const LabelBox& label : layout.labels) boxes.push_back(label.box);
    for (const FrameBox& frame : layout.frames) boxes.push_back(frame.box);
    for (const Placed& placed : layout.placed) {
        const Component& component = circuit.components[placed.component];
        const Box body =
            turned(placed.port == none ? symbol_of(circuit, component)
                                       : local_reservoir(circuit, component, placed.port),
                   placed.attitude)
                .body;
        boxes.push_back({{placed.at.x + static_cast<int>(std::floor(body.left * 4)),
                          placed.at.y + static_cast<int>(std::floor(body.top * 4))},
                         {placed.at.x + static_cast<int>(std::ceil(body.right * 4)),
                          placed.at.y + static_cast<int>(std::ceil(body.bottom * 4))}});
    }
    return boxes;
}

namespace {

/// Room for panels below and beside the circuit.
struct PanelColumn {
    double left = 0.0;
    double top = 0.0;     // nothing may stand above
    double bottom = 0.0;  // the next panel ends here; columns fill from the bottom up
    bool empty = true;

    double room() const { return bottom - top - panel_gap; }
};

std::vector<PanelColumn> panel_columns(std::span<const GridBox> ink, GridPoint offset,
                                       const SheetSize& size) {
    std::vector<PanelColumn> columns;
    for (double left = size.width - margin - panel_width; left >= margin_left - 1e-6;
         left -= panel_width + panel_gap) {
        double top = margin;
        for (const GridBox& box : ink) {
            const double from = margin_left + (box.from.x + offset.x) * quarter_module - air;
            const double to = margin_left + (box.to.x + offset.x) * quarter_module + air;
            if (from < left + panel_width && to > left)
                top = std::max(top, margin + (box.to.y + offset.y) * quarter_module + air);
        }
        // Clear of the frame and its centring mark; the title block stays in its corner.
        const double middle = (margin_left + size.width - margin) / 2;
        const bool marked = !columns.empty() && left < middle && left + panel_width > middle;
        const double clear = columns.empty() ? 0.0 : marked ? edge_zone + 1.0 : list_inset;
        columns.push_back({left, top, size.height - margin - clear});
    }
    return columns;
}

enum class Filling : std::uint8_t {
    level,   ///< columns about equally high, so that the circuit has room above
    packed,  ///< a list where it leaves least room, so that long ones find theirs
};

/// The column for a list of that height; what does not fit goes on in the next one.
PanelColumn& column_for(std::vector<PanelColumn>& columns, double height, Filling filling) {
    PanelColumn* best = &columns.front();
    for (PanelColumn& column : columns) {
        const bool takes_all = column.room() >= height;
        const bool best_takes_all = best->room() >= height;
        const bool closer = filling == Filling::packed && takes_all && best_takes_all
                                ? column.room() < best->room()
                                : column.room() > best->room();
        if (closer) best = &column;
    }
    return *best;
}

std::optional<std::vector<PlacedPanel>> fill_columns(std::vector<PanelColumn> columns,
                                                     const Panel& title,
                                                     std::span<const PanelList> lists,
                                                     Filling filling) {
    if (columns.empty()) return std::nullopt;
    std::vector<PlacedPanel> placed;
    columns.front().bottom -= title.height;
    columns.front().empty = false;
    if (columns.front().bottom < columns.front().top) return std::nullopt;
    placed.push_back({&title, {columns.front().left, columns.front().bottom}});
    for (const PanelList& list : lists) {
        std::size_t row = 0;
        while (row < list.rows.size()) {
            double all = list.heading.height;
            for (std::size_t r = row; r < list.rows.size(); ++r) all += list.rows[r].height;
            PanelColumn& column = column_for(columns, all, filling);
            double height = list.heading.height;
            std::size_t end = row;
            while (end < list.rows.size() && height + list.rows[end].height <= column.room())
                height += list.rows[end++].height;
            if (end == row || (list.together && end < list.rows.size())) return std::nullopt;
            column.bottom -= height + (column.empty ? 0.0 : panel_gap);
            column.empty = false;
            double y = column.bottom;
            placed.push_back({&list.heading, {column.left, y}});
            y += list.heading.height;
            for (; row < end; ++row) {
                placed.push_back({&list.rows[row], {column.left, y}});
                y += list.rows[row].height;
            }
        }
    }
    return placed;
}

}  // namespace

std::optional<std::vector<PlacedPanel>> arrange_panels(std::span<const GridBox> ink,
                                                       GridPoint offset, const SheetSize& size,
                                                       const Panel& title,
                                                       std::span<const PanelList> lists) {
    const std::vector<PanelColumn> columns = panel_columns(ink, offset, size);
    auto placed = fill_columns(columns, title, lists, Filling::level);
    return placed ? placed : fill_columns(columns, title, lists, Filling::packed);
}

namespace {

void move_layout(Layout& layout, GridPoint by) {
    const auto move = [by](GridPoint& p) { p = {p.x + by.x, p.y + by.y}; };
    for (Placed& placed : layout.placed) move(placed.at);
    for (Wire& wire : layout.wires) {
        move(wire.from);
        move(wire.to);
    }
    for (Joint& joint : layout.joints) move(joint.at);
    for (ShaftRun& run : layout.shafts) {
        move(run.from);
        move(run.to);
    }
    for (LabelBox& label : layout.labels) {
        move(label.box.from);
        move(label.box.to);
        for (GridPoint& p : label.leader) move(p);
    }
    for (FrameBox& frame : layout.frames) {
        move(frame.box.from);
        move(frame.box.to);
    }
}

GridBox box_round(std::span<const GridBox> ink) {
    GridBox box = ink.empty() ? GridBox{} : ink.front();
    for (const GridBox& other : ink) {
        box.from = {std::min(box.from.x, other.from.x), std::min(box.from.y, other.from.y)};
        box.to = {std::max(box.to.x, other.to.x), std::max(box.to.y, other.to.y)};
    }
    return box;
}

int whole_modules(double mm) { return static_cast<int>(std::floor(mm / 2.5)) * 4; }

}  // namespace

bool place_on_sheet(const Circuit& circuit, Layout& layout, const SheetSize& size,
                    std::span<const PanelList> lists) {
    const std::vector<GridBox> ink = ink_of(circuit, layout);
    const GridBox box = box_round(ink);
    const double width = (box.to.x - box.from.x) * quarter_module;
    const double height = (box.to.y - box.from.y) * quarter_module;
    const double wide = size.width - margin_left - margin;
    const double high = size.height - 2 * margin;
    if (width + 2 * air > wide || height + 2 * air > high) return false;
    const Panel title = title_block(circuit, size);
    // In the middle of the width if the lists fit below, else to the left of them.
    for (const double x : {(wide - width) / 2, air}) {
        GridPoint offset{whole_modules(x) - box.from.x / 4 * 4,
                         whole_modules(air) - whole_modules(box.from.y * quarter_module)};
        if (!arrange_panels(ink, offset, size, title, lists)) continue;
        // Down into the middle of what is free.
        for (int down = whole_modules(high - height - 2 * air); down > 0; down -= 4) {
            const GridPoint lower{offset.x, offset.y + down};
            if (!arrange_panels(ink, lower, size, title, lists)) continue;
            offset.y += down / 8 * 4;
            break;
        }
        move_layout(layout, offset);
        layout.sheet = size.name;
        return true;
    }
    return false;
}

bool fit_to_sheet(const Circuit& circuit, Layout& layout, std::string_view wish) {
    const std::vector<PanelList> lists{
        parts_list(circuit), legend(circuit, {.frames = !layout.frames.empty()}), cautions()};
    return std::any_of(std::begin(sizes), std::end(sizes), [&](const SheetSize& size) {
        return (wish.empty() || size.name == wish) && place_on_sheet(circuit, layout, size, lists);
    });
}

std::length_error too_large(const Circuit& circuit, const Layout& layout, std::string_view wish) {
    const GridBox box = box_round(ink_of(circuit, layout));
    return std::length_error(
        fmt::format("the drawing takes {:.0f} mm x {:.0f} mm and its lists: more "
                    "than a sheet {} holds",
                    (box.to.x - box.from.x) * quarter_module,
                    (box.to.y - box.from.y) * quarter_module, wish.empty() ? "A0" : wish));
}

}  // namespace loopwright
