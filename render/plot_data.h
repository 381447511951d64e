#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/sweep.h>
#include <loopwright/render/plot_panel.h>

/// What the diagrams of a sweep show: which columns, with which limits and scales.
namespace loopwright {

/// What one diagram over the first axis shows.
struct PlotColumn {
    std::size_t column = 0;
    std::string title = {};
    std::optional<double> limit = {};  ///< SI
    std::string limited = {};          ///< "max-pressure of M1"
};

/// Effort over speed, both counted in the sense of the motion: below nothing it is driven. SI.
struct PlaneFigure {
    double speed = 0.0;
    double effort = 0.0;
};

/// Keeps references to what it is made of.
class PlotData {
  public:
    PlotData(const Circuit& circuit, const hydraulics::Sweep& sweep,
             const hydraulics::SweepRows& rows);

    const std::vector<PlotColumn>& shown() const { return shown_; }
    std::optional<std::size_t> efficiency() const { return efficiency_; }
    /// Of all prime movers together, W; nothing where one does not say.
    std::optional<double> power() const { return power_; }
    const std::vector<hydraulics::DutyRow>& duty() const { return duty_; }

    // Steps of the axes; where there is no second one, it has one step.
    std::size_t first() const { return first_; }
    std::size_t second() const { return second_; }
    std::string_view datum(std::size_t axis) const { return sweep_.axes()[axis].datum; }
    /// At a step or between two, SI.
    double at(std::size_t axis, double step) const;
    /// Half a step before (-1) a step or behind it (1), not beyond the axis.
    double half_way(std::size_t axis, std::size_t step, int side) const;
    std::string name_of(std::size_t axis, std::size_t step) const;
    PlotScale scale_of_axis(std::size_t axis) const;

    bool is_solved(std::size_t i, std::size_t j) const;
    std::optional<double> figure(std::size_t i, std::size_t j, std::size_t column) const;
    /// With nothing on it and, where the figures come near, the limit.
    PlotScale scale_of(const PlotColumn& shown) const;
    std::string text_of(std::size_t column, double si) const;

    /// Where a duty point stands on an axis, SI; nothing where it is not on it.
    std::optional<double> place_of(const hydraulics::DutyRow& point, std::size_t axis) const;

    /// The columns of effort and speed: of a load with wheels, else of the first actuator.
    bool has_plane() const { return effort_ && speed_; }
    std::size_t speed() const { return *speed_; }
    std::size_t effort() const { return *effort_; }
    std::string title_of(std::size_t column) const;
    /// A velocity of wheels is read in km/h.
    const Unit* unit_of(std::size_t column) const;
    std::optional<PlaneFigure> in_plane(const hydraulics::SweepRows& rows, std::size_t row) const;
    std::optional<PlaneFigure> in_plane(std::size_t i, std::size_t j) const;
    /// All rows; the largest of each kind is the corner.
    std::vector<PlaneFigure> plane() const;

  private:
    std::optional<std::size_t> column(std::string_view id, std::string_view quantity) const;
    const Component* part(std::string_view path) const;
    void find_power();
    void find_columns();

    const Circuit& circuit_;
    const hydraulics::Sweep& sweep_;
    const hydraulics::SweepRows& rows_;
    std::size_t first_;
    std::size_t second_;
    std::vector<hydraulics::DutyRow> duty_;
    std::vector<PlotColumn> shown_ = {};
    std::optional<std::size_t> speed_ = {};
    std::optional<std::size_t> effort_ = {};
    std::optional<std::size_t> efficiency_ = {};
    double creep_ = 0.0;   // m/s or rad/s; what is slower stands
    bool wheels_ = false;  // then the effort has the sense of the road, not that of the motion
    std::optional<double> power_ = {};
};

}  // namespace loopwright
