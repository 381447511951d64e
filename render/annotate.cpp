#include <loopwright/render/annotate.h>
#include <loopwright/render/told_together.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

#include <loopwright/render/sheet.h>

namespace loopwright {

namespace {

constexpr double quarter_module = 0.625;  // mm
constexpr double module = 2.5;            // mm
constexpr double mark_half = 4.2;         // mm
constexpr double mark_pen = 0.5;
// mm, of the number's capitals if it has one digit; more digits are smaller, for a triangle or a
// diamond leaves little room beside them.
constexpr double mark_text = 3.0;
constexpr double reach = 40.0;  // M that a mark may stand away

}  // namespace

Point on_sheet(GridPoint point) {
    return {margin_left + point.x * quarter_module, margin + point.y * quarter_module};
}

std::vector<const Verdict*> marked(std::span<const Verdict> findings) {
    std::vector<const Verdict*> out;
    for (const Verdict& verdict : findings) {
        if (verdict.outcome != Outcome::fail && verdict.outcome != Outcome::inconclusive) continue;
        if (lacks_duty(verdict)) continue;  // a drawing asks for no figures
        const auto first_of = [](const Verdict* entry) -> const Verdict& { return *entry; };
        if (entry_of(out, verdict, first_of) == out.end()) out.push_back(&verdict);
    }
    const auto rank = [](const Verdict* verdict) {
        if (verdict->outcome == Outcome::inconclusive) return 4;
        if (verdict->follows != nullptr) return 3;
        return 2 - static_cast<int>(verdict->level);
    };
    std::stable_sort(out.begin(), out.end(),
                     [&](const Verdict* a, const Verdict* b) { return rank(a) < rank(b); });
    return out;
}

std::vector<Primitive> finding_mark(const Verdict& verdict, Index number, Point centre) {
    const Tag tag{.role = Role::finding, .finding = number};
    const Pen pen{.paint = Paint::mark, .width = mark_pen};
    std::vector<Primitive> out;
    const double r = mark_half;
    const auto polygon = [&](std::vector<Point> points) {
        for (Point& p : points) p = {centre.x + p.x, centre.y + p.y};
        out.push_back(
            {Polyline{
                 .points = std::move(points), .closed = true, .pen = pen, .fill = Paint::paper},
             tag});
    };
    const std::string text = fmt::format("{}", number);
    constexpr double heights[] = {mark_text, normal_text, small_text};
    const double text_height = heights[std::min(text.size(), std::size(heights)) - 1];
    double baseline = text_height / 2;
    if (verdict.outcome == Outcome::inconclusive) {
        polygon({{0, -r}, {r, 0}, {0, r}, {-r, 0}});
    } else if (verdict.level == Level::error) {
        polygon({{0, -r}, {r, r * 0.85}, {-r, r * 0.85}});
        baseline = r * 0.68;
    } else if (verdict.level == Level::warning) {
        polygon(
            {{-r * 0.8, -r * 0.8}, {r * 0.8, -r * 0.8}, {r * 0.8, r * 0.8}, {-r * 0.8, r * 0.8}});
    } else {
        out.push_back(
            {Arc{.centre = centre, .radius = r * 0.9, .pen = pen, .fill = Paint::paper}, tag});
    }
    out.push_back({Text{.at = {centre.x, centre.y + baseline},
                        .text = text,
                        .height = text_height,
                        .anchor = Anchor::middle,
                        .paint = Paint::mark},
                   tag});
    return out;
}

namespace {

/// Where a mark would like to stand: points of its subject, M on the sheet.
std::vector<Point> places_of_subject(const Circuit& circuit, const Layout& layout,
                                     const std::vector<DrawnSymbol>& symbols,
                                     const WireGraph& wires, const Subject& subject) {
    std::vector<Point> out;
    const auto add = [&out](GridPoint p) {
        const Point mm = on_sheet(p);
        out.push_back({mm.x / module, mm.y / module});
    };
    const auto add_component = [&](Index component) {
        for (const DrawnSymbol& symbol : symbols)
            if (symbol.placed.component == component) add(symbol.placed.at);
    };
    switch (subject.type) {
        case ElementType::component:
        case ElementType::loop:
            add_component(subject.index);
            break;
        case ElementType::port:
        case ElementType::side:
            if (subject.index < circuit.ports.size()) {
                for (const GridPoint& p : wires.places_of(subject.index)) add(p);
                if (out.empty()) add_component(circuit.ports[subject.index].component);
            }
            break;
        case ElementType::line:
            for (const auto& [from, to] : wires.runs_of(subject.index))
                add({(from.x + to.x) / 2, (from.y + to.y) / 2});
            break;
        case ElementType::shaft:
            for (const ShaftRun& run : layout.shafts)
                if (run.shaft == subject.index)
                    add({(run.from.x + run.to.x) / 2, (run.from.y + run.to.y) / 2});
            break;
        default:
            break;
    }
    return out;
}

}  // namespace

std::vector<Group> finding_marks(const Circuit& circuit, const Layout& layout,
                                 const std::vector<DrawnSymbol>& symbols, const WireGraph& wires,
                                 std::span<const Verdict* const> findings, Occupancy& room) {
    std::vector<Group> groups;
    for (std::size_t f = 0; f < findings.size(); ++f) {
        const Verdict& verdict = *findings[f];
        const auto number = static_cast<Index>(f + 1);
        std::vector<Point> wishes =
            places_of_subject(circuit, layout, symbols, wires, verdict.subject);
        if (wishes.empty()) continue;  // about the whole circuit: the list has it
        const Point wish = wishes.front();
        const double half = mark_half / module + 0.2;
        double least = 1e9;
        Point chosen{};
        for (double dy = -reach; dy <= reach; dy += 0.5)
            for (double dx = -reach; dx <= reach; dx += 0.5) {
                const double far = std::hypot(dx, dy);
                if (far >= least) continue;
                const Point at{wish.x + dx, wish.y + dy};
                if (!room.is_free({at.x - half, at.y - half, at.x + half, at.y + half})) continue;
                least = far;
                chosen = at;
            }
        if (least > reach * 2) continue;
        room.take({chosen.x - half, chosen.y - half, chosen.x + half, chosen.y + half});
        Group group{.tag = {.role = Role::finding, .finding = number},
                    .id = fmt::format("finding-{}", number),
                    .title = fmt::format("{} {}", number, verdict.rule->id),
                    .description = std::string(verdict.message)};
        group.primitives = finding_mark(verdict, number, {chosen.x * module, chosen.y * module});
        groups.push_back(std::move(group));
    }
    return groups;
}

namespace {

/// Collects the band: polylines along wires and through symbols.
class BandMaker {
  public:
    BandMaker(const Circuit& circuit, const std::vector<DrawnSymbol>& symbols,
              const WireGraph& wires, Tag tag)
        : circuit_(circuit), symbols_(symbols), wires_(wires), tag_(tag) {}

    std::vector<Primitive> make(const Witness& witness) {
        const bool walk =
            witness.shape == WitnessShape::path || witness.shape == WitnessShape::frontier;
        for (std::size_t i = 0; i < witness.steps.size(); ++i) {
            const Step& step = witness.steps[i];
            if (!walk)
                whole(step);
            else if (step.from == none && step.to == none)
                whole(step, i + 1 < witness.steps.size() ? witness.steps[i + 1].from
                            : i > 0                      ? witness.steps[i - 1].to
                                                         : none);
            else if (step.type == ElementType::component)
                through(step);
            else if (step.type == ElementType::line)
                along(step);
        }
        return std::move(out_);
    }

  private:
    bool is_drawn(Index port) const { return port != none && !wires_.places_of(port).empty(); }

    void add(std::vector<Point> points) {
        if (points.size() < 2) return;
        out_.push_back(
            {Polyline{.points = std::move(points), .pen = {.paint = Paint::band, .width = 2.5}},
             tag_});
    }
    void add(const std::vector<GridPoint>& points) {
        std::vector<Point> mm;
        mm.reserve(points.size());
        for (const GridPoint& p : points) mm.push_back(on_sheet(p));
        add(std::move(mm));
    }

    void along(const Step& step) {
        if (is_drawn(step.from)) from_ = step.from;
        if (!is_drawn(step.to)) return;  // a junction: the way goes on in the next line
        if (from_ == none || !is_drawn(from_)) return;
        for (const GridPoint& start : wires_.places_of(from_)) {
            const std::vector<GridPoint> way = wires_.way(start, wires_.places_of(step.to));
            if (way.empty()) continue;
            add(way);
            break;
        }
        from_ = none;
    }

    void through(const Step& step) {
        for (const DrawnSymbol& symbol : symbols_) {
            if (symbol.placed.component != step.index || symbol.placed.port != none) continue;
            const Box& body = symbol.shape.body;
            const Point middle{(body.left + body.right) / 2, (body.top + body.bottom) / 2};
            std::vector<Point> points;
            if (const auto at = port_point(symbol, step.from)) points.push_back(*at);
            if (step.from == none || step.to == none || !straight(symbol, step))
                points.push_back(place(symbol, symbol.shape.shafts.empty() ? middle : Point{}));
            if (const auto at = port_point(symbol, step.to)) points.push_back(*at);
            add(std::move(points));
        }
    }

    bool straight(const DrawnSymbol& symbol, const Step& step) const {
        const auto a = port_point(symbol, step.from);
        const auto b = port_point(symbol, step.to);
        return a && b && (std::abs(a->x - b->x) < 0.01 || std::abs(a->y - b->y) < 0.01);
    }

    std::optional<Point> port_point(const DrawnSymbol& symbol, Index port) const {
        for (const PortAnchor& anchor : symbol.shape.ports)
            if (anchor.port == port && port != none) return place(symbol, anchor.at);
        return std::nullopt;
    }

    Point place(const DrawnSymbol& symbol, Point in) const {
        const Point at = on_sheet(symbol.placed.at);
        return {at.x + in.x * module, at.y + in.y * module};
    }

    /// A component as a whole; of a reservoir's marks the one where the walk meets it, if it does.
    void whole(const Step& step, Index met = none) {
        if (step.type == ElementType::line)
            for (const auto& [from, to] : wires_.runs_of(step.index)) add({from, to});
        if (step.type != ElementType::component) return;
        for (const DrawnSymbol& symbol : symbols_) {
            if (symbol.placed.component != step.index) continue;
            const Index mark = symbol.placed.port;
            const bool meets =
                met != none && circuit_.ports[met].component == step.index && mark != none;
            if (meets && mark != met) continue;
            const Box& b = symbol.shape.body;
            if (const auto stem = port_point(symbol, mark))
                add({*stem, place(symbol, {(b.left + b.right) / 2, (b.top + b.bottom) / 2})});
            std::vector<Point> points{{b.left - 0.5, b.top - 0.5},
                                      {b.right + 0.5, b.top - 0.5},
                                      {b.right + 0.5, b.bottom + 0.5},
                                      {b.left - 0.5, b.bottom + 0.5}};
            for (Point& p : points) p = place(symbol, p);
            points.push_back(points.front());
            add(std::move(points));
        }
    }

    const Circuit& circuit_;
    const std::vector<DrawnSymbol>& symbols_;
    const WireGraph& wires_;
    Tag tag_;
    std::vector<Primitive> out_;
    Index from_ = none;
};

std::string sources_text(const RuleInfo& rule) {
    std::string sources;
    for (const Citation& citation : rule.sources) {
        if (!sources.empty()) sources += "; ";
        sources += citation.work;
        if (!citation.place.empty()) sources += fmt::format(", {}", citation.place);
    }
    return sources;
}

}  // namespace

Group witness_band(const Circuit& circuit, const std::vector<DrawnSymbol>& symbols,
                   const WireGraph& wires, const Verdict& verdict, Index number) {
    const Tag tag{.role = Role::finding, .finding = number};
    Group group{.tag = tag,
                .id = fmt::format("witness-{}", number),
                .title = fmt::format("witness of {} {}", number, verdict.rule->id)};
    // The band of the cause shows where to look; more would hide it.
    if (verdict.follows == nullptr)
        group.primitives = BandMaker(circuit, symbols, wires, tag).make(verdict.witness);
    return group;
}

namespace {

std::string listed(std::span<const std::string_view> words) {
    std::string text;
    for (const std::string_view word : words)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", word);
    return text;
}

/// The other subjects that are told with one, and all missing data.
struct Alike {
    std::vector<std::string_view> subjects = {};
    std::vector<std::string_view> missing = {};
};

void add_new(std::vector<std::string_view>& words, std::string_view word) {
    if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
}

Alike told_with(const Verdict& one, std::span<const Verdict> all) {
    Alike alike;
    alike.missing.assign(one.missing.begin(), one.missing.end());
    for (const Verdict& other : all) {
        if (&other == &one || !told_together(one, other)) continue;
        add_new(alike.subjects, other.subject.id);
        for (const std::string_view datum : other.missing) add_new(alike.missing, datum);
    }
    return alike;
}

}  // namespace

PanelList findings_list(const Circuit& circuit, std::span<const Verdict* const> findings,
                        std::span<const Verdict> all) {
    constexpr double indent = 12.0;
    PanelList list{.heading = list_heading("Findings")};
    for (std::size_t f = 0; f < findings.size(); ++f) {
        const Verdict& verdict = *findings[f];
        const auto number = static_cast<Index>(f + 1);
        Panel row;
        row.primitives = finding_mark(verdict, number, {5.0, 5.8});
        const double width = list_right - indent;
        double y = 4.2;
        const auto paragraph = [&](const std::string& text) {
            y = add_paragraph(row, {indent, y}, text, width) + text_pitch(normal_text);
        };
        const std::string_view level = verdict.outcome == Outcome::inconclusive
                                           ? name(Outcome::inconclusive)
                                           : name(verdict.level);
        paragraph(fmt::format("{}{}: {} of {}", verdict.waived != nullptr ? "waived " : "", level,
                              verdict.rule->id, verdict.subject.id));
        paragraph(std::string(verdict.message));
        const Alike alike = told_with(verdict, all);
        if (!alike.subjects.empty()) paragraph("Likewise: " + listed(alike.subjects));
        std::string states;
        for (const StateUse& use : verdict.states) {
            if (!states.empty()) states += ", ";
            states += name(use.state);
            for (const auto& [valve, position] : use.positions)
                states += fmt::format(" ({} {})", circuit.components[valve].path, position);
        }
        if (!states.empty()) paragraph("States: " + states);
        if (!verdict.point.empty()) paragraph("Duty point: " + std::string(verdict.point));
        if (!alike.missing.empty()) paragraph("Missing: " + listed(alike.missing));
        if (const Waived* waived = verdict.waived; waived != nullptr)
            paragraph(fmt::format("Waived: {} ({}{}{})", waived->reason, waived->by,
                                  waived->until.empty() ? "" : ", until ", waived->until));
        if (const Cause* cause = verdict.follows; cause != nullptr) {
            // Its remedy is the cause's.
            paragraph(fmt::format("Follows from {} of {}", cause->rule->id, cause->subject.id));
        } else {
            if (!verdict.rule->remedy.empty())
                paragraph("Remedy: " + std::string(verdict.rule->remedy));
            const std::string sources = sources_text(*verdict.rule);
            if (!sources.empty()) paragraph("Source: " + sources);
        }
        row.height = std::max(y - text_pitch(normal_text) + 2.0, 11.0);
        add_line(row, {0.0, row.height}, {panel_width, row.height}, 0.13);
        for (Primitive& primitive : row.primitives)
            primitive.tag = {.role = Role::finding, .finding = number};
        list.rows.push_back(std::move(row));
    }
    return list;
}

}  // namespace loopwright
