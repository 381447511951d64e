#include <loopwright/hydraulics/duty_heat.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include <loopwright/hydraulics/point_worker.h>
#include <loopwright/hydraulics/power_balance.h>
#include <loopwright/parser/kinds/definitions.h>

namespace loopwright::hydraulics {

namespace {

/// A point with its share of the working time.
struct Part {
    const PointFigures* point = nullptr;
    PointWorker worker;
    double share = 0.0;
    double ambient = 0.0;
};

/// Heat that stays over the shares; nothing where a point has no steady state.
std::optional<double> left_at(std::span<const Part> parts, double oil) {
    double left = 0.0;
    for (const Part& part : parts) {
        const auto heat = part.worker.heat(oil, part.ambient);
        if (!heat) return std::nullopt;
        left += part.share * heat->left();
    }
    return left;
}

void add(const Circuit& circuit, const Fluid& fluid, const Part& part, const Solved& solved,
         DutyHeat& duty) {
    const HeatBalance heat =
        heat_balance(circuit, solved.model, *solved.state, fluid, duty.oil, part.ambient);
    duty.heat.into_oil += part.share * heat.into_oil;
    duty.heat.cooler += part.share * heat.cooler;
    duty.heat.wall += part.share * heat.wall;
    for (const Loss& loss : losses(circuit, solved.model, *solved.state))
        duty.lost += part.share * loss.power;
    const std::vector<double> torques = shaft_torques(solved.model, *solved.state);
    for (std::size_t s = 0; s < torques.size(); ++s)
        (solved.model.network.shafts[s].is_driven() ? duty.power_in : duty.power_out) +=
            part.share * torques[s] * solved.state->speeds[s];
}

/// The circuit with one point more, for what the shares of the others leave: nothing pulls.
Circuit with_rest(const Circuit& circuit) {
    Circuit whole = circuit;
    DutyPoint rest{.id = "rest", .state = State::neutral};
    rest.attributes.begin = static_cast<Index>(whole.attributes.size());
    for (const AttributeSpec& spec : find_definition("point", "duty")->attributes)
        if (spec.name == "torque" || spec.name == "force")
            whole.attributes.push_back({.spec = &spec, .si = 0.0});
    rest.attributes.end = static_cast<Index>(whole.attributes.size());
    whole.points.push_back(rest);
    return whole;
}

}  // namespace

std::optional<DutyHeat> duty_heat(const Circuit& circuit) {
    if (!can_balance_heat(circuit)) return std::nullopt;
    const Circuit whole = with_rest(circuit);
    const FlowGraph graph(whole);
    std::vector<PointFigures> points;
    std::vector<double> shares;
    DutyHeat duty{.rest = 1.0};
    for (Index i = 0; i < circuit.points.size(); ++i) {
        PointFigures point(whole, i);
        const double share = point.figure("share").value_or(0.0);
        if (share <= 0.0) continue;
        points.push_back(point);
        shares.push_back(share);
        duty.rest -= share;
    }
    if (points.empty()) return std::nullopt;
    constexpr double rounding = 1e-9;
    if (duty.rest > rounding) {
        points.emplace_back(whole, static_cast<Index>(circuit.points.size()));
        shares.push_back(duty.rest);
    } else {
        duty.rest = 0.0;
    }
    for (const PointFigures& point : points)
        if (!ambient_of(point)) return std::nullopt;
    const Answer<Fluid> fluid = fluid_of(circuit);
    if (!fluid) {
        duty.problem = fmt::format("the oil is not known: {}", fluid.reason());
        return duty;
    }
    part_motions(graph, points);
    const std::vector<PointStanding> standing = standings(graph, points);
    std::vector<Part> parts;
    double coldest = *ambient_of(points.front());
    for (std::size_t i = 0; i < points.size(); ++i) {
        parts.push_back({&points[i], PointWorker(graph, points[i], standing[i], *fluid), shares[i],
                         *ambient_of(points[i])});
        coldest = std::min(coldest, parts.back().ambient);
    }
    const auto oil = temperature_of_balance([&](double at) { return left_at(parts, at); }, coldest);
    if (!oil) {
        duty.problem = "the oil finds no temperature up to 150 degC at which its heat balances";
        return duty;
    }
    duty.oil = *oil;
    for (const Part& part : parts) add(whole, *fluid, part, part.worker.solve(*oil), duty);
    return duty;
}

}  // namespace loopwright::hydraulics
