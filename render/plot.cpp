#include <loopwright/render/plot.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include <loopwright/base/unit_table.h>
#include <loopwright/base/unit_text.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

using namespace hydraulics;

namespace {

constexpr double sheet_width = 297.0;  // A4 across, ISO 216
constexpr double sheet_height = 210.0;
constexpr double edge = 10.0;
constexpr double heading = 16.0;
constexpr double footing = 8.0;
constexpr int across = 3;
constexpr int down = 2;
constexpr double text = 1.8;
constexpr double title_text = 2.5;
constexpr double before_axis = 15.0;
constexpr double below_axis = 10.0;
constexpr double above_axis = 7.0;
constexpr double behind_axis = 17.0;  // room for the curves' names

/// What an axis shows, in the unit that people read.
struct Scale {
    const Unit* unit = nullptr;
    double least = 0.0;
    double most = 1.0;
    double step = 0.25;

    double shown(double si) const { return (si - unit->offset) / unit->factor; }
    double share(double si) const { return (shown(si) - least) / (most - least); }
};

const Unit* unit_for(Dimension dimension) {
    if (dimension == Dimension::ratio)
        for (const Unit& unit : units_of(dimension))
            if (unit.spelling == "%") return &unit;
    return &units_of(dimension).front();
}

/// 1, 2 or 5 times a power of ten, for about five steps.
double round_step(double span) {
    const double rough = span / 5.0;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double step : {1.0, 2.0, 5.0})
        if (rough <= step * power * 1.0001) return step * power;
    return 10.0 * power;
}

Scale scale_of(Dimension dimension, const std::vector<double>& figures) {
    Scale scale{.unit = unit_for(dimension)};
    double low = 0.0;
    double high = 0.0;
    for (const double si : figures) {
        low = std::min(low, scale.shown(si));
        high = std::max(high, scale.shown(si));
    }
    if (high - low < 1e-9) high = low + 1.0;
    scale.step = round_step(high - low);
    scale.least = std::floor(low / scale.step + 1e-9) * scale.step;
    scale.most = std::ceil(high / scale.step - 1e-9) * scale.step;
    return scale;
}

/// Of the swept axis, which need not have nothing on it.
Scale scale_of(const SweepAxis& axis) {
    Scale scale{.unit = unit_for(axis.spec->dimension)};
    double low = scale.shown(std::min(axis.from, axis.to));
    double high = scale.shown(std::max(axis.from, axis.to));
    if (high - low < 1e-9) high = low + 1.0;
    scale.step = round_step(high - low);
    scale.least = std::floor(low / scale.step + 1e-9) * scale.step;
    scale.most = std::ceil(high / scale.step - 1e-9) * scale.step;
    return scale;
}

std::string tick(double value, double step) {
    const double shown = std::abs(value) < step * 1e-6 ? 0.0 : value;
    return fmt::format("{:.6g}", shown);
}

std::string headed(std::string_view name, const Unit& unit) {
    return unit.spelling.empty() ? std::string(name) : fmt::format("{} ({})", name, unit.spelling);
}

/// One panel of the sheet: axes with ticks, and the curves.
class PlotPanel {
  public:
    PlotPanel(Group& group, Point corner, const Scale& x, const Scale& y)
        : group_(group),
          left_(corner.x + before_axis),
          top_(corner.y + above_axis),
          width_((sheet_width - 2 * edge) / across - before_axis - behind_axis),
          height_((sheet_height - 2 * edge - heading - footing) / down - above_axis - below_axis),
          x_(x),
          y_(y) {}

    Point at(double x, double y) const {
        return {left_ + width_ * x_.share(x), top_ + height_ * (1.0 - y_.share(y))};
    }

    void axes(const std::string& title, const std::string& below) {
        stroke({{left_, top_}, {left_, top_ + height_}, {left_ + width_, top_ + height_}}, 0.35);
        for (double v = x_.least; v <= x_.most + 1e-6 * x_.step; v += x_.step) {
            const double x = left_ + width_ * (v - x_.least) / (x_.most - x_.least);
            stroke({{x, top_}, {x, top_ + height_ + 1.0}}, 0.13, Paint::faint);
            write({x, top_ + height_ + 4.0}, tick(v, x_.step), Anchor::middle);
        }
        for (double v = y_.least; v <= y_.most + 1e-6 * y_.step; v += y_.step) {
            const double y = top_ + height_ * (1.0 - (v - y_.least) / (y_.most - y_.least));
            stroke({{left_ - 1.0, y}, {left_ + width_, y}}, 0.13, Paint::faint);
            write({left_ - 1.8, y + text / 2}, tick(v, y_.step), Anchor::end);
        }
        write({left_, top_ - 2.5}, title, Anchor::start, title_text);
        write({left_ + width_ / 2, top_ + height_ + 8.0}, below, Anchor::middle);
    }

    void curve(const std::vector<Point>& points) {
        if (points.size() > 1)
            stroke(points, 0.35);
        else if (points.size() == 1)
            group_.primitives.push_back({Arc{.centre = points[0], .radius = 0.5}, {}});
    }

    /// A name where a curve ends, clear of those before.
    void name_end(Point end, const std::string& name) {
        double y = end.y + text / 2;
        std::sort(taken_.begin(), taken_.end());
        for (const double other : taken_)
            if (std::abs(other - y) < 1.5 * text) y = other + 1.5 * text;
        if (y > top_ + height_ + 6.0) return;
        taken_.push_back(y);
        if (std::abs(y - end.y - text / 2) > 0.1)
            stroke({{end.x + 0.4, end.y}, {end.x + 1.6, y - text / 2}}, 0.13);
        write({end.x + 2.0, y}, name, Anchor::start);
    }

    void cross(double x) {
        const Point at{left_ + width_ * x_.share(x), top_ + height_};
        constexpr double size = 0.8;
        stroke({{at.x - size, at.y - size}, {at.x + size, at.y + size}}, 0.25);
        stroke({{at.x - size, at.y + size}, {at.x + size, at.y - size}}, 0.25);
    }

  private:
    void stroke(std::vector<Point> points, double width, Paint paint = Paint::ink) {
        group_.primitives.push_back(
            {Polyline{.points = std::move(points), .pen = {.paint = paint, .width = width}}, {}});
    }
    void write(Point at, const std::string& words, Anchor anchor, double height = text) {
        group_.primitives.push_back(
            {Text{.at = at, .text = words, .height = height, .anchor = anchor}, {}});
    }

    Group& group_;
    double left_;
    double top_;
    double width_;
    double height_;
    const Scale& x_;
    const Scale& y_;
    std::vector<double> taken_;
};

struct Shown {
    std::size_t column = 0;
    std::string title;
};

/// Columns that are drawn, in the order of the panels.
std::vector<Shown> shown_of(const Circuit& circuit, const Sweep& sweep) {
    std::string actuator;
    for (const SweepColumn& column : sweep.columns)
        for (const Component& one : circuit.components)
            if (actuator.empty() && one.path == column.id &&
                (one.kind->part == Part::actuator || one.kind->part == Part::pump_motor))
                actuator = column.id;
    std::vector<Shown> shown;
    const auto add = [&](std::string_view id, std::string_view quantity) {
        for (std::size_t i = 0; i < sweep.columns.size(); ++i)
            if (sweep.columns[i].id == id && sweep.columns[i].quantity == quantity)
                shown.push_back({i, id.empty() ? std::string(quantity)
                                               : fmt::format("{} of {}", quantity, id)});
    };
    for (const std::string_view quantity :
         {"speed", "velocity", "torque", "force", "pressure", "power"})
        add(actuator, quantity);
    add("", "power in");
    add("", "efficiency");
    return shown;
}

}  // namespace

Drawing plot_of(const Circuit& circuit, const Sweep& sweep, std::string_view point) {
    Drawing drawing{.width = sheet_width, .height = sheet_height};
    drawing.title = std::string(circuit.title.title);
    drawing.description = "Curves over a swept datum";
    const SweepAxis& first = sweep.axes.front();
    const std::size_t curves =
        sweep.axes.size() > 1 ? static_cast<std::size_t>(sweep.axes[1].count) : 1;
    const Scale x = scale_of(first);
    const std::string below = headed(first.datum, *x.unit);

    Group& head = drawing.groups.emplace_back();
    head.id = "heading";
    const auto write = [&](Point at, std::string words, double height) {
        head.primitives.push_back({Text{.at = at, .text = std::move(words), .height = height}, {}});
    };
    write({edge, edge + 5.0}, drawing.title, 3.5);
    write({edge, edge + 10.5},
          sweep.axes.size() > 1 ? fmt::format("Point {}, over {}; each curve a {}", point,
                                              first.datum, sweep.axes[1].datum)
                                : fmt::format("Point {}, over {}", point, first.datum),
          title_text);
    write({edge, sheet_height - edge},
          "Computed for steady states; supports and does not replace review by a competent person. "
          "A cross on an axis: no steady state.",
          text);

    const std::vector<Shown> shown = shown_of(circuit, sweep);
    for (std::size_t p = 0; p < shown.size() && p < std::size_t{across * down}; ++p) {
        Group& group = drawing.groups.emplace_back();
        group.id = fmt::format("plot-{}", p + 1);
        group.title = shown[p].title;
        std::vector<double> figures;
        for (const SweepRow& row : sweep.rows)
            if (row.solved && row.figures[shown[p].column])
                figures.push_back(*row.figures[shown[p].column]);
        const Scale y = scale_of(sweep.columns[shown[p].column].dimension, figures);
        const Point corner{
            edge + static_cast<double>(p % across) * (sheet_width - 2 * edge) / across,
            edge + heading +
                static_cast<double>(p / across) * (sheet_height - 2 * edge - heading - footing) /
                    down};
        PlotPanel panel(group, corner, x, y);
        panel.axes(headed(shown[p].title, *y.unit), below);
        for (std::size_t c = 0; c < curves; ++c) {
            std::vector<Point> run;
            std::optional<Point> end;
            for (std::size_t i = 0; i < static_cast<std::size_t>(first.count); ++i) {
                const SweepRow& row = sweep.rows[i * curves + c];
                const auto figure =
                    row.solved ? row.figures[shown[p].column] : std::optional<double>();
                if (figure) {
                    run.push_back(panel.at(row.axes[0], *figure));
                    end = run.back();
                    continue;
                }
                if (!row.solved) panel.cross(row.axes[0]);
                panel.curve(run);
                run.clear();
            }
            panel.curve(run);
            if (curves > 1 && end)
                panel.name_end(
                    *end, format_quantity(sweep.rows[c].axes[1], sweep.axes[1].spec->dimension));
        }
    }
    return drawing;
}

}  // namespace loopwright
