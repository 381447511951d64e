#include <loopwright/render/plot_panel.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <loopwright/render/panel.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

namespace {

bool overlap(const PlotBox& a, const PlotBox& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/// The paper of a name.
PlotBox paper_of(Point baseline, std::string_view name) {
    return {baseline.x - 0.3, baseline.y - small_text - 0.4,
            baseline.x + text_width(name, small_text) + 0.3, baseline.y + 0.4};
}

}  // namespace

bool PlotPanel::is_free(const PlotBox& box) const {
    return box.left >= frame_.left && box.right <= frame_.right && box.top >= frame_.top &&
           box.bottom <= frame_.bottom &&
           std::none_of(taken_.begin(), taken_.end(),
                        [&](const PlotBox& other) { return overlap(box, other); });
}

bool PlotPanel::put_name(Group& group, std::string_view name, std::span<const Point> baselines) {
    for (const Point& one : baselines) {
        const PlotBox box = paper_of(one, name);
        if (!is_free(box)) continue;
        taken_.push_back(box);
        group.primitives.push_back({Polyline{.points = {{box.left, box.top},
                                                        {box.right, box.top},
                                                        {box.right, box.bottom},
                                                        {box.left, box.bottom}},
                                             .closed = true,
                                             .pen = {.paint = Paint::none},
                                             .fill = Paint::paper},
                                    {}});
        write(group, one, name, Anchor::start, small_text);
        return true;
    }
    return false;
}

namespace {

/// Where the baseline of a name beside a place may begin, the best first.
std::vector<Point> beside(Point place, std::string_view name) {
    const double width = text_width(name, small_text);
    constexpr double off = 1.7;
    const double right = place.x + off;
    const double left = place.x - off - width;
    std::vector<Point> baselines;
    for (const double y : {0.5 * small_text, -off, off + small_text, -off - 1.4 * small_text,
                           off + 2.4 * small_text})
        for (const double x : {right, left}) baselines.push_back({x, place.y + y});
    return baselines;
}

}  // namespace

bool PlotPanel::have_room(const std::vector<PlotName>& names) const {
    constexpr std::size_t right_beside = 2;  // of the places that `beside` gives
    std::vector<PlotBox> put;
    return std::all_of(names.begin(), names.end(), [&](const PlotName& one) {
        const std::vector<Point> baselines = beside(one.place, one.name);
        for (const Point& baseline : std::span(baselines).first(right_beside)) {
            const PlotBox box = paper_of(baseline, one.name);
            const bool hides = std::any_of(names.begin(), names.end(), [&](const PlotName& other) {
                return box.left < other.place.x && other.place.x < box.right &&
                       box.top < other.place.y && other.place.y < box.bottom;
            });
            if (hides || !is_free(box) ||
                std::any_of(put.begin(), put.end(),
                            [&](const PlotBox& other) { return overlap(box, other); }))
                continue;
            put.push_back(box);
            return true;
        }
        return false;
    });
}

bool PlotPanel::name_in_a_row(std::vector<PlotName> names) {
    constexpr double gap = 1.5;
    constexpr double step = 1.0;
    std::stable_sort(names.begin(), names.end(),
                     [](const PlotName& a, const PlotName& b) { return a.place.x < b.place.x; });
    std::vector<double> left;
    double next = frame_.left + gap;
    double highest = frame_.bottom;
    double lowest = frame_.top;
    for (const PlotName& one : names) {
        const double width = text_width(one.name, small_text);
        left.push_back(std::max(one.place.x - width / 2, next));
        next = left.back() + width + gap;
        highest = std::min(highest, one.place.y);
        lowest = std::max(lowest, one.place.y);
    }
    // What has gone too far right pushes those left of it back again.
    double right = frame_.right;
    for (std::size_t i = names.size(); i-- > 0;) {
        left[i] = std::min(left[i], right - gap - text_width(names[i].name, small_text));
        right = left[i];
    }
    const auto leader = [&](std::size_t i, double baseline) {
        const Point& place = names[i].place;
        const double x = left[i] + text_width(names[i].name, small_text) / 2;
        const double y = baseline > place.y ? baseline - small_text - 0.4 : baseline + 0.4;
        return std::pair<Point, Point>{place, {x, y}};
    };
    // Points of a leader, without its beginning, which may lie under a mark.
    const auto along = [&](std::size_t i, double baseline) {
        constexpr double spacing = 0.2;
        constexpr double under_mark = 1.8;
        const auto [from, to] = leader(i, baseline);
        const double length = std::hypot(to.x - from.x, to.y - from.y);
        std::vector<Point> points;
        for (double at = under_mark; at < length; at += spacing)
            points.push_back(
                {from.x + at / length * (to.x - from.x), from.y + at / length * (to.y - from.y)});
        return points;
    };
    const auto is_clear = [&](std::size_t i, double baseline) {
        const std::vector<Point> points = along(i, baseline);
        return is_free(paper_of({left[i], baseline}, names[i].name)) &&
               std::none_of(taken_.begin(), taken_.end(), [&](const PlotBox& box) {
                   return std::any_of(points.begin(), points.end(), [&](const Point& at) {
                       return at.x > box.left && at.x < box.right && at.y > box.top &&
                              at.y < box.bottom;
                   });
               });
    };
    // Curves come down to where they are fastest: below is free of them.
    for (const bool below : {true, false})
        for (double off = 4.0 * step; off < frame_.bottom - frame_.top; off += step) {
            const double baseline = below ? lowest + off + small_text : highest - off;
            bool clear = true;
            for (std::size_t i = 0; clear && i < names.size(); ++i) clear = is_clear(i, baseline);
            if (!clear) continue;
            Group& made = drawing_.groups.back();
            for (std::size_t i = 0; i < names.size(); ++i) {
                const Point place{left[i], baseline};
                put_name(made, names[i].name, {&place, 1});
            }
            for (std::size_t i = 0; i < names.size(); ++i) {
                const auto [from, to] = leader(i, baseline);
                stroke(made, {from, to}, {.width = 0.13});
                for (const Point& at : along(i, baseline))
                    taken_.push_back({at.x - 0.2, at.y - 0.2, at.x + 0.2, at.y + 0.2});
            }
            return true;
        }
    return false;
}

void PlotPanel::name_beside(std::vector<PlotName> names) {
    if (names.empty()) return;
    Group& made = group("names", "");
    if (!have_room(names) && name_in_a_row(names)) return;
    for (const PlotName& one : names) put_name(made, one.name, beside(one.place, one.name));
}

void PlotPanel::name_along(const std::vector<Point>& line, std::string_view name) {
    const double width = text_width(name, small_text);
    std::vector<Point> baselines;
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
        const Point& on = line[static_cast<std::size_t>(share * static_cast<double>(line.size()))];
        baselines.push_back({on.x - width / 2, on.y + small_text / 2});
    }
    put_name(drawing_.groups.back(), name, baselines);
}

void PlotPanel::name_marks() {
    for (const auto& [group, one] : marked_)
        put_name(drawing_.groups[group], one.name, beside(one.place, one.name));
    marked_.clear();
}

}  // namespace loopwright
