#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <loopwright/render/drawing.h>

namespace loopwright {

/// Lines of equal height over a grid of columns by rows: where the figure between two neighbours
/// passes the level, taken to run straight between them ("marching squares"). Points are in steps
/// of the grid. Cells with a corner that has no figure have none. A line that closes ends where it
/// began.
std::vector<std::vector<Point>> contours(
    int columns, int rows, const std::function<std::optional<double>(int, int)>& figure,
    double level);

}  // namespace loopwright
