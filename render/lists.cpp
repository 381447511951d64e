#include <algorithm>
#include <string>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/draw_values.h>
#include <loopwright/render/hoses.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/nets.h>
#include <loopwright/render/sheet.h>
#include <loopwright/render/symbol.h>
#include <loopwright/render/text_metrics.h>
#include <loopwright/render/writers/report.h>

namespace loopwright {

namespace {

constexpr double row_text = 2.5;
constexpr double module = 2.5;
// The legend: samples on the left of their words, two items in a row where they fit.
constexpr double sample_width = 16.0;
constexpr double after_sample = 19.0;

std::string joined(const std::vector<std::string>& lines, std::size_t first) {
    std::string out;
    for (std::size_t i = first; i < lines.size(); ++i) {
        if (!out.empty()) out += "; ";
        out += lines[i];
    }
    return out;
}

std::vector<std::string> hose_figures(const Line& hose) {
    std::vector<std::string> figures;
    const auto add = [&](std::string_view before, const auto& figure, Dimension dimension) {
        if (figure)
            figures.push_back(
                fmt::format("{}{}", before, format_quantity(figure->si(), dimension)));
    };
    add("\u00D8 ", hose.bore, Dimension::length);
    add("", hose.length, Dimension::length);
    add("", hose.rating, Dimension::pressure);
    add("bursts at ", hose.burst_pressure, Dimension::pressure);
    add("bend radius ", hose.min_bend_radius, Dimension::length);
    return figures;
}

constexpr std::string_view caution_texts[] = {
    // The long ones are in pieces. NOLINTNEXTLINE(bugprone-suspicious-missing-comma)
    "This sheet supports and does not replace review by a competent person. Local codes and the "
    "maker's instructions govern.",
    "Oil under pressure can pierce the skin: never search for a leak by hand; see a doctor at once "
    "after an injection.",
    "Pressure can stay in lines and accumulators after the engine has stopped: relieve it and "
    "prove it gone before opening anything.",
    "Oil and surfaces can be hot enough to burn.",
    "The machine can move unexpectedly: hold or lower the load, chock the wheels, stop the prime "
    "mover, lock it out and tag it before work.",
};

}  // namespace

PanelList parts_list(const Circuit& circuit) {
    constexpr double code = list_inset;
    constexpr double title = 22.0;
    constexpr double kind = 63.0;
    constexpr double figures = 103.0;
    PanelList list{.heading = list_heading("Parts list")};
    const auto add = [&](std::string_view name, std::string_view words, std::string_view what,
                         const std::string& data) {
        Panel row{};
        add_text(row, {code, 3.4}, fitted(name, row_text, title - code - 1.5), row_text);
        add_text(row, {title, 3.4}, fitted(words, row_text, kind - title - 1.5), row_text);
        add_text(row, {kind, 3.4}, fitted(what, row_text, figures - kind - 1.5), row_text);
        const double last =
            add_paragraph(row, {figures, 3.4}, data, list_right - figures, row_text);
        row.height = std::max(3.4, last) + 1.2;
        add_line(row, {0.0, row.height}, {panel_width, row.height}, 0.13);
        list.rows.push_back(std::move(row));
    };
    for (const Component& component : circuit.components) {
        if (is_joint(component)) continue;
        std::vector<std::string> lines = label_lines(circuit, component);
        const std::string name = lines.empty() ? std::string(component.path) : lines.front();
        const bool titled = lines.size() > 1 && lines[1] == component.title;
        add(name, component.title, component.kind->title, joined(lines, titled ? 2 : 1));
    }
    // Hose assemblies are listed, pipes are not (drawing-standard notes, 3.2).
    for (const Line& line : circuit.lines)
        if (line.flexible) add(line.path, line.title, "hose", joined(hose_figures(line), 0));
    return list;
}

PanelList remarks_list(const Circuit& circuit) {
    PanelList list;
    if (circuit.remarks.empty()) return list;
    list.heading = list_heading("Remarks");
    for (const Remark& remark : circuit.remarks) {
        Panel row = list_paragraph(remark_text(remark));
        add_line(row, {0.0, row.height}, {panel_width, row.height}, 0.13);
        list.rows.push_back(std::move(row));
    }
    return list;
}

PanelList legend(const Circuit& circuit, const LegendNeeds& needs) {
    struct Item {
        std::string text = {};
        Panel sample = {};
    };
    std::vector<Item> items;
    const auto add = [&items](std::string text) -> Panel& {
        items.push_back({std::move(text), {}});
        return items.back().sample;
    };
    add_line(add("working, charge, suction and return line"), {0, 0}, {sample_width, 0});
    add_line(add("drain, pilot or flushing line"), {0, 0}, {sample_width, 0}, thin, Dash::dashed);
    Panel& joint = add("lines joined");
    add_line(joint, {0, 0}, {sample_width, 0});
    add_line(joint, {8, 0}, {8, 2});
    joint.primitives.push_back(
        {Arc{.centre = {8, 0}, .radius = 0.375 * module, .fill = Paint::ink}, {}});
    Panel& cross = add("lines that cross, not joined");
    add_line(cross, {0, 0}, {sample_width, 0});
    add_line(cross, {8, -2}, {8, 2});
    if (std::any_of(circuit.lines.begin(), circuit.lines.end(),
                    [](const Line& line) { return line.flexible; })) {
        Panel& hose = add("hose");
        Arc arc = hose_arc({3, -1}, {13, -1}, hose_sag * module);
        arc.pen.width = thin;
        hose.primitives.push_back({arc, {}});
        for (const double x : {3.0, 13.0}) {
            hose.primitives.push_back(
                {Arc{.centre = {x, -1}, .radius = 0.375 * module, .fill = Paint::ink}, {}});
            add_line(hose, {x < 8 ? 0.0 : x, -1}, {x < 8 ? x : sample_width, -1});
        }
    }
    if (!circuit.shafts.empty()) {
        Panel& shaft = add("shaft");
        add_line(shaft, {0, -0.625}, {sample_width, -0.625});
        add_line(shaft, {0, 0.625}, {sample_width, 0.625});
    }
    if (needs.frames)
        add_line(add("boundary of an assembly"), {0, 0}, {sample_width, 0}, thin, Dash::chain);
    if (needs.findings) {
        Panel& band = add("way that a finding speaks of");
        band.primitives.push_back({Polyline{.points = {{0, 0}, {sample_width, 0}},
                                            .pen = {.paint = Paint::band, .width = 2.5}},
                                   {}});
        add_line(band, {0, 0}, {sample_width, 0});
    }
    if (needs.values) {
        add_value_sample(add("computed figure").primitives, {0, -1.6}, "213 bar");
        Panel& flow = add("which way oil flows");
        add_line(flow, {0, 0}, {sample_width, 0});
        flow.primitives.push_back(flow_head({9.25, 0}, {1, 0}));
    }
    PanelList list{.heading = list_heading("Legend"), .together = true};
    constexpr double half = (list_right - list_inset) / 2;
    double x = list_right;
    for (const Item& item : items) {
        const double width = after_sample + text_width(item.text, normal_text) + 3.0;
        const double taken = width <= half ? half : 2 * half;
        if (x + taken > list_right) {
            x = list_inset;
            list.rows.push_back({.height = 5.5});
        }
        Panel& row = list.rows.back();
        append_moved(row.primitives, item.sample.primitives, {x, 2.6});
        add_text(row, {x + after_sample, 3.6},
                 fitted(item.text, normal_text, list_right - x - after_sample), normal_text);
        x += taken;
    }
    if (needs.findings)
        list.rows.push_back(list_paragraph(
            "Findings by their number: triangle error, square warning, circle note, diamond not "
            "decided for want of data."));
    list.rows.push_back(list_paragraph(
        "Valves and controls are drawn at rest. Reservoir marks of one name are one reservoir."));
    return list;
}

PanelList cautions() {
    constexpr double indent = list_inset + 4.0;
    PanelList list{.heading = list_heading("Caution"), .together = true};
    for (const std::string_view text : caution_texts) {
        Panel row{};
        add_text(row, {list_inset, 3.4}, "-", normal_text);
        row.height =
            add_paragraph(row, {indent, 3.4}, text, list_right - indent, normal_text) + 1.2;
        for (Primitive& primitive : row.primitives) primitive.tag.role = Role::caution;
        list.rows.push_back(std::move(row));
    }
    return list;
}

}  // namespace loopwright
