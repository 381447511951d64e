#include <loopwright/render/place_values.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/render/flow_head.h>
#include <loopwright/render/flow_runs.h>
#include <loopwright/render/label_room.h>
#include <loopwright/render/nets.h>
#include <loopwright/render/point_values.h>

namespace loopwright {

namespace {

constexpr double quarter = 0.25;
constexpr double gap = 0.5;                 // M, from the label that a value is added to
constexpr double apart_from = 1.0;          // M, from what is another symbol's
constexpr double reaches[] = {16.0, 64.0};  // M, of leaders
constexpr double most_shift = 3.0;          // M, beside a symbol

using Rows = std::vector<std::string>;

std::string on_one_row(const Rows& rows) { return fmt::format("{}", fmt::join(rows, "  ")); }

LabelText measured(Rows rows) {
    LabelText text{.lines = std::move(rows)};
    for (const std::string& row : text.lines)
        text.width = std::max(text.width, text_width_m(row, line_text_height));
    const auto up = [](double v) { return std::ceil(v / quarter) * quarter; };
    text.width = up(text.width + 2 * value_inset);
    text.height = up(line_text_height / 2.5 + 2 * value_inset +
                     value_pitch * (static_cast<double>(text.lines.size()) - 1.0));
    return text;
}

Box box_of(const GridBox& box) {
    return {box.from.x * quarter, box.from.y * quarter, box.to.x * quarter, box.to.y * quarter};
}

/// Flush with the block of a label, so that both read as one.
std::vector<Box> beside_block(const LabelBox& label, const LabelText& text) {
    const Box block = box_of(label.box);
    const double w = text.width;
    const double h = text.height;
    const double flush = label.right_aligned ? block.right - w : block.left;
    std::vector<Box> boxes;
    for (const Point at :
         {Point{flush, block.bottom + gap}, Point{flush, block.top - gap - h},
          Point{block.right + gap, block.top}, Point{block.right + gap, block.bottom - h},
          Point{block.left - gap - w, block.top}, Point{block.left - gap - w, block.bottom - h}})
        boxes.push_back(snapped({at.x, at.y, at.x + w, at.y + h}));
    return boxes;
}

/// Behind or before the id of a line, on its baseline.
std::vector<Box> beside_id(const Box& id, const LabelText& text) {
    const double top = id.top - (text.height - (id.bottom - id.top));
    std::vector<Box> boxes;
    for (const double left : {id.right + gap, id.left - gap - text.width})
        boxes.push_back(snapped({left, top, left + text.width, top + text.height}));
    return boxes;
}

/// Round a symbol, the nearest to the middle of one of its sides first.
std::vector<Box> round_symbol(const Box& body, const LabelText& text) {
    const double w = text.width;
    const double h = text.height;
    const double x = (body.left + body.right - w) / 2;
    const double y = (body.top + body.bottom - h) / 2;
    const Point sides[] = {{x, body.bottom + gap},
                           {x, body.top - gap - h},
                           {body.right + gap, y},
                           {body.left - gap - w, y}};
    struct Try {
        double cost = 0.0;
        Box box = {};
    };
    std::vector<Try> tries;
    for (const Point& side : sides)
        for (double dy = -most_shift; dy <= most_shift; dy += 0.5)
            for (double dx = -most_shift; dx <= most_shift; dx += 0.5)
                tries.push_back(
                    {std::abs(dx) + std::abs(dy),
                     snapped({side.x + dx, side.y + dy, side.x + dx + w, side.y + dy + h})});
    std::stable_sort(tries.begin(), tries.end(),
                     [](const Try& a, const Try& b) { return a.cost < b.cost; });
    std::vector<Box> boxes;
    boxes.reserve(tries.size());
    for (const Try& one : tries) boxes.push_back(one.box);
    return boxes;
}

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

class ValuePlacer {
  public:
    ValuePlacer(const Circuit& circuit, const Layout& layout,
                const std::vector<DrawnSymbol>& symbols, const hydraulics::OperatingPoint& point,
                const Box& extent, std::span<const Box> taken)
        : circuit_(circuit),
          layout_(layout),
          room_(circuit, layout_, symbols, extent),
          point_(point),
          flow_runs_(circuit, layout, symbols, point) {
        labels_ = layout_.labels;
        room_.take_labels();
        for (const Box& box : taken) room_.take(box);
    }

    PlacedValues place() {
        // Heads first: they stand on lines, where no text may.
        std::vector<LineValue> lines = line_values(point_);
        std::vector<bool> has_head;
        has_head.reserve(lines.size());
        for (const LineValue& value : lines)
            has_head.push_back(!value.flow.empty() && place_head(value.line));
        for (const ComponentValue& value : component_values(circuit_, point_)) put(value);
        keep_one_pressure(lines);
        for (std::size_t i = 0; i < lines.size(); ++i) put(lines[i], has_head[i]);
        return std::move(out_);
    }

  private:
    // Components.

    void put(const ComponentValue& value) {
        const std::string& name = std::string(circuit_.components[value.component].path);
        const int part = part_of(value.component);
        if (part < 0) return apart(name, value.rows);
        const Rows forms[] = {value.rows, {on_one_row(value.rows)}};
        const auto try_all = [&](const std::vector<Box>& boxes, const WantedLabel& wanted,
                                 auto&& misleads) {
            return std::any_of(boxes.begin(), boxes.end(), [&](const Box& box) {
                return !misleads(box) && room_.put(wanted, box);
            });
        };
        const auto crowded = [&](const Box& box) { return is_crowded(value.component, part, box); };
        const auto misleads = [&](const Box& box) { return room_.misleads(part, box); };
        const auto never = [](const Box&) { return false; };
        const LabelBox* label =
            label_of([&](const LabelBox& one) { return one.component == value.component; });
        for (const bool sure : {true, false})
            for (const Rows& rows : forms) {
                const LabelText text = measured(rows);
                const WantedLabel wanted = wanted_for({.component = value.component}, text, part);
                const std::vector<Box> boxes =
                    label == nullptr ? std::vector<Box>{} : beside_block(*label, text);
                if (sure ? try_all(boxes, wanted, crowded) ||
                               try_all(round_symbol(room_.body(part), text), wanted, misleads)
                         : try_all(boxes, wanted, never))
                    return keep(rows);
            }
        const LabelText text = measured(value.rows);
        for (const double reach : reaches)
            if (room_.try_apart(wanted_for({.component = value.component}, text, part), reach))
                return keep(value.rows);
        apart(name, value.rows);
    }

    /// Whether a text there, next to its own label, would be near another symbol or its label too.
    bool is_crowded(Index component, int part, const Box& box) const {
        const Box round{box.left - apart_from, box.top - apart_from, box.right + apart_from,
                        box.bottom + apart_from};
        for (int p = 0; p < static_cast<int>(layout_.placed.size()); ++p)
            if (p != part && overlap(round, room_.body(p))) return true;
        return std::any_of(labels_.begin(), labels_.end(), [&](const LabelBox& label) {
            return label.component != none && label.component != component &&
                   overlap(round, box_of(label.box));
        });
    }

    int part_of(Index component) const {
        for (std::size_t p = 0; p < layout_.placed.size(); ++p)
            if (layout_.placed[p].component == component && layout_.placed[p].port == none)
                return static_cast<int>(p);
        return -1;
    }

    WantedLabel wanted_for(LabelBox label, const LabelText& text, int part) const {
        return {.label = std::move(label),
                .width = text.width,
                .height = text.height,
                .target = room_.body(part),
                .part = part};
    }

    // Lines.

    /// Of the lines of a net that would say the same the one that is drawn longest.
    void keep_one_pressure(std::vector<LineValue>& lines) const {
        for (const Net& net : drawn_nets(circuit_))
            for (const Index a : net.lines)
                for (const Index b : net.lines) {
                    LineValue* one = find(lines, a);
                    LineValue* other = find(lines, b);
                    if (a == b || one == nullptr || other == nullptr) continue;
                    if (one->pressure.empty() || one->pressure != other->pressure) continue;
                    const bool shorter =
                        longest(b) < longest(a) || (longest(b) == longest(a) && a < b);
                    (shorter ? other : one)->pressure.clear();
                }
    }

    static LineValue* find(std::vector<LineValue>& lines, Index line) {
        const auto found = std::find_if(lines.begin(), lines.end(),
                                        [&](const LineValue& one) { return one.line == line; });
        return found == lines.end() ? nullptr : &*found;
    }

    int longest(Index line) const {
        int most = 0;
        for (const Wire& wire : layout_.wires)
            if (wire.line == line)
                most = std::max(
                    most, std::abs(wire.to.x - wire.from.x) + std::abs(wire.to.y - wire.from.y));
        return most;
    }

    void put(const LineValue& value, bool has_head) {
        std::vector<StraightRun> all;
        for (const Wire& wire : layout_.wires)
            if (wire.line == value.line && wire.sag == 0) all.push_back({wire.from, wire.to});
        const std::vector<StraightRun> carrying = straight_runs(value.line);
        const std::string in_words = value.flow.empty() ? "" : said(value);
        const std::string flow = has_head ? value.flow : in_words;
        // Beside the id where that stands at a run that carries the flow.
        const LabelBox* label = id_of(value.line);
        const bool together = flow.empty() || (label != nullptr &&
                                               flow_runs_.carries_at(value.line, place_of(*label)));
        if (!together && !value.pressure.empty() &&
            !try_put(value.line, {value.pressure}, all, true))
            apart(value.line, {value.pressure});
        const auto rows_with = [&](const std::string& shown) {
            Rows rows;
            if (together && !value.pressure.empty()) rows.push_back(value.pressure);
            if (!shown.empty()) rows.push_back(shown);
            return rows;
        };
        if (rows_with(flow).empty()) return;
        const std::vector<StraightRun>& runs = flow.empty() ? all : carrying;
        if (try_put(value.line, rows_with(flow), runs, together)) return;
        // A head takes room too, where a run is short: then words tell the direction.
        std::erase_if(out_.arrows, [&](const FlowArrow& one) { return one.line == value.line; });
        if (has_head && try_put(value.line, rows_with(in_words), runs, together)) return;
        apart(value.line, rows_with(carrying.empty() && !flow.empty()
                                        ? in_words + ", which no run of the drawing carries alone"
                                        : in_words));
    }

    /// A flow with its way in words.
    std::string said(const LineValue& value) const {
        const auto ports = circuit_.ports_of(circuit_.lines[value.line]);
        return fmt::format("{} from {} to {}", value.flow,
                           circuit_.port_name(ports[value.backwards ? 1 : 0]),
                           circuit_.port_name(ports[value.backwards ? 0 : 1]));
    }

    /// With the line's id if that may speak for the runs; else beside a run, or led to one.
    bool try_put(Index line, const Rows& rows, std::vector<StraightRun> runs, bool with_id) {
        const Rows forms[] = {{on_one_row(rows)}, rows};
        const LabelBox* label = id_of(line);
        longest_first(runs);
        if (with_id && label != nullptr) {
            const LabelText row = measured(forms[0]);
            for (const Box& box : beside_id(box_of(label->box), row))
                if (room_.is_free(with_air(box, true))) {
                    room_.put_here({.line = line}, box);
                    return kept(forms[0]);
                }
            for (const Rows& form : forms) {
                const LabelText text = measured(form);
                for (const Box& box : beside_block(*label, text))
                    if (room_.put({.label = {.line = line}}, box)) return kept(form);
            }
        }
        for (const Rows& form : forms)
            if (put_beside(runs, measured(form), {.line = line}, room_)) return kept(form);
        const LabelText text = measured(rows);
        WantedLabel wanted;
        wanted.label.line = line;
        wanted.width = text.width;
        wanted.height = text.height;
        wanted.clear_of_strokes = true;
        for (const double reach : reaches)
            for (const StraightRun& run : runs)
                for (const GridPoint at : targets_on(run)) {
                    wanted.target = middle_of({at, at});
                    if (room_.try_apart(wanted, reach)) return kept(rows);
                }
        return false;
    }

    /// Where a leader to a run may end, its middle first: beside the head that stands there.
    std::vector<GridPoint> targets_on(const StraightRun& run) const {
        std::vector<GridPoint> targets;
        for (const int eighths : {4, 2, 6, 1, 7, 0, 8}) {
            const GridPoint at{run.from.x + (run.to.x - run.from.x) * eighths / 8,
                               run.from.y + (run.to.y - run.from.y) * eighths / 8};
            const bool under_head =
                std::any_of(out_.arrows.begin(), out_.arrows.end(), [&](const FlowArrow& arrow) {
                    // Within a quarter module of its ends.
                    const int x = std::abs(2 * at.x - arrow.from.x - arrow.tip.x);
                    const int y = std::abs(2 * at.y - arrow.from.y - arrow.tip.y);
                    return std::max(x, y) <= 2 * (flow_head_half + 1);
                });
            if (!under_head) targets.push_back(at);
        }
        return targets;
    }

    bool place_head(Index line) {
        std::vector<StraightRun> runs = straight_runs(line);
        const std::optional<FlowArrow> head = flow_head_on(line, runs, layout_, room_);
        if (head) out_.arrows.push_back(*head);
        return head.has_value();
    }

    /// Those that carry the line's flow, from where it comes.
    std::vector<StraightRun> straight_runs(Index line) const {
        std::vector<StraightRun> runs;
        for (const FlowRun& run : flow_runs_.of(line))
            if (run.sag == 0) runs.push_back({run.from, run.to});
        longest_first(runs);
        return runs;
    }

    // Both.

    const LabelBox* id_of(Index line) const {
        return label_of([&](const LabelBox& one) { return one.line == line; });
    }

    static GridPoint place_of(const LabelBox& label) {
        if (!label.leader.empty()) return label.leader.back();
        return {(label.box.from.x + label.box.to.x) / 2, (label.box.from.y + label.box.to.y) / 2};
    }

    template <class Is>
    const LabelBox* label_of(Is&& is) const {
        const auto found = std::find_if(labels_.begin(), labels_.end(), is);
        return found == labels_.end() ? nullptr : &*found;
    }

    /// Takes over the label that the room has just got.
    void keep(const Rows& rows) {
        const LabelBox& label = layout_.labels.back();
        const Box box = box_of(label.box);
        room_.take(
            {box.left - quarter, box.top - quarter, box.right + quarter, box.bottom + quarter});
        out_.values.push_back({label.component, label.line, rows, label.box, label.leader});
    }

    bool kept(const Rows& rows) {
        keep(rows);
        return true;
    }

    void apart(Index line, const Rows& rows) {
        apart(std::string(circuit_.lines[line].path), rows);
    }

    void apart(const std::string& name, const Rows& rows) {
        out_.apart.push_back(fmt::format("{} {}", name, on_one_row(rows)));
    }

    const Circuit& circuit_;
    Layout layout_;
    LabelRoom room_;
    const hydraulics::OperatingPoint& point_;
    FlowRuns flow_runs_;
    std::vector<LabelBox> labels_;  ///< those of the layout, without the values
    PlacedValues out_;
};

}  // namespace

PlacedValues place_values(const Circuit& circuit, const Layout& layout,
                          const std::vector<DrawnSymbol>& symbols,
                          const hydraulics::OperatingPoint& point, const Box& extent,
                          std::span<const Box> taken) {
    return ValuePlacer(circuit, layout, symbols, point, extent, taken).place();
}

}  // namespace loopwright
