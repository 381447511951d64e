#include <loopwright/render/plot.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/contours.h>
#include <loopwright/render/panel.h>
#include <loopwright/render/plot_data.h>
#include <loopwright/render/sheet.h>

namespace loopwright {

using namespace hydraulics;

namespace {

constexpr double heading = 14.0;
constexpr int across = 3;
constexpr int down = 3;
constexpr std::size_t most_curves = 9;

/// Steps of an axis that are drawn: all of a few, else some at even distances with both ends.
std::vector<std::size_t> drawn_steps(std::size_t count) {
    std::vector<std::size_t> steps;
    const std::size_t drawn = std::min(count, most_curves);
    for (std::size_t i = 0; i < drawn; ++i)
        steps.push_back(drawn < 2 ? 0 : (i * (count - 1) + (drawn - 1) / 2) / (drawn - 1));
    return steps;
}

/// Figures on the way along a curve as runs of points, with gaps where there is none.
struct Runs {
    std::vector<std::vector<Point>> runs = std::vector<std::vector<Point>>(1);

    void add(std::optional<Point> point) {
        if (point)
            runs.back().push_back(*point);
        else if (!runs.back().empty())
            runs.emplace_back();
    }
};

class Plot {
  public:
    Plot(const Circuit& circuit, const PlotData& data)
        : circuit_(circuit), data_(data), size_(*find_sheet("A3")) {
        drawing_.width = size_.width;
        drawing_.height = size_.height;
        drawing_.title = std::string(circuit.title.title);
        drawing_.description = "Diagrams of a sweep";
    }

    Drawing draw(std::string_view point) {
        draw_sheet(point);
        for (const PlotColumn& one : data_.shown()) draw_curves(one);
        if (data_.has_plane()) draw_plane();
        if (data_.efficiency() && data_.second() > 1 && data_.first() > 1) draw_map();
        return std::move(drawing_);
    }

  private:
    void draw_sheet(std::string_view point) {
        Group& frame = drawing_.groups.emplace_back();
        frame.id = "frame";
        frame.primitives = sheet_frame(size_);
        const Panel title =
            title_block(circuit_, size_, "Diagrams of a sweep", "Computed for steady states.");
        append_moved(frame.primitives, title.primitives,
                     {size_.width - margin - title.width, size_.height - margin - title.height});
        Panel words{.width = size_.width - margin - title.width - margin_left - 2 * panel_gap};
        add_text(words, {0.0, 0.0},
                 data_.second() > 1 ? fmt::format("Point {}, over {} and {}", point, data_.datum(0),
                                                  data_.datum(1))
                                    : fmt::format("Point {}, over {}", point, data_.datum(0)),
                 large_text);
        Group& head = drawing_.groups.emplace_back();
        head.id = "heading";
        append_moved(head.primitives, words.primitives, {margin_left + panel_gap, margin + 9.0});
        words.primitives.clear();
        double y = 0.0;
        for (const char* const text :
             {"Ring: a duty point of the circuit, worked out with all its own data, which need not "
              "be those that the curves are drawn for.",
              "Shaded: beyond a limit that the circuit gives. Hatched, or a cross on the axis: no "
              "steady state is found there.",
              "Full square: corner point, the largest effort with the largest speed of all that is "
              "drawn; the two need not be had together.",
              "Supports and does not replace a review by a competent person; local codes and the "
              "usual precautions of the trade come first."})
            y = add_paragraph(words, {0.0, y}, text, words.width, small_text) +
                text_pitch(small_text) * 1.2;
        Group& key = drawing_.groups.emplace_back();
        key.id = "key";
        append_moved(key.primitives, words.primitives,
                     {margin_left + panel_gap, size_.height - margin - title.height + 8.0});
    }

    PlotPanel next_panel(const PlotScale& x, const PlotScale& y) {
        constexpr double title_block_height = 40.0;
        const double left = margin_left + 1.0;
        const double top = margin + heading;
        const double wide = (size_.width - margin - left) / across;
        const double tall = (size_.height - margin - title_block_height - top) / down;
        const int column = panels_ % across;
        const int row = panels_ / across;
        return {drawing_,
                fmt::format("plot-{}", ++panels_),
                {.left = left + column * wide,
                 .top = top + row * tall,
                 .right = left + (column + 1) * wide,
                 .bottom = top + (row + 1) * tall},
                x,
                y};
    }

    static void mark_point(PlotPanel& panel, const DutyRow& point, Point place) {
        panel.mark(fmt::format("point-{}", point.id), point.id, place, PlotPanel::Mark::round);
    }

    void draw_curves(const PlotColumn& shown) {
        PlotPanel panel = next_panel(data_.scale_of_axis(0), data_.scale_of(shown));
        if (shown.limit) panel.shade_above(shown.limited, *shown.limit);
        const std::vector<std::size_t> steps = drawn_steps(data_.second());
        std::vector<PlotBox> gaps;
        for (std::size_t i = 0; i < data_.first(); ++i)
            if (std::none_of(steps.begin(), steps.end(),
                             [&](std::size_t j) { return data_.is_solved(i, j); }))
                gaps.push_back(panel.band(data_.half_way(0, i, -1), data_.half_way(0, i, 1)));
        panel.hatch(gaps);
        panel.axes(shown.title,
                   shown.limit ? fmt::format("{}: {}", shown.limited,
                                             data_.text_of(shown.column, *shown.limit))
                               : "",
                   data_.datum(0));
        const bool several = data_.second() > 1;
        std::vector<PlotName> names;
        std::vector<bool> crossed(data_.first());
        for (std::size_t n = 0; n < steps.size(); ++n) {
            Runs line;
            std::optional<Point> end;
            for (std::size_t i = 0; i < data_.first(); ++i) {
                const auto one = data_.figure(i, steps[n], shown.column);
                if (one) end = panel.at(data_.at(0, static_cast<double>(i)), *one);
                line.add(one ? end : std::nullopt);
                crossed[i] = crossed[i] || !data_.is_solved(i, steps[n]);
            }
            const std::string name = several ? data_.name_of(1, steps[n]) : "";
            panel.curve(fmt::format("curve-{}", n + 1),
                        several ? fmt::format("{} = {}", data_.datum(1), name)
                                : fmt::format("over {}", data_.datum(0)),
                        line.runs);
            if (several && end) names.push_back({*end, name});
        }
        for (std::size_t i = 0; i < crossed.size(); ++i)
            if (crossed[i]) panel.cross(data_.at(0, static_cast<double>(i)));
        panel.name_ends(names);
        for (const DutyRow& point : data_.duty()) {
            const auto place = data_.place_of(point, 0);
            const auto one = point.rows.figure(0, shown.column);
            if (place && one) mark_point(panel, point, panel.at(*place, *one));
        }
        panel.name_marks();
    }

    void draw_plane() {
        std::vector<double> speeds{0.0};
        std::vector<double> efforts{0.0};
        const auto add = [&](const PlaneFigure& one) {
            speeds.push_back(one.speed);
            efforts.push_back(one.effort);
        };
        for (const PlaneFigure& one : data_.plane()) add(one);
        const PlaneFigure corner{*std::max_element(speeds.begin(), speeds.end()),
                                 *std::max_element(efforts.begin(), efforts.end())};
        for (const DutyRow& point : data_.duty())
            if (const auto one = data_.in_plane(point.rows, 0)) add(*one);
        PlotPanel panel = next_panel(plot_scale(data_.unit_of(data_.speed()), speeds),
                                     plot_scale(data_.unit_of(data_.effort()), efforts));
        for (const PlotColumn& one : data_.shown())
            if (one.limit && one.column == data_.speed())
                panel.shade_right(one.limited, *one.limit);
            else if (one.limit && one.column == data_.effort())
                panel.shade_above(one.limited, *one.limit);
        if (data_.power()) draw_hyperbola(panel, *data_.power());
        panel.axes(data_.title_of(data_.effort()),
                   data_.power() ? fmt::format("power of the prime mover: {}",
                                               format_quantity(*data_.power(), Dimension::power))
                                 : "",
                   data_.title_of(data_.speed()));
        const std::vector<PlotName> names = draw_plane_curves(panel);
        for (const DutyRow& point : data_.duty())
            if (const auto one = data_.in_plane(point.rows, 0))
                mark_point(panel, point, panel.at(one->speed, one->effort));
        if (corner.speed > 0.0 && corner.effort > 0.0)
            panel.mark("corner",
                       fmt::format("corner {}",
                                   format_quantity(corner.speed * corner.effort, Dimension::power)),
                       panel.at(corner.speed, corner.effort), PlotPanel::Mark::square);
        panel.name_beside(names);
        panel.name_marks();
    }

    /// Of two axes each curve keeps a step of the first one; of one axis it goes along that. Names
    /// stand where a curve is fastest.
    std::vector<PlotName> draw_plane_curves(PlotPanel& panel) {
        const bool alone = data_.second() < 2;
        const std::vector<std::size_t> steps = drawn_steps(alone ? 1 : data_.first());
        std::vector<PlotName> names;
        for (std::size_t n = 0; n < steps.size(); ++n) {
            Runs line;
            std::optional<Point> fastest;
            for (std::size_t k = 0; k < (alone ? data_.first() : data_.second()); ++k) {
                const auto one = alone ? data_.in_plane(k, 0) : data_.in_plane(steps[n], k);
                const auto place =
                    one ? std::optional(panel.at(one->speed, one->effort)) : std::nullopt;
                line.add(place);
                if (place && (!fastest || place->x > fastest->x)) fastest = place;
            }
            const std::string name = data_.name_of(0, steps[n]);
            panel.curve(fmt::format("curve-{}", n + 1),
                        alone ? fmt::format("over {}", data_.datum(0))
                              : fmt::format("{} = {}", data_.datum(0), name),
                        line.runs);
            if (!alone && fastest) names.push_back({*fastest, name});
        }
        return names;
    }

    /// Where effort times speed is the prime mover's power, as far as it is inside the frame.
    static void draw_hyperbola(PlotPanel& panel, double power) {
        const double most_speed = panel.x().si(panel.x().most);
        const double most_effort = panel.y().si(panel.y().most);
        if (power >= most_speed * most_effort) return;
        constexpr int steps = 60;
        const double least_speed = power / most_effort;
        std::vector<Point> line;
        // Steps of one ratio: as even along the steep end as along the flat one.
        for (int i = 0; i <= steps; ++i) {
            const double speed =
                least_speed * std::pow(most_speed / least_speed, static_cast<double>(i) / steps);
            line.push_back(panel.at(speed, power / speed));
        }
        std::vector<Point> area = line;
        area.push_back({panel.frame().right, panel.frame().top});
        panel.shade(
            "hyperbola",
            fmt::format("power of the prime mover: {}", format_quantity(power, Dimension::power)),
            area, line);
    }

    void draw_map() {
        PlotPanel panel = next_panel(data_.scale_of_axis(0), data_.scale_of_axis(1));
        std::vector<PlotBox> gaps;
        for (std::size_t i = 0; i < data_.first(); ++i)
            for (std::size_t j = 0; j < data_.second(); ++j) {
                if (data_.is_solved(i, j)) continue;
                const Point a = panel.at(data_.half_way(0, i, -1), data_.half_way(1, j, -1));
                const Point b = panel.at(data_.half_way(0, i, 1), data_.half_way(1, j, 1));
                gaps.push_back({.left = std::min(a.x, b.x),
                                .top = std::min(a.y, b.y),
                                .right = std::max(a.x, b.x),
                                .bottom = std::max(a.y, b.y)});
            }
        panel.hatch(gaps);
        panel.axes(data_.datum(1), "efficiency in %, by contours", data_.datum(0));
        const auto efficiency = [&](int i, int j) {
            return data_.figure(static_cast<std::size_t>(i), static_cast<std::size_t>(j),
                                *data_.efficiency());
        };
        std::vector<std::pair<std::string, std::vector<Point>>> longest;
        for (int percent = 10; percent < 100; percent += percent < 60 ? 10 : 5) {
            auto lines = contours(static_cast<int>(data_.first()), static_cast<int>(data_.second()),
                                  efficiency, percent / 100.0);
            if (lines.empty()) continue;
            for (std::vector<Point>& line : lines)
                for (Point& one : line) one = panel.at(data_.at(0, one.x), data_.at(1, one.y));
            panel.curve(fmt::format("contour-{}", percent), fmt::format("{} %", percent), lines,
                        {.width = percent % 10 == 0 ? 0.35 : 0.18});
            longest.emplace_back(
                fmt::format("{}", percent),
                *std::max_element(lines.begin(), lines.end(), [](const auto& a, const auto& b) {
                    return a.size() < b.size();
                }));
        }
        for (const DutyRow& point : data_.duty()) {
            const auto x = data_.place_of(point, 0);
            const auto y = data_.place_of(point, 1);
            if (x && y) mark_point(panel, point, panel.at(*x, *y));
        }
        panel.name_marks();
        for (const auto& [name, line] : longest) panel.name_along(line, name);
    }

    const Circuit& circuit_;
    const PlotData& data_;
    const SheetSize& size_;
    Drawing drawing_;
    int panels_ = 0;
};

}  // namespace

Drawing plot_of(const Circuit& circuit, const Sweep& sweep, const SweepRows& rows,
                std::string_view point) {
    return Plot(circuit, PlotData(circuit, sweep, rows)).draw(point);
}

}  // namespace loopwright
