#include <loopwright/render/draw_values.h>

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include <loopwright/render/annotate.h>
#include <loopwright/render/label_text.h>

namespace loopwright {

namespace {

constexpr double module = 2.5;              // mm
constexpr double ground_in = 0.1 * module;  // the ground is so much smaller than its room
constexpr double leader_pen = 0.18;
// Arrow head (table of symbol metrics, house rule).
constexpr double head_length = 1.0 * module;
constexpr double head_half_width = 0.3 * module;

void add_ground(std::vector<Primitive>& out, Point from, Point to, Tag tag) {
    out.push_back({Polyline{.points = {from, {to.x, from.y}, to, {from.x, to.y}},
                            .closed = true,
                            .pen = {.paint = Paint::none},
                            .fill = Paint::ground},
                   tag});
}

void add_value(std::vector<Primitive>& out, const PlacedValue& value, Tag tag) {
    const Point from = on_sheet(value.box.from);
    const Point to = on_sheet(value.box.to);
    add_ground(out, {from.x + ground_in, from.y + ground_in}, {to.x - ground_in, to.y - ground_in},
               tag);
    // In the middle of the height that was rounded up to the grid.
    const double text =
        line_text_height + (static_cast<double>(value.rows.size()) - 1.0) * value_pitch * module;
    double baseline = (from.y + to.y - text) / 2 + line_text_height;
    for (const std::string& row : value.rows) {
        out.push_back({Text{.at = {from.x + value_inset * module, baseline},
                            .text = row,
                            .height = line_text_height,
                            .paint = Paint::value},
                       tag});
        baseline += value_pitch * module;
    }
    if (value.leader.size() < 2) return;
    std::vector<Point> points;
    for (const GridPoint& p : value.leader) points.push_back(on_sheet(p));
    out.push_back(
        {Polyline{.points = std::move(points), .pen = {.paint = Paint::value, .width = leader_pen}},
         tag});
}

}  // namespace

Primitive flow_head(Point tip, Point way) {
    const Point base{tip.x - way.x * head_length, tip.y - way.y * head_length};
    const Point side{way.y * head_half_width, way.x * head_half_width};
    return {
        Polyline{
            .points = {tip, {base.x + side.x, base.y + side.y}, {base.x - side.x, base.y - side.y}},
            .closed = true,
            .pen = {.paint = Paint::none},
            .fill = Paint::value},
        {.role = Role::computed}};
}

void add_value_sample(std::vector<Primitive>& out, Point at, std::string_view text) {
    const Tag tag{.role = Role::computed};
    const double inset = value_inset * module;
    add_ground(out, at,
               {at.x + text_width_m(text, line_text_height) * module + 2 * inset,
                at.y + line_text_height + 2 * (inset - ground_in)},
               tag);
    out.push_back({Text{.at = {at.x + inset, at.y + line_text_height + inset - ground_in},
                        .text = std::string(text),
                        .height = line_text_height,
                        .paint = Paint::value},
                   tag});
}

std::vector<Group> value_groups(const Circuit& circuit, const PlacedValues& placed) {
    std::map<Index, Group> components;
    std::map<Index, Group> lines;
    const auto group_of = [&](Index component, Index line) -> Group& {
        const bool is_line = component == none;
        Group& group = is_line ? lines[line] : components[component];
        const std::string_view path =
            is_line ? circuit.lines[line].path : circuit.components[component].path;
        group.tag = {.role = Role::computed, .component = component, .line = line};
        group.title = std::string(path);
        group.id = fmt::format("computed-{}", path);
        std::replace(group.id.begin(), group.id.end(), '/', '.');
        return group;
    };
    for (const PlacedValue& value : placed.values) {
        Group& group = group_of(value.component, value.line);
        add_value(group.primitives, value, group.tag);
    }
    for (const FlowArrow& arrow : placed.arrows) {
        Group& group = group_of(none, arrow.line);
        const Point tip = on_sheet(arrow.tip);
        const Point from = on_sheet(arrow.from);
        const auto sign = [](double v) { return static_cast<double>((v > 0.0) - (v < 0.0)); };
        Primitive head = flow_head(tip, {sign(tip.x - from.x), sign(tip.y - from.y)});
        head.tag = group.tag;
        group.primitives.push_back(std::move(head));
    }
    std::vector<Group> groups;
    for (auto* some : {&components, &lines})
        for (auto& [index, group] : *some) groups.push_back(std::move(group));
    return groups;
}

}  // namespace loopwright
