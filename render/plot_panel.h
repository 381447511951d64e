#pragma once

#include <span>
#include <string>
#include <utility>
#include <vector>

#include <loopwright/base/dimension.h>
#include <loopwright/base/unit_table.h>
#include <loopwright/render/drawing.h>

/// One diagram of a sheet of plots: axes with ticks, and what is drawn between them. Each thing is
/// a group of its own, so that a reader of the SVG finds it by its id and title.
namespace loopwright {

/// What an axis shows, in the unit that people read, from one tick to another.
struct PlotScale {
    const Unit* unit = nullptr;
    double least = 0.0;
    double most = 1.0;
    double step = 0.25;  ///< 1, 2 or 5 times a power of ten

    double shown(double si) const { return (si - unit->offset) / unit->factor; }
    double si(double shown) const { return shown * unit->factor + unit->offset; }
    double share(double si) const { return (shown(si) - least) / (most - least); }
};

/// The unit that people read a dimension in; of a ratio per cent.
const Unit* plot_unit(Dimension dimension);
/// Ticks about all figures (SI).
PlotScale plot_scale(const Unit* unit, std::span<const double> figures);
/// "speed of M1 (rpm)"
std::string with_unit(std::string_view name, const Unit& unit);

/// On the sheet, mm.
struct PlotBox {
    double left = 0.0;
    double top = 0.0;
    double right = 0.0;
    double bottom = 0.0;
};

struct PlotName {
    Point place = {};  ///< on the sheet
    std::string name = {};
};

class PlotPanel {
  public:
    /// Keeps a reference to the drawing. `id`: "plot-1"; `outer`: with the room for words about it.
    PlotPanel(Drawing& drawing, std::string id, const PlotBox& outer, const PlotScale& x,
              const PlotScale& y);

    const PlotScale& x() const { return x_; }
    const PlotScale& y() const { return y_; }
    /// Of figures in SI on the sheet.
    Point at(double x, double y) const;
    const PlotBox& frame() const { return frame_; }
    /// From one figure of the x axis (SI) to another, over all the frame.
    PlotBox band(double from, double to) const;

    /// `title` of the panel and `below` its axis, each with its unit.
    void axes(std::string_view title, std::string_view above, std::string_view below);
    /// Runs of points on the sheet. A run of one point is a dot.
    void curve(std::string_view id, std::string_view title,
               const std::vector<std::vector<Point>>& runs, Pen pen = {.width = 0.35});
    /// Behind the frame, where curves end, from top to bottom, clear of one another.
    void name_ends(std::vector<PlotName> names);
    /// Beside places inside the frame, on paper of their own. Where they crowd there, in a row
    /// above or below with leaders. What has no room is left out.
    void name_beside(std::vector<PlotName> names);
    /// The same on a line.
    void name_along(const std::vector<Point>& line, std::string_view name);
    /// Beyond a limit: an area, with a line where it begins.
    void shade(std::string_view id, std::string_view title, const std::vector<Point>& area,
               const std::vector<Point>& border);
    /// What is above a figure of the y axis, or right of one of the x axis, in SI. Nothing where
    /// that is outside.
    void shade_above(std::string_view title, double y);
    void shade_right(std::string_view title, double x);
    /// Where there is no state: from and to on the sheet, cut at the frame.
    void hatch(const std::vector<PlotBox>& boxes);
    void cross(double x);
    enum class Mark { round, square };
    void mark(std::string_view id, std::string_view name, Point place, Mark mark);
    /// Names all marks so far, each beside its own.
    void name_marks();

  private:
    Group& group(std::string_view id, std::string_view title);
    static void stroke(Group& group, std::vector<Point> points, const Pen& pen);
    static void write(Group& group, Point at, std::string_view words, Anchor anchor, double height);
    /// Takes the first of the places for a name's baseline that is free; false where none is.
    bool put_name(Group& group, std::string_view name, std::span<const Point> baselines);
    bool is_free(const PlotBox& box) const;
    /// Whether each name has room right beside its place, apart from all others.
    bool have_room(const std::vector<PlotName>& names) const;
    /// In a row, from left to right, with a leader to each place; false where no row is free.
    bool name_in_a_row(std::vector<PlotName> names);

    Drawing& drawing_;
    std::string id_;
    PlotBox frame_;
    PlotScale x_;
    PlotScale y_;
    std::vector<PlotBox> taken_;  // by marks and names inside the frame
    std::vector<std::pair<std::size_t, PlotName>> marked_ = {};  // mark's group -> name to come
    int shaded_ = 0;
};

}  // namespace loopwright
