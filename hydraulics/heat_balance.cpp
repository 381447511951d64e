#include <loopwright/hydraulics/heat_balance.h>

#include <algorithm>
#include <cmath>

#include <loopwright/hydraulics/assumed.h>
#include <loopwright/hydraulics/heat.h>
#include <loopwright/hydraulics/link_flows.h>
#include <loopwright/hydraulics/power_balance.h>

namespace loopwright::hydraulics {

namespace {

bool has_capacity(const Circuit& circuit, const Component& component) {
    return component.kind->part == Part::cooler && circuit.figure(component, "capacity") &&
           circuit.figure(component, "temperature-difference");
}

bool has_walls(const Circuit& circuit, const Component& component) {
    return component.kind->part == Part::reservoir && circuit.figure(component, "cooling-area");
}

/// Flow through a component's element, without a sign; nothing where that cannot be told.
std::optional<double> flow_through(const Model& model, const SteadyState& state,
                                   std::span<const std::optional<double>> links,
                                   const Circuit& circuit, Index component) {
    const auto is_element = [&](Index passage) {
        return passage != none && circuit.passages[passage].component == component &&
               circuit.passages[passage].passage == PassageClass::element;
    };
    for (std::size_t i = 0; i < model.branches.size(); ++i)
        if (is_element(model.branches[i].passage)) return std::abs(state.flows[i]);
    for (std::size_t i = 0; i < model.links.size(); ++i)
        if (is_element(model.links[i].passage))
            return links[i] ? std::optional(std::abs(*links[i])) : std::nullopt;
    return 0.0;
}

}  // namespace

std::optional<double> ambient_of(const PointFigures& point) {
    if (const auto own = point.figure("ambient")) return own;
    const Circuit& circuit = point.circuit();
    if (!circuit.duty) return std::nullopt;
    for (const AttributeValue& one : circuit.figures_of(*circuit.duty))
        if (one.spec->name == "ambient") return one.si;
    return std::nullopt;
}

bool can_balance_heat(const Circuit& circuit) {
    return std::any_of(circuit.components.begin(), circuit.components.end(),
                       [&](const Component& one) {
                           return has_capacity(circuit, one) || has_walls(circuit, one);
                       });
}

double wall_heat_transfer(const Circuit& circuit, const Component& reservoir) {
    return circuit.figure(reservoir, "heat-transfer")
        .value_or(assumed::wall_heat_transfer.figure.si());
}

std::vector<HeatPart> heat_parts(const Circuit& circuit, const Model& model,
                                 const SteadyState& state, const Fluid& fluid, double oil,
                                 double ambient) {
    std::vector<HeatPart> parts;
    const auto links = link_flows(circuit, model, state);
    const auto specific = fluid.specific_heat(Temperature(oil));
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        if (has_capacity(circuit, component)) {
            HeatPart cooler{.kind = HeatPart::Kind::cooler, .component = c};
            cooler.power =
                heat_through(cooler_conductance(Power(*circuit.figure(component, "capacity")),
                                                TemperatureDifference(*circuit.figure(
                                                    component, "temperature-difference"))),
                             Temperature(oil), Temperature(ambient))
                    .si();
            const auto flow = flow_through(model, state, links, circuit, c);
            if (flow && specific) {
                const double most = heat_carried(Flow(*flow), model.network.oil.density, *specific,
                                                 Temperature(oil), Temperature(ambient))
                                        .si();
                if (std::abs(cooler.power) >= std::abs(most)) {
                    cooler.power = most;
                    cooler.starved_of = flow;
                }
            }
            parts.push_back(cooler);
        }
        if (has_walls(circuit, component))
            parts.push_back(
                {.kind = HeatPart::Kind::wall,
                 .component = c,
                 .power = heat_through(wall_conductance(
                                           Area(*circuit.figure(component, "cooling-area")),
                                           HeatTransfer(wall_heat_transfer(circuit, component))),
                                       Temperature(oil), Temperature(ambient))
                              .si()});
        const auto off_above = circuit.figure(component, "off-above");
        if (off_above && oil < *off_above)
            parts.push_back({.kind = HeatPart::Kind::heater,
                             .component = c,
                             .power = circuit.figure(component, "power").value_or(0.0)});
    }
    return parts;
}

HeatBalance heat_balance(const Circuit& circuit, const Model& model, const SteadyState& state,
                         const Fluid& fluid, double oil, double ambient) {
    HeatBalance heat{.into_oil = lost_in_oil(model, state)};
    for (const HeatPart& part : heat_parts(circuit, model, state, fluid, oil, ambient)) {
        if (part.kind == HeatPart::Kind::cooler) heat.cooler += part.power;
        if (part.kind == HeatPart::Kind::wall) heat.wall += part.power;
        if (part.kind == HeatPart::Kind::heater) heat.into_oil += part.power;
    }
    return heat;
}

namespace {

constexpr double hottest = 423.15;     // K; no mineral oil is worked hotter
constexpr double close_enough = 1e-6;  // W

/// Two temperatures in K, and the heat that stays at each in W: it is 0 between them where
/// `at_low` is not below and `at_high` not above it.
struct Bracket {
    double low = 0.0;
    double high = 0.0;
    std::optional<double> at_low = {};
    std::optional<double> at_high = {};
    bool holds() const { return at_low && at_high && *at_low >= 0.0 && *at_high <= 0.0; }
};

using LeftAt = std::function<std::optional<double>(double)>;

/// The lowest that there is, from the coldest up: with thinner oil machines leak more, so that far
/// up the heat may again be more than is carried off.
Bracket whole_range(const LeftAt& left_at, double coldest) {
    constexpr double step = 10.0;  // K
    Bracket range{.low = coldest, .high = coldest, .at_low = left_at(coldest)};
    // Where it cannot be computed as cold, for it is too thick, it is looked at nearer.
    while (!range.at_low && range.low < hottest - step) range.at_low = left_at(range.low += step);
    if (!range.at_low || *range.at_low < 0.0) return range;
    constexpr double least_step = 1.0;
    for (double up = step; up >= least_step && range.low < hottest;) {
        range.high = std::min(range.low + up, hottest);
        range.at_high = left_at(range.high);
        if (range.holds()) return range;
        if (!range.at_high) {
            up /= 2.0;
            continue;
        }
        range.low = range.high;
        range.at_low = range.at_high;
    }
    return range;
}

/// In steps that grow, the way that the heat points; in smaller ones again where they lead to what
/// cannot be computed.
Bracket about(const LeftAt& left_at, double coldest, double near) {
    Bracket range{.low = near, .high = near, .at_low = left_at(near)};
    range.at_high = range.at_low;
    if (!range.at_low) return range;
    const bool warms = *range.at_low > 0.0;
    constexpr int most_refused = 3;
    int refused = 0;
    for (double step = 0.5; !range.holds(); step *= refused == 0 ? 4.0 : 1.0) {
        const double next =
            std::clamp(warms ? range.high + step : range.low - step, coldest, hottest);
        if (next == (warms ? range.high : range.low)) break;
        const std::optional<double> there = left_at(next);
        if (!there) {
            if (++refused > most_refused) break;
            step /= 4.0;
            continue;
        }
        (warms ? range.low : range.high) = warms ? range.high : range.low;
        (warms ? range.at_low : range.at_high) = warms ? range.at_high : range.at_low;
        (warms ? range.high : range.low) = next;
        (warms ? range.at_high : range.at_low) = there;
    }
    return range;
}

}  // namespace

std::optional<double> temperature_of_balance(const LeftAt& left_at, double coldest,
                                             std::optional<double> near) {
    constexpr double finest = 1e-9;  // K
    constexpr int most_rounds = 60;
    Bracket range;
    if (near) range = about(left_at, coldest, *near);
    if (!range.holds()) range = whole_range(left_at, coldest);
    if (!range.holds()) return std::nullopt;
    int side = 0;
    for (int i = 0; i < most_rounds && range.high - range.low > finest; ++i) {
        const double next = (range.low * *range.at_high - range.high * *range.at_low) /
                            (*range.at_high - *range.at_low);
        const std::optional<double> there = left_at(next);
        if (!there) return std::nullopt;
        if (std::abs(*there) < close_enough) return next;
        if (*there > 0.0) {
            range.low = next;
            range.at_low = there;
            if (side == 1) *range.at_high /= 2.0;
            side = 1;
        } else {
            range.high = next;
            range.at_high = there;
            if (side == -1) *range.at_low /= 2.0;
            side = -1;
        }
    }
    return range.low;
}

}  // namespace loopwright::hydraulics
