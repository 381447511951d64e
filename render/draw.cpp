#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>

#include <fmt/format.h>

#include <loopwright/render/annotate.h>
#include <loopwright/render/draw_shafts.h>
#include <loopwright/render/draw_values.h>
#include <loopwright/render/hoses.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/nets.h>
#include <loopwright/render/point_values.h>
#include <loopwright/render/render.h>
#include <loopwright/render/sheet_lists.h>

namespace loopwright {

namespace {

constexpr double module = 2.5;  // mm
constexpr double joint_radius = 0.375 * module;
constexpr double leader_pen = 0.18;

class SheetDrawer {
  public:
    SheetDrawer(const Circuit& circuit, const Layout& layout, const Told& told)
        : circuit_(circuit),
          layout_(layout),
          told_(told),
          findings_(told.findings),
          symbols_(drawn_symbols(circuit, layout)),
          wires_(layout, symbols_) {
        arrange_sheet();
    }

    /// The figures of the point in their places.
    PlacedValues values() const {
        if (told_.point == nullptr) return {};
        const double x = margin_left / module;
        const double y = margin / module;
        const Box extent{0, 0, (size_.width - margin) / module - x,
                         (size_.height - margin) / module - y};
        // Clear of the frame and its centring marks.
        constexpr double edge = 2.5;
        std::vector<Box> taken{{0, 0, extent.right, edge},
                               {0, extent.bottom - edge, extent.right, extent.bottom},
                               {0, 0, edge, extent.bottom},
                               {extent.right - edge, 0, extent.right, extent.bottom}};
        for (const PlacedPanel& panel : panels_)
            taken.push_back({panel.at.x / module - x - 1.0, panel.at.y / module - y - 1.0,
                             (panel.at.x + panel.panel->width) / module - x + 1.0,
                             (panel.at.y + panel.panel->height) / module - y + 1.0});
        return place_values(circuit_, layout_, symbols_, *told_.point, extent, taken);
    }

    Drawing draw(const PlacedValues& values) {
        out_.title = std::string(circuit_.title.title);
        out_.description = fmt::format(
            "Hydraulic circuit diagram, symbols drawn after ISO 1219-1:2012, {} "
            "components, {} findings",
            circuit_.components.size(), findings_.size());
        if (told_.point != nullptr)
            out_.description +=
                fmt::format(", computed steady state of the duty point {}", told_.point->id);
        for (std::size_t f = 0; f < findings_.size(); ++f) {
            Group band =
                witness_band(circuit_, symbols_, wires_, *findings_[f], static_cast<Index>(f + 1));
            if (!band.primitives.empty()) out_.groups.push_back(std::move(band));
        }
        add_frames();
        add_lines();
        for (Group& group : shaft_groups(circuit_, layout_)) add(std::move(group));
        add_components();
        for (Group& group : value_groups(circuit_, values)) add(std::move(group));
        add_marks();
        add_sheet();
        return std::move(out_);
    }

  private:
    void add(Group group) {
        group.id = unique(group.id);
        out_.groups.push_back(std::move(group));
    }

    std::string unique(const std::string& wish) {
        std::string id = wish;
        for (int n = 2; !ids_.insert(id).second; ++n) id = fmt::format("{}-{}", wish, n);
        return id;
    }

    static std::string id_of(std::string_view type, std::string_view path) {
        std::string id = fmt::format("{}-{}", type, path);
        std::replace(id.begin(), id.end(), '/', '.');
        return id;
    }

    void arrange_sheet() {
        size_ = *find_sheet(layout_.sheet);
        title_ = title_block(circuit_, size_);
        lists_ = lists_of(circuit_, layout_, told_);
        panels_ = *arrange_panels(ink_of(circuit_, layout_), {}, size_, title_, lists_);
        out_.width = size_.width;
        out_.height = size_.height;
    }

    void add_frames() {
        std::map<Index, Group> groups;
        for (const FrameBox& frame : layout_.frames) {
            const Assembly& assembly = circuit_.assemblies[frame.assembly];
            Group& group = groups[frame.assembly];
            group.tag.role = Role::frame;
            group.id = id_of("assembly", assembly.path);
            group.title = std::string(assembly.path);
            group.description = std::string(assembly.title);
            const Point a = on_sheet(frame.box.from);
            const Point b = on_sheet(frame.box.to);
            group.primitives.push_back({Polyline{.points = {a, {b.x, a.y}, b, {a.x, b.y}},
                                                 .closed = true,
                                                 .pen = {.dash = Dash::chain}},
                                        group.tag});
        }
        for (const LabelBox& label : layout_.labels)
            if (label.assembly != none && groups.count(label.assembly) != 0)
                add_label(groups[label.assembly], label, small_text_of(frame_words(label)),
                          line_text_height);
        for (auto& [assembly, group] : groups) add(std::move(group));
    }

    /// The assembly's name, or the letter of its declared port.
    std::string frame_words(const LabelBox& label) const {
        const Assembly& assembly = circuit_.assemblies[label.assembly];
        for (const Assembly::DeclaredPort& declared : assembly.ports)
            if (declared.port == label.port) return std::string(declared.letter);
        return std::string(assembly.path);
    }

    void add_lines() {
        for (Index l = 0; l < circuit_.lines.size(); ++l) {
            const Line& line = circuit_.lines[l];
            Group group{.tag = {.role = Role::line, .line = l},
                        .id = id_of("line", line.path),
                        .title = std::string(line.path),
                        .description = std::string(line.title)};
            const Pen pen{.dash = is_dashed(circuit_, l) ? Dash::dashed : Dash::continuous};
            for (const Wire& wire : layout_.wires)
                if (wire.line == l) add_wire(group, wire, pen);
            for (const Joint& joint : layout_.joints)
                if (joint.line == l) add_dot(group, joint.at, Role::joint);
            for (const LabelBox& label : layout_.labels)
                if (label.line == l)
                    add_label(group, label, line_text(circuit_, line), line_text_height);
            if (!group.primitives.empty()) add(std::move(group));
        }
    }

    static void add_wire(Group& group, const Wire& wire, const Pen& pen) {
        const Point from = on_sheet(wire.from);
        const Point to = on_sheet(wire.to);
        if (wire.sag == 0) {
            group.primitives.push_back({Polyline{.points = {from, to}, .pen = pen}, group.tag});
            return;
        }
        Arc arc = hose_arc(from, to, wire.sag * hose_sag * module);
        arc.pen = pen;
        group.primitives.push_back({arc, group.tag});
        add_dot(group, wire.from, Role::line);
        add_dot(group, wire.to, Role::line);
    }

    static void add_dot(Group& group, GridPoint at, Role role) {
        group.primitives.push_back({Arc{.centre = on_sheet(at),
                                        .radius = joint_radius,
                                        .pen = {.paint = Paint::none},
                                        .fill = Paint::ink},
                                    {.role = role, .line = group.tag.line}});
    }

    void add_label(Group& group, const LabelBox& label, const LabelText& text, double height) {
        Point at = on_sheet(label.box.from);
        const Point to = on_sheet(label.box.to);
        if (label.right_aligned) at.x = to.x;
        double baseline = at.y + height;
        Tag tag = group.tag;
        if (tag.role == Role::symbol) tag.role = Role::designation;
        for (const std::string& line : text.lines) {
            if (baseline > to.y + 0.1) break;  // a box for the first lines only
            group.primitives.push_back(
                {Text{.at = {at.x, baseline},
                      .text = line,
                      .height = height,
                      .anchor = label.right_aligned ? Anchor::end : Anchor::start},
                 tag});
            baseline += label_pitch * module;
            if (tag.role == Role::designation) tag.role = Role::value;
        }
        if (label.leader.size() < 2) return;
        std::vector<Point> points;
        for (const GridPoint& p : label.leader) points.push_back(on_sheet(p));
        group.primitives.push_back(
            {Polyline{.points = std::move(points), .pen = {.width = leader_pen}},
             {.role = Role::value, .component = group.tag.component}});
    }

    void add_components() {
        std::set<Index> labelled;
        for (const DrawnSymbol& symbol : symbols_) {
            const Component& component = circuit_.components[symbol.placed.component];
            const Tag tag{.role = Role::symbol, .component = symbol.placed.component};
            Group group{.tag = tag,
                        .id = id_of("component", component.path),
                        .title = std::string(component.path),
                        .description = std::string(component.title)};
            const Point at = on_sheet(symbol.placed.at);
            add_symbol(group, symbol, at);
            for (const PortAnchor& port : symbol.shape.ports) {
                if (symbol.placed.port != none) break;
                group.primitives.push_back(
                    {Text{.at = {at.x + port.letter.x * module, at.y + port.letter.y * module},
                          .text = std::string(circuit_.ports[port.port].letter),
                          .height = label_text_height,
                          .anchor = Anchor::middle},
                     {.role = Role::port_letter,
                      .component = symbol.placed.component,
                      .port = port.port}});
            }
            // A reservoir's labels are all drawn with its first mark.
            if (labelled.insert(symbol.placed.component).second)
                for (const LabelBox& label : layout_.labels)
                    if (label.component == symbol.placed.component)
                        add_label(group, label, label_text(circuit_, component), label_text_height);
            add(std::move(group));
        }
    }

    static void add_symbol(Group& group, const DrawnSymbol& symbol, Point at) {
        std::vector<Primitive> scaled = symbol.shape.primitives;
        for (Primitive& primitive : scaled) {
            Tag tag = primitive.tag;
            tag.component = group.tag.component;
            primitive.tag = tag;
            if (auto* line = std::get_if<Polyline>(&primitive.shape)) {
                for (Point& p : line->points) p = {p.x * module, p.y * module};
            } else if (auto* arc = std::get_if<Arc>(&primitive.shape)) {
                arc->centre = {arc->centre.x * module, arc->centre.y * module};
                arc->radius *= module;
            } else if (auto* text = std::get_if<Text>(&primitive.shape)) {
                text->at = {text->at.x * module, text->at.y * module};
            }
        }
        append_moved(group.primitives, scaled, at);
    }

    void add_marks() {
        if (findings_.empty()) return;
        Occupancy room({0, 0, size_.width / module, size_.height / module});
        for (const Group& group : out_.groups)
            for (const Primitive& primitive : group.primitives) take(room, primitive);
        for (const DrawnSymbol& symbol : symbols_) {
            const Point at = on_sheet(symbol.placed.at);
            const Box& body = symbol.shape.body;
            room.take({at.x / module + body.left, at.y / module + body.top,
                       at.x / module + body.right, at.y / module + body.bottom});
        }
        for (const PlacedPanel& panel : panels_)
            room.take({panel.at.x / module, panel.at.y / module,
                       (panel.at.x + panel.panel->width) / module,
                       (panel.at.y + panel.panel->height) / module});
        take_margins(room);
        for (Group& group : finding_marks(circuit_, layout_, symbols_, wires_, findings_, room))
            add(std::move(group));
    }

    void take_margins(Occupancy& room) const {
        const double w = size_.width / module;
        const double h = size_.height / module;
        room.take({0, 0, w, margin / module + 0.5});
        room.take({0, h - margin / module - 0.5, w, h});
        room.take({0, 0, margin_left / module + 0.5, h});
        room.take({w - margin / module - 0.5, 0, w, h});
    }

    static void take(Occupancy& room, const Primitive& primitive) {
        constexpr double half = 0.3;
        const auto box = [&room](double left, double top, double right, double bottom) {
            room.take({left / module - half, top / module - half, right / module + half,
                       bottom / module + half});
        };
        if (const auto* line = std::get_if<Polyline>(&primitive.shape)) {
            if (line->pen.paint == Paint::band) return;
            const std::size_t count = line->points.size();
            for (std::size_t i = 0; i + 1 < count + (line->closed ? 1 : 0); ++i) {
                const Point a = line->points[i];
                const Point b = line->points[(i + 1) % count];
                box(std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y));
            }
        } else if (const auto* arc = std::get_if<Arc>(&primitive.shape)) {
            box(arc->centre.x - arc->radius, arc->centre.y - arc->radius,
                arc->centre.x + arc->radius, arc->centre.y + arc->radius);
        } else if (const auto* text = std::get_if<Text>(&primitive.shape)) {
            const double width = text_width_m(text->text, text->height) * module;
            const double left = text->anchor == Anchor::start    ? text->at.x
                                : text->anchor == Anchor::middle ? text->at.x - width / 2
                                                                 : text->at.x - width;
            box(left, text->at.y - text->height, left + width, text->at.y + 0.3 * text->height);
        }
    }

    void add_sheet() {
        Group frame{.id = "sheet", .title = "sheet"};
        frame.primitives = sheet_frame(size_);
        add(std::move(frame));
        Group lists{.id = "lists", .title = "title block and lists"};
        Group caution{.tag = {.role = Role::caution}, .id = "caution", .title = "cautions"};
        std::map<Index, Group> entries;
        for (const PlacedPanel& panel : panels_) {
            Group* group = &lists;
            if (!panel.panel->primitives.empty()) {
                const Tag& tag = panel.panel->primitives.front().tag;
                if (tag.role == Role::caution) group = &caution;
                if (tag.role == Role::finding) group = &entries[tag.finding];
            }
            append_moved(group->primitives, panel.panel->primitives, panel.at);
        }
        add(std::move(lists));
        add(std::move(caution));
        for (auto& [number, entry] : entries) {
            const Verdict& verdict = *findings_[number - 1];
            entry.tag = {.role = Role::finding, .finding = number};
            entry.id = fmt::format("entry-{}", number);
            entry.title = fmt::format("{} {}", number, verdict.rule->id);
            entry.description = verdict.message;
            add(std::move(entry));
        }
    }

    const Circuit& circuit_;
    const Layout& layout_;
    const Told& told_;
    const std::vector<const Verdict*>& findings_;
    std::vector<DrawnSymbol> symbols_;
    WireGraph wires_;
    SheetSize size_ = {};
    Panel title_ = {};
    std::vector<PanelList> lists_;
    std::vector<PlacedPanel> panels_;
    std::set<std::string> ids_;
    Drawing out_;
};

}  // namespace

Drawing draw(const Circuit& circuit, const Layout& layout, std::span<const Verdict> findings,
             const hydraulics::OperatingPoint* point) {
    Told told{.findings = marked(findings), .verdicts = findings, .point = point};
    for (;;) {
        const Layout placed = with_room_for(circuit, layout, told);
        SheetDrawer sheet(circuit, placed, told);
        PlacedValues values = sheet.values();
        // What has no room goes into a list, which takes room in its turn: until nothing is new.
        const std::size_t known = told.apart.size();
        for (std::string& one : values.apart)
            if (std::find(told.apart.begin(), told.apart.end(), one) == told.apart.end())
                told.apart.push_back(std::move(one));
        if (told.apart.size() == known) return sheet.draw(values);
    }
}

}  // namespace loopwright
