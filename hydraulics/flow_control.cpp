#include <loopwright/hydraulics/flow_control.h>

#include <cmath>

namespace loopwright::hydraulics {

namespace {

struct End {
    double at;
    double value;
    double slope;
};

// Cubic that meets both ends.
Dual<1> cubic(const End& from, const End& to, double at) {
    const double width = to.at - from.at;
    const double s = (at - from.at) / width;
    const double rise = to.value - from.value;
    const double bend = from.slope * width - rise;
    const double other = rise - to.slope * width;
    // Hermite: (1 - s) y0 + s y1 + s (1 - s) ((1 - s) bend + s other).
    const double inner = (1.0 - s) * bend + s * other;
    Dual<1> y((1.0 - s) * from.value + s * to.value + s * (1.0 - s) * inner);
    y.slope[0] = (rise + (1.0 - 2.0 * s) * inner + s * (1.0 - s) * (other - bend)) / width;
    return y;
}

// Share of the flow over the share of the least drop.
Dual<1> share_of_flow(double u) {
    if (u <= 0.0) return 0.0;
    if (u >= 1.0) return 1.0;
    const auto root = [](double at) { return End{at, std::sqrt(at), 0.5 / std::sqrt(at)}; };
    if (u >= regulating_from) return cubic(root(regulating_from), {1.0, 1.0, 0.0}, u);
    // The straight line's slope is that of the chord, a cubic between it and the root's.
    if (u <= root_from) return cubic({0.0, 0.0, 1.5 / std::sqrt(root_from)}, root(root_from), u);
    return sqrt(Dual<1>::variable(0, u));
}

}  // namespace

Dual<1> flow(const FlowControl& control, double drop) {
    const double least = control.least_drop.si();
    Dual<1> result = control.flow.si() * share_of_flow(drop / least);
    result.slope[0] /= least;
    return result;
}

}  // namespace loopwright::hydraulics
