#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// Measured figures over one to three axes, one for each combination, interpolated linearly along
/// each axis.
class Grid {
  public:
    static constexpr std::size_t most_axes = 3;
    using Figure = Dual<most_axes>;

    /// Axes rise; one without values is one on which nothing hangs. Figures stand with the last
    /// axis changing fastest. Throws std::invalid_argument where that is not so or their number is
    /// not the product of the axes'.
    Grid(std::vector<std::vector<double>> axes, std::vector<double> figures);

    /// Where a point leaves what was measured.
    struct Outside {
        std::size_t axis;
        double at;
        double least;
        double most;
    };
    /// The first axis on which the point is outside; nothing inside.
    std::optional<Outside> outside(std::span<const double> at) const;

    /// The figure with its slopes over the axes in their order; on an inner edge those of the cell
    /// above. `at` holds a number for each axis. Outside, the nearest cell goes on: for a solver's
    /// steps, never for a result, which asks `outside` first.
    Figure at(std::span<const double> at) const;

    std::size_t axes() const { return axes_.size(); }
    /// Whether something hangs on that axis.
    bool has_axis(std::size_t axis) const { return !axes_[axis].empty(); }
    /// The least and the largest value of an axis that has values.
    struct Ends {
        double least;
        double most;
    };
    Ends ends(std::size_t axis) const { return {axes_[axis].front(), axes_[axis].back()}; }

  private:
    std::vector<std::vector<double>> axes_;
    std::vector<double> figures_;
};

}  // namespace loopwright::hydraulics
