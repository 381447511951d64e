#include <loopwright/render/occupancy.h>

#include <algorithm>
#include <cmath>

namespace loopwright {

namespace {

constexpr double squares = 4.0;  // a module

// Boxes that only touch do not overlap.
constexpr double tolerance = 1e-3;

}  // namespace

Occupancy::Occupancy(const Box& extent)
    : left_(std::floor(extent.left)),
      top_(std::floor(extent.top)),
      width_(static_cast<int>(std::ceil((extent.right - left_) * squares)) + 1),
      height_(static_cast<int>(std::ceil((extent.bottom - top_) * squares)) + 1),
      taken_(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), 0) {}

int Occupancy::column(double x) const {
    return static_cast<int>(std::floor((x - left_) * squares));
}
int Occupancy::row(double y) const { return static_cast<int>(std::floor((y - top_) * squares)); }

void Occupancy::take(const Box& box) {
    const int last_row = std::min(height_ - 1, row(box.bottom - tolerance));
    const int last_column = std::min(width_ - 1, column(box.right - tolerance));
    for (int y = std::max(0, row(box.top + tolerance)); y <= last_row; ++y)
        for (int x = std::max(0, column(box.left + tolerance)); x <= last_column; ++x)
            taken_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
                   static_cast<std::size_t>(x)] = 1;
}

bool Occupancy::is_free(const Box& box) const {
    const int first_row = row(box.top + tolerance);
    const int first_column = column(box.left + tolerance);
    const int last_row = row(box.bottom - tolerance);
    const int last_column = column(box.right - tolerance);
    if (first_row < 0 || first_column < 0 || last_row >= height_ || last_column >= width_)
        return false;
    for (int y = first_row; y <= last_row; ++y)
        for (int x = first_column; x <= last_column; ++x)
            if (taken_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
                       static_cast<std::size_t>(x)] != 0)
                return false;
    return true;
}

}  // namespace loopwright
