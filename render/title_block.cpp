#include <string_view>

#include <fmt/format.h>

#include <loopwright/render/label_text.h>
#include <loopwright/render/sheet.h>

namespace loopwright {

namespace {

constexpr double row_height = 10.0;
constexpr double module = 2.5;

/// The largest usual height in which the value is no wider than its field.
double height_for(std::string_view value, double wanted, double width) {
    for (const double height : {5.0, large_text, normal_text, small_text})
        if (height <= wanted && text_width_m(value, height) * module <= width) return height;
    return small_text;
}

struct Field {
    std::string_view name = {};
    std::string value = {};
    Point from = {};
    Point to = {};
    double text = normal_text;
};

void add_field(Panel& panel, const Field& field) {
    constexpr double inset = 1.5;
    const double width = field.to.x - field.from.x - 2 * inset;
    add_box(panel, field.from, field.to);
    add_text(panel, {field.from.x + inset, field.from.y + 1.0 + small_text}, field.name,
             small_text);
    const double height = height_for(field.value, field.text, width);
    add_text(panel, {field.from.x + inset, field.to.y - 1.8}, fitted(field.value, height, width),
             height);
}

}  // namespace

Panel title_block(const Circuit& circuit, const SheetSize& size, std::string_view document,
                  std::string_view note) {
    const CircuitTitle& title = circuit.title;
    const auto text = [](std::string_view view) { return std::string(view); };
    constexpr double first = 60.0;
    constexpr double second = 135.0;
    constexpr double third = panel_width;
    Panel panel{.height = 4 * row_height};
    const Field fields[] = {
        {"Document type", text(document), {0, 0}, {first, row_height}},
        {"Creator", text(title.creator), {first, 0}, {97.5, row_height}},
        {"Approved by", text(title.approver), {97.5, 0}, {second, row_height}},
        {"Language", "en", {second, 0}, {157.5, row_height}},
        {"Size", std::string(size.name), {157.5, 0}, {third, row_height}},
        {"Legal owner", text(title.owner), {0, row_height}, {first, 3 * row_height}, large_text},
        {"Title", text(title.title), {first, row_height}, {second, 3 * row_height}, 5.0},
        {"Drawing number",
         text(title.drawing),
         {second, row_height},
         {third, 2 * row_height},
         large_text},
        {"Rev.", text(title.revision), {second, 2 * row_height}, {147.5, 3 * row_height}},
        {"Date of issue", text(title.date), {147.5, 2 * row_height}, {third, 3 * row_height}},
        {"Symbols and units", text(note), {0, 3 * row_height}, {second, 4 * row_height}},
        {"Sheet", "1 / 1", {second, 3 * row_height}, {third, 4 * row_height}},
    };
    for (const Field& field : fields) add_field(panel, field);
    add_box(panel, {0, 0}, {panel_width, 4 * row_height}, thick);
    return panel;
}

}  // namespace loopwright
