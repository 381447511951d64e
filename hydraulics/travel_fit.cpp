#include <loopwright/hydraulics/travel_fit.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include <fmt/format.h>

#include <loopwright/hydraulics/point_worker.h>

namespace loopwright::hydraulics {

/// What stands still while travels change.
struct TravelFitter::Solver {
    explicit Solver(Circuit circuit_given) : circuit(std::move(circuit_given)), graph(circuit) {
        for (Index i = 0; i < circuit.points.size(); ++i) points.emplace_back(circuit, i);
        part_motions(graph, points);
        standing = standings(graph, points);
    }

    OperatingPoint at(Index point, double travel) {
        const Range& attributes = circuit.points[point].attributes;
        for (Index i = attributes.begin; i < attributes.end; ++i)
            if (circuit.attributes[i].spec->name == "travel") circuit.attributes[i].si = travel;
        return work_out(graph, points[point], standing[point], false);
    }

    Circuit circuit;
    FlowGraph graph;
    std::vector<PointFigures> points = {};
    std::vector<PointStanding> standing = {};
};

TravelFitter::TravelFitter(Circuit circuit)
    : solver_(std::make_unique<Solver>(std::move(circuit))) {}
TravelFitter::~TravelFitter() = default;

TravelFit TravelFitter::fit(Index point, Index load, double speed, double guess) {
    const double sense = speed < 0.0 ? -1.0 : 1.0;
    const double asked = std::abs(speed);
    TravelFit best;
    // What the load does over what it is to do; nothing where there is no solution.
    const auto over = [&](double travel) -> std::optional<double> {
        best.travel = sense * travel;
        best.point = solver_->at(point, best.travel);
        best.problem = best.point.problem;
        if (!best.problem.empty()) return std::nullopt;
        for (const OnShaftPoint& one : best.point.on_shafts)
            if (one.component == load) best.speed = std::abs(one.speed);
        return best.speed - asked;
    };
    const auto rounded = [](double travel) { return std::round(travel * 1e5) / 1e5; };
    if (asked == 0.0) {
        best.met = over(0.0).has_value();
        return best;
    }
    double low = 0.0;
    double below = -asked;
    double high = std::min(1.0, guess * 1.1);
    auto above = over(high);
    while (above && *above < 0.0 && high < 1.0) {
        low = high;
        below = *above;
        high = std::min(1.0, high * 1.2);
        above = over(high);
    }
    if (!above || *above < 0.0) return best;
    constexpr int most = 60;
    constexpr double close = 1e-6;
    double travel = high;
    int side = 0;
    for (int i = 0; i < most && high - low > 1e-6; ++i) {
        travel = (low * *above - high * below) / (*above - below);
        const auto found = over(travel);
        if (!found) return best;
        if (std::abs(*found) <= close * asked) break;
        if (*found > 0.0) {
            high = travel;
            above = found;
            if (side == 1) below /= 2.0;
            side = 1;
        } else {
            low = travel;
            below = *found;
            if (side == -1) *above /= 2.0;
            side = -1;
        }
    }
    best.met = over(rounded(travel)).has_value();
    return best;
}

}  // namespace loopwright::hydraulics
