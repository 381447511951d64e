#include <loopwright/hydraulics/grid.h>

#include <algorithm>
#include <array>
#include <functional>
#include <stdexcept>

namespace loopwright::hydraulics {

Grid::Grid(std::vector<std::vector<double>> axes, std::vector<double> figures)
    : axes_(std::move(axes)), figures_(std::move(figures)) {
    if (axes_.empty() || axes_.size() > most_axes)
        throw std::invalid_argument("a grid has one to three axes");
    std::size_t combinations = 1;
    for (const std::vector<double>& axis : axes_) {
        const bool rises =
            std::adjacent_find(axis.begin(), axis.end(), std::greater_equal<>()) == axis.end();
        if (!rises) throw std::invalid_argument("a grid's axes rise");
        combinations *= std::max<std::size_t>(axis.size(), 1);
    }
    if (figures_.size() != combinations)
        throw std::invalid_argument("a grid has a figure for each combination");
}

std::optional<Grid::Outside> Grid::outside(std::span<const double> at) const {
    for (std::size_t i = 0; i < axes_.size(); ++i)
        if (!axes_[i].empty() && !(at[i] >= axes_[i].front() && at[i] <= axes_[i].back()))
            return Outside{i, at[i], axes_[i].front(), axes_[i].back()};
    return std::nullopt;
}

Grid::Figure Grid::at(std::span<const double> at) const {
    std::array<Figure, most_axes> share;  // of the way to the cell's upper end
    std::array<std::size_t, most_axes> stride{};
    std::size_t first = 0;
    std::size_t size = 1;
    for (std::size_t i = axes_.size(); i-- > 0;) {
        const std::vector<double>& axis = axes_[i];
        stride[i] = axis.size() > 1 ? size : 0;
        if (axis.size() > 1) {
            const auto above = std::upper_bound(axis.begin() + 1, axis.end() - 1, at[i]);
            share[i] = (Figure::variable(i, at[i]) - *(above - 1)) / (*above - *(above - 1));
            first += size * static_cast<std::size_t>(above - 1 - axis.begin());
        }
        size *= std::max<std::size_t>(axis.size(), 1);
    }
    Figure sum;
    for (std::size_t corner = 0; corner < std::size_t{1} << axes_.size(); ++corner) {
        Figure weight = 1.0;
        std::size_t index = first;
        for (std::size_t i = 0; i < axes_.size(); ++i) {
            const bool upper = (corner >> i & 1U) != 0;
            weight = weight * (upper ? share[i] : 1.0 - share[i]);
            if (upper) index += stride[i];
        }
        sum += weight * figures_[index];
    }
    return sum;
}

}  // namespace loopwright::hydraulics
