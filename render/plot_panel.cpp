#include <loopwright/render/plot_panel.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include <loopwright/render/panel.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

namespace {

constexpr double before_axis = 15.0;
constexpr double below_axis = 10.0;
constexpr double above_axis = 7.0;
constexpr double behind_axis = 18.0;  // room for the curves' names
constexpr double mark_size = 1.0;
constexpr double hatch_pitch = 1.6;

/// 1, 2 or 5 times a power of ten, for about five steps.
double round_step(double span) {
    const double rough = span / 5.0;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double step : {1.0, 2.0, 5.0})
        if (rough <= step * power * 1.0001) return step * power;
    return 10.0 * power;
}

std::string tick(double value, double step) {
    return fmt::format("{:.6g}", std::abs(value) < step * 1e-6 ? 0.0 : value);
}

}  // namespace

const Unit* plot_unit(Dimension dimension) {
    if (dimension == Dimension::ratio)
        for (const Unit& unit : units_of(dimension))
            if (unit.spelling == "%") return &unit;
    return &units_of(dimension).front();
}

PlotScale plot_scale(const Unit* unit, std::span<const double> figures) {
    PlotScale scale{.unit = unit};
    if (figures.empty()) return scale;
    const auto [least, most] = std::minmax_element(figures.begin(), figures.end());
    double low = scale.shown(*least);
    double high = scale.shown(*most);
    if (high - low < 1e-9 * std::max(std::abs(high), 1.0)) high = low + 1.0;
    scale.step = round_step(high - low);
    // What is beyond a tick by less than a pen's width has no step of its own.
    constexpr double hardly = 2e-3;
    scale.least = std::floor(low / scale.step + hardly) * scale.step;
    scale.most = std::ceil(high / scale.step - hardly) * scale.step;
    return scale;
}

std::string with_unit(std::string_view name, const Unit& unit) {
    return unit.spelling.empty() ? std::string(name) : fmt::format("{} ({})", name, unit.spelling);
}

PlotPanel::PlotPanel(Drawing& drawing, std::string id, const PlotBox& outer, const PlotScale& x,
                     const PlotScale& y)
    : drawing_(drawing),
      id_(std::move(id)),
      frame_{.left = outer.left + before_axis,
             .top = outer.top + above_axis,
             .right = outer.right - behind_axis,
             .bottom = outer.bottom - below_axis},
      x_(x),
      y_(y) {}

Point PlotPanel::at(double x, double y) const {
    return {frame_.left + (frame_.right - frame_.left) * x_.share(x),
            frame_.bottom - (frame_.bottom - frame_.top) * y_.share(y)};
}

PlotBox PlotPanel::band(double from, double to) const {
    return {.left = std::min(at(from, 0.0).x, at(to, 0.0).x),
            .top = frame_.top,
            .right = std::max(at(from, 0.0).x, at(to, 0.0).x),
            .bottom = frame_.bottom};
}

Group& PlotPanel::group(std::string_view id, std::string_view title) {
    Group& made = drawing_.groups.emplace_back();
    made.id = id.empty() ? id_ : fmt::format("{}-{}", id_, id);
    made.title = title;
    return made;
}

void PlotPanel::stroke(Group& group, std::vector<Point> points, const Pen& pen) {
    group.primitives.push_back({Polyline{.points = std::move(points), .pen = pen}, {}});
}

void PlotPanel::write(Group& group, Point at, std::string_view words, Anchor anchor,
                      double height) {
    group.primitives.push_back(
        {Text{.at = at, .text = std::string(words), .height = height, .anchor = anchor}, {}});
}

void PlotPanel::axes(std::string_view title, std::string_view above, std::string_view below) {
    Group& made = group("", title);
    constexpr Pen line{.width = 0.35};
    constexpr Pen grid{.paint = Paint::faint, .width = 0.13};
    const auto steps = [](const PlotScale& scale) {
        return static_cast<int>(std::lround((scale.most - scale.least) / scale.step));
    };
    for (int i = 0; i <= steps(x_); ++i) {
        const double value = x_.least + i * x_.step;
        const double x = at(x_.si(value), 0.0).x;
        stroke(made, {{x, frame_.top}, {x, frame_.bottom + 1.0}}, grid);
        write(made, {x, frame_.bottom + 4.0}, tick(value, x_.step), Anchor::middle, small_text);
    }
    for (int i = 0; i <= steps(y_); ++i) {
        const double value = y_.least + i * y_.step;
        const double y = at(0.0, y_.si(value)).y;
        stroke(made, {{frame_.left - 1.0, y}, {frame_.right, y}}, grid);
        write(made, {frame_.left - 1.8, y + small_text / 2}, tick(value, y_.step), Anchor::end,
              small_text);
    }
    // Nothing, where the axis goes on below it.
    if (y_.least < 0.0 && y_.most > 0.0) {
        const double y = at(0.0, y_.si(0.0)).y;
        stroke(made, {{frame_.left, y}, {frame_.right, y}}, {.width = 0.18});
    }
    if (x_.least < 0.0 && x_.most > 0.0) {
        const double x = at(x_.si(0.0), 0.0).x;
        stroke(made, {{x, frame_.top}, {x, frame_.bottom}}, {.width = 0.18});
    }
    stroke(made,
           {{frame_.left, frame_.top}, {frame_.left, frame_.bottom}, {frame_.right, frame_.bottom}},
           line);
    write(made, {frame_.left, frame_.top - 2.5}, with_unit(title, *y_.unit), Anchor::start,
          normal_text);
    if (!above.empty())
        write(made, {frame_.right, frame_.top - 2.5}, above, Anchor::end, small_text);
    write(made, {(frame_.left + frame_.right) / 2, frame_.bottom + 8.0}, with_unit(below, *x_.unit),
          Anchor::middle, small_text);
}

void PlotPanel::curve(std::string_view id, std::string_view title,
                      const std::vector<std::vector<Point>>& runs, Pen pen) {
    Group& made = group(id, title);
    for (const std::vector<Point>& run : runs) {
        if (run.size() > 1)
            stroke(made, run, pen);
        else if (run.size() == 1)
            made.primitives.push_back(
                {Arc{.centre = run[0], .radius = 0.4, .pen = pen, .fill = pen.paint}, {}});
    }
}

void PlotPanel::name_ends(std::vector<PlotName> names) {
    // A curve that ends before the frame is named where it ends.
    constexpr double near = 4.0;
    const auto early = std::stable_partition(names.begin(), names.end(), [&](const PlotName& one) {
        return one.place.x >= frame_.right - near;
    });
    name_beside({early, names.end()});
    names.erase(early, names.end());
    if (names.empty()) return;
    constexpr double pitch = 1.35 * small_text;
    Group& made = group("ends", "");
    std::stable_sort(names.begin(), names.end(),
                     [](const PlotName& a, const PlotName& b) { return a.place.y < b.place.y; });
    std::vector<double> y;
    y.reserve(names.size());
    for (const PlotName& one : names)
        y.push_back(y.empty() ? one.place.y : std::max(one.place.y, y.back() + pitch));
    // What has gone down too far pushes those above it up again.
    double lowest = frame_.bottom;
    for (std::size_t i = names.size(); i-- > 0; lowest -= pitch) y[i] = std::min(y[i], lowest);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const Point& end = names[i].place;
        if (std::abs(y[i] - end.y) > 0.1 || end.x < frame_.right)
            stroke(made, {{end.x + 0.4, end.y}, {frame_.right + 1.7, y[i]}}, {.width = 0.13});
        write(made, {frame_.right + 2.0, y[i] + small_text / 2}, names[i].name, Anchor::start,
              small_text);
    }
}

void PlotPanel::shade(std::string_view id, std::string_view title, const std::vector<Point>& area,
                      const std::vector<Point>& border) {
    Group& made = group(id, title);
    made.primitives.push_back(
        {Polyline{
             .points = area, .closed = true, .pen = {.paint = Paint::none}, .fill = Paint::band},
         {}});
    stroke(made, border, {.paint = Paint::mark, .width = 0.35});
}

void PlotPanel::shade_above(std::string_view title, double y) {
    const double edge = at(0.0, y).y;
    if (edge < frame_.top || edge > frame_.bottom) return;
    shade(fmt::format("limit-{}", ++shaded_), title,
          {{frame_.left, frame_.top},
           {frame_.right, frame_.top},
           {frame_.right, edge},
           {frame_.left, edge}},
          {{frame_.left, edge}, {frame_.right, edge}});
}

void PlotPanel::shade_right(std::string_view title, double x) {
    const double edge = at(x, 0.0).x;
    if (edge < frame_.left || edge > frame_.right) return;
    shade(fmt::format("limit-{}", ++shaded_), title,
          {{edge, frame_.top},
           {frame_.right, frame_.top},
           {frame_.right, frame_.bottom},
           {edge, frame_.bottom}},
          {{edge, frame_.top}, {edge, frame_.bottom}});
}

void PlotPanel::hatch(const std::vector<PlotBox>& boxes) {
    if (boxes.empty()) return;
    Group& made = group("gap", "no steady state");
    for (const PlotBox& box : boxes) {
        const double left = std::max(box.left, frame_.left);
        const double right = std::min(box.right, frame_.right);
        const double top = std::max(box.top, frame_.top);
        const double bottom = std::min(box.bottom, frame_.bottom);
        // Lines x + y = k pitch, so that they go on from box to box.
        for (double sum = std::ceil((left + top) / hatch_pitch) * hatch_pitch;
             sum <= right + bottom; sum += hatch_pitch) {
            const double from = std::max(left, sum - bottom);
            const double to = std::min(right, sum - top);
            if (to > from)
                stroke(made, {{from, sum - from}, {to, sum - to}},
                       {.paint = Paint::faint, .width = 0.18});
        }
    }
}

void PlotPanel::cross(double x) {
    const Point place{at(x, 0.0).x, frame_.bottom};
    constexpr double size = 0.8;
    Group& made = drawing_.groups.back();
    stroke(made, {{place.x - size, place.y - size}, {place.x + size, place.y + size}}, {});
    stroke(made, {{place.x - size, place.y + size}, {place.x + size, place.y - size}}, {});
}

void PlotPanel::mark(std::string_view id, std::string_view name, Point place, Mark mark) {
    Group& made = group(id, name);
    const bool round = mark == Mark::round;
    constexpr Pen pen{.width = 0.25};
    if (round)
        made.primitives.push_back(
            {Arc{.centre = place, .radius = mark_size, .pen = pen, .fill = Paint::paper}, {}});
    else
        made.primitives.push_back({Polyline{.points = {{place.x - mark_size, place.y - mark_size},
                                                       {place.x + mark_size, place.y - mark_size},
                                                       {place.x + mark_size, place.y + mark_size},
                                                       {place.x - mark_size, place.y + mark_size}},
                                            .closed = true,
                                            .pen = pen,
                                            .fill = Paint::ink},
                                   {}});
    taken_.push_back(
        {place.x - mark_size, place.y - mark_size, place.x + mark_size, place.y + mark_size});
    marked_.push_back({drawing_.groups.size() - 1, {place, std::string(name)}});
}

}  // namespace loopwright
