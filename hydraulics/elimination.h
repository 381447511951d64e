#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace loopwright::hydraulics {

/// Where a matrix may have an entry other than nothing.
struct MatrixPlace {
    std::uint32_t row = 0;
    std::uint32_t column = 0;

    // NOLINTNEXTLINE(modernize-use-nullptr)
    friend auto operator<=>(const MatrixPlace&, const MatrixPlace&) = default;
};

/// Gaussian elimination of a square sparse matrix whose places are known and whose figures change
/// from step to step. The order of pivots is planned once, for few new places (Markowitz 1957) and
/// with no pivot far below the largest of its column; from then on the same operations are replayed
/// over a flat list of figures, without any search.
class Elimination {
  public:
    /// `places`: sorted, each once; all rows and columns below `size`.
    Elimination(std::size_t size, std::vector<MatrixPlace> places);

    std::size_t size() const { return size_; }
    std::span<const MatrixPlace> places() const { return places_; }
    /// Index of a place; `places().size()` where it is none.
    std::size_t index_of(MatrixPlace place) const;

    /// Takes the figures, one for each place, apart. Plans where that was not done or where the
    /// order planned no longer suits the figures. False: the matrix is singular.
    bool factor(std::span<const double> figures);

    /// Solves for a right side, in place; after `factor`.
    void solve(std::span<double> right_side) const;

  private:
    bool plan(std::span<const double> figures);
    bool replay(std::span<const double> figures);

    /// A row below a pivot: its factor's place, and where in the row each of the pivot row's other
    /// places is taken off.
    struct Target {
        std::uint32_t pivot = 0;   // that the row is in the end; while planning, the row
        std::uint32_t factor = 0;  // into work_
    };
    struct Pivot {
        std::uint32_t row = 0;
        std::uint32_t column = 0;
        std::uint32_t place = 0;        // into work_
        double planned = 0.0;           // its size when the order was planned
        std::uint32_t first_other = 0;  // into others_
        std::uint32_t last_other = 0;
        std::uint32_t first_target = 0;  // into targets_
        std::uint32_t last_target = 0;
    };
    /// A place of the pivot's row behind it.
    struct Other {
        std::uint32_t pivot = 0;  // that its column is in the end; while planning, the column
        std::uint32_t place = 0;
    };

    class Planner;

    std::size_t size_;
    std::vector<MatrixPlace> places_;
    std::vector<Pivot> pivots_;
    std::vector<Other> others_;
    std::vector<Target> targets_;
    std::vector<std::uint32_t> target_places_;  // of each target in turn, one for each other place
    std::size_t work_size_ = 0;
    std::vector<double> work_;
    // What is left of it, in the order in which it is asked for:
    std::vector<double> upper_;     // at the others' places
    std::vector<double> factors_;   // of the targets
    std::vector<double> inverses_;  // of the pivots' figures, in their order
    mutable std::vector<double> right_;
};

}  // namespace loopwright::hydraulics
