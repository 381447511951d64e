#include <loopwright/hydraulics/measured_drop.h>

#include <array>
#include <cmath>

namespace loopwright::hydraulics {

namespace {

std::array<double, 2> point(double flow, const Oil& oil) {
    return {std::abs(flow), oil.viscosity.si()};
}

}  // namespace

ThroughFlow::Figure drop(const MeasuredDrop& measured, double flow, const Oil& oil) {
    const Grid::Figure found = measured.grid.at(point(flow, oil));
    const double sign = flow < 0.0 ? -1.0 : 1.0;
    ThroughFlow::Figure lost(sign * found.value);
    lost.slope = {found.slope[0], sign * found.slope[1]};
    return lost;
}

std::optional<Grid::Outside> outside(const MeasuredDrop& measured, double flow, const Oil& oil) {
    return measured.grid.outside(point(flow, oil));
}

}  // namespace loopwright::hydraulics
