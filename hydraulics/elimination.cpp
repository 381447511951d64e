#include <loopwright/hydraulics/elimination.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace loopwright::hydraulics {

namespace {

constexpr std::uint32_t nowhere = std::numeric_limits<std::uint32_t>::max();

/// A pivot is at least this share of the largest figure left in its column (customary for sparse
/// matrices: Duff, Erisman and Reid, Direct Methods for Sparse Matrices, from memory).
constexpr double pivot_share = 0.1;
/// A replayed pivot may fall to this share of what it was when the order was planned; then the
/// order is planned again.
constexpr double worn_share = 1e-6;
/// So many columns with the fewest places are looked at for each pivot.
constexpr int columns_looked_at = 4;

}  // namespace

/// One planning: the figures are taken apart on the way, so that each choice sees true ones.
class Elimination::Planner {
  public:
    Planner(Elimination& made, std::span<const double> figures)
        : made_(made), rows_(made.size_), columns_(made.size_), queue_at_(made.size_, 0) {
        figures_.assign(figures.begin(), figures.end());
        for (std::uint32_t i = 0; i < made.places_.size(); ++i) {
            const MatrixPlace& place = made.places_[i];
            rows_[place.row].push_back({place.column, i});
            columns_[place.column].push_back(place.row);
        }
        row_done_.assign(made.size_, 0);
        for (std::uint32_t column = 0; column < made.size_; ++column) enqueue(column);
    }

    bool run() {
        made_.pivots_.clear();
        made_.others_.clear();
        made_.targets_.clear();
        made_.target_places_.clear();
        while (!queue_.empty())
            if (!step()) return false;
        made_.work_size_ = figures_.size();
        made_.inverses_.resize(made_.pivots_.size());
        made_.upper_.resize(made_.others_.size());
        made_.factors_.resize(made_.targets_.size());
        // So that right sides stand in the order of pivots.
        std::vector<std::uint32_t> pivot_of_row(made_.size_, 0);
        std::vector<std::uint32_t> pivot_of_column(made_.size_, 0);
        for (std::uint32_t p = 0; p < made_.pivots_.size(); ++p) {
            pivot_of_row[made_.pivots_[p].row] = p;
            pivot_of_column[made_.pivots_[p].column] = p;
        }
        for (Target& target : made_.targets_) target.pivot = pivot_of_row[target.pivot];
        for (Other& other : made_.others_) other.pivot = pivot_of_column[other.pivot];
        return true;
    }

  private:
    struct Item {
        std::uint32_t column = 0;
        std::uint32_t place = 0;
    };
    struct Choice {
        std::uint32_t row = nowhere;
        std::uint32_t column = nowhere;
        std::size_t cost = std::numeric_limits<std::size_t>::max();
        double size = 0.0;
    };

    void enqueue(std::uint32_t column) {
        queue_at_[column] = columns_[column].size();
        queue_.emplace(queue_at_[column], column);
    }
    void changed(std::uint32_t column) {
        if (queue_at_[column] == columns_[column].size()) return;
        queue_.erase({queue_at_[column], column});
        enqueue(column);
    }

    std::uint32_t place_in(std::uint32_t row, std::uint32_t column) const {
        for (const Item& item : rows_[row])
            if (item.column == column) return item.place;
        return nowhere;
    }

    Choice choose() const {
        Choice best;
        int looked_at = 0;
        for (const auto& [count, column] : queue_) {
            double largest = 0.0;
            for (const std::uint32_t row : columns_[column])
                largest = std::max(largest, std::abs(figures_[place_in(row, column)]));
            if (largest == 0.0 || !std::isfinite(largest)) continue;
            for (const std::uint32_t row : columns_[column]) {
                const double size = std::abs(figures_[place_in(row, column)]);
                if (size < pivot_share * largest) continue;
                const std::size_t cost = (rows_[row].size() - 1) * (count - 1);
                if (cost < best.cost || (cost == best.cost && size > best.size))
                    best = {row, column, cost, size};
            }
            if (++looked_at >= columns_looked_at || best.cost == 0) break;
        }
        return best;
    }

    bool step() {
        const Choice choice = choose();
        if (choice.row == nowhere) return false;
        Pivot pivot;
        pivot.row = choice.row;
        pivot.column = choice.column;
        pivot.place = place_in(choice.row, choice.column);
        pivot.planned = choice.size;
        pivot.first_other = static_cast<std::uint32_t>(made_.others_.size());
        for (const Item& item : rows_[choice.row])
            if (item.column != choice.column) made_.others_.push_back({item.column, item.place});
        pivot.last_other = static_cast<std::uint32_t>(made_.others_.size());
        pivot.first_target = static_cast<std::uint32_t>(made_.targets_.size());
        row_done_[choice.row] = 1;
        queue_.erase({queue_at_[choice.column], choice.column});
        for (const Item& item : rows_[choice.row])
            if (item.column != choice.column) drop(columns_[item.column], choice.row);
        for (const std::uint32_t row : columns_[choice.column])
            if (row_done_[row] == 0) take_off(pivot, row);
        for (std::uint32_t i = pivot.first_other; i < pivot.last_other; ++i)
            changed(made_.others_[i].pivot);
        pivot.last_target = static_cast<std::uint32_t>(made_.targets_.size());
        made_.pivots_.push_back(pivot);
        return true;
    }

    static void drop(std::vector<std::uint32_t>& rows, std::uint32_t row) {
        const auto at = std::find(rows.begin(), rows.end(), row);
        if (at == rows.end()) return;
        *at = rows.back();
        rows.pop_back();
    }

    void take_off(const Pivot& pivot, std::uint32_t row) {
        std::vector<Item>& items = rows_[row];
        const std::uint32_t own = place_in(row, pivot.column);
        items.erase(std::find_if(items.begin(), items.end(),
                                 [&](const Item& item) { return item.column == pivot.column; }));
        made_.targets_.push_back({row, own});
        const double factor = figures_[own] / figures_[pivot.place];
        figures_[own] = factor;
        for (std::uint32_t i = pivot.first_other; i < pivot.last_other; ++i) {
            const Other other = made_.others_[i];
            std::uint32_t place = place_in(row, other.pivot);
            if (place == nowhere) {
                place = static_cast<std::uint32_t>(figures_.size());
                figures_.push_back(0.0);
                items.push_back({other.pivot, place});
                columns_[other.pivot].push_back(row);
            }
            figures_[place] -= factor * figures_[other.place];
            made_.target_places_.push_back(place);
        }
    }

    Elimination& made_;
    std::vector<double> figures_;
    std::vector<std::vector<Item>> rows_;              // what is left of each
    std::vector<std::vector<std::uint32_t>> columns_;  // rows left that have a place in it
    std::vector<std::size_t> queue_at_;
    std::set<std::pair<std::size_t, std::uint32_t>> queue_;  // columns left, those with few first
    std::vector<std::uint8_t> row_done_;
};

Elimination::Elimination(std::size_t size, std::vector<MatrixPlace> places)
    : size_(size), places_(std::move(places)), right_(size) {}

std::size_t Elimination::index_of(MatrixPlace place) const {
    const auto at = std::lower_bound(places_.begin(), places_.end(), place);
    return at != places_.end() && *at == place ? static_cast<std::size_t>(at - places_.begin())
                                               : places_.size();
}

bool Elimination::factor(std::span<const double> figures) {
    if (!pivots_.empty() && replay(figures)) return true;
    if (plan(figures) && replay(figures)) return true;
    pivots_.clear();
    return false;
}

bool Elimination::plan(std::span<const double> figures) {
    if (!Planner(*this, figures).run()) {
        pivots_.clear();
        return false;
    }
    return true;
}

bool Elimination::replay(std::span<const double> figures) {
    work_.assign(work_size_, 0.0);
    std::copy(figures.begin(), figures.end(), work_.begin());
    const std::uint32_t* place = target_places_.data();
    for (std::size_t p = 0; p < pivots_.size(); ++p) {
        const Pivot& pivot = pivots_[p];
        const double value = work_[pivot.place];
        // Written so that a figure that is no number fails as well.
        if (!(std::abs(value) > worn_share * pivot.planned)) return false;
        const double inverse = 1.0 / value;
        inverses_[p] = inverse;
        for (std::uint32_t i = pivot.first_other; i < pivot.last_other; ++i)
            upper_[i] = work_[others_[i].place];
        for (std::uint32_t t = pivot.first_target; t < pivot.last_target; ++t) {
            const double factor = work_[targets_[t].factor] * inverse;
            factors_[t] = factor;
            for (std::uint32_t i = pivot.first_other; i < pivot.last_other; ++i, ++place)
                work_[*place] -= factor * upper_[i];
        }
    }
    return true;
}

void Elimination::solve(std::span<double> right_side) const {
    for (std::size_t p = 0; p < pivots_.size(); ++p) right_[p] = right_side[pivots_[p].row];
    for (std::size_t p = 0; p < pivots_.size(); ++p) {
        const double own = right_[p];
        for (std::uint32_t t = pivots_[p].first_target; t < pivots_[p].last_target; ++t)
            right_[targets_[t].pivot] -= factors_[t] * own;
    }
    for (std::size_t p = pivots_.size(); p-- > 0;) {
        const Pivot& pivot = pivots_[p];
        double value = right_[p];
        for (std::uint32_t i = pivot.first_other; i < pivot.last_other; ++i)
            value -= upper_[i] * right_[others_[i].pivot];
        right_[p] = value * inverses_[p];
        right_side[pivot.column] = right_[p];
    }
}

}  // namespace loopwright::hydraulics
