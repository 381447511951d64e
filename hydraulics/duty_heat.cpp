#include <loopwright/hydraulics/duty_heat.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
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

/// The points of a duty with their shares, and the rest. What parts keep references to stays where
/// it is.
class Shares {
  public:
    explicit Shares(const Circuit& circuit) : whole_(with_rest(circuit)), graph_(whole_) {
        for (Index i = 0; i < circuit.points.size(); ++i) {
            PointFigures point(whole_, i);
            const double share = point.figure("share").value_or(0.0);
            if (share <= 0.0) continue;
            points_.push_back(point);
            shares_.push_back(share);
            rest_ -= share;
        }
        constexpr double rounding = 1e-9;
        if (points_.empty() || rest_ <= rounding) {
            rest_ = 0.0;
            return;
        }
        points_.emplace_back(whole_, static_cast<Index>(circuit.points.size()));
        shares_.push_back(rest_);
    }
    Shares(const Shares&) = delete;
    Shares& operator=(const Shares&) = delete;

    /// Whether the duty has shares and says how warm the air is at each of them.
    bool are_known() const {
        return !points_.empty() &&
               std::all_of(points_.begin(), points_.end(),
                           [](const PointFigures& point) { return ambient_of(point).has_value(); });
    }
    double rest() const { return rest_; }

    /// To be called once, and before those below.
    void stand(const Fluid& fluid) {
        part_motions(graph_, points_);
        standing_ = standings(graph_, points_);
        for (std::size_t i = 0; i < points_.size(); ++i)
            parts_.push_back({&points_[i], PointWorker(graph_, points_[i], standing_[i], fluid),
                              shares_[i], *ambient_of(points_[i])});
    }

    /// The temperature at which the heat balances, K.
    std::optional<double> balance() const {
        const auto coldest =
            std::min_element(parts_.begin(), parts_.end(),
                             [](const Part& a, const Part& b) { return a.ambient < b.ambient; });
        return temperature_of_balance([&](double oil) { return left_at(oil); }, coldest->ambient);
    }

    /// Fills in the means at a temperature; a problem where a point has no steady state.
    void add_to(DutyHeat& duty, const Fluid& fluid) const {
        for (const Part& part : parts_) {
            const Solved solved = part.worker.solve(duty.oil);
            if (!solved.problem.empty()) {
                duty.problem = fmt::format("with the oil at {}, {} does not stand: {}",
                                           format_quantity(duty.oil, Dimension::temperature),
                                           part.point->id(), solved.problem);
                duty.missing = solved.model.missing;
                return;
            }
            add(fluid, part, solved, duty);
        }
    }

  private:
    /// Heat that stays over the shares; nothing where a point has no steady state.
    std::optional<double> left_at(double oil) const {
        double left = 0.0;
        for (const Part& part : parts_) {
            const auto heat = part.worker.heat(oil, part.ambient);
            if (!heat) return std::nullopt;
            left += part.share * heat->left();
        }
        return left;
    }

    void add(const Fluid& fluid, const Part& part, const Solved& solved, DutyHeat& duty) const {
        const HeatBalance heat =
            heat_balance(whole_, solved.model, *solved.state, fluid, duty.oil, part.ambient);
        duty.heat.into_oil += part.share * heat.into_oil;
        duty.heat.cooler += part.share * heat.cooler;
        duty.heat.wall += part.share * heat.wall;
        duty.lost += part.share * (lost_in_oil(solved.model, *solved.state) +
                                   lost_in_gears(solved.model, *solved.state));
        const std::vector<double> torques = shaft_torques(solved.model, *solved.state);
        for (std::size_t s = 0; s < torques.size(); ++s)
            (solved.model.network.shafts[s].is_driven() ? duty.power_in : duty.power_out) +=
                part.share * torques[s] * solved.state->speeds[s];
        for (const Assumption& one : solved.model.assumptions) {
            const auto same = [&](const Assumption& other) { return other.of == one.of; };
            if (std::none_of(duty.assumptions.begin(), duty.assumptions.end(), same))
                duty.assumptions.push_back(one);
        }
    }

    Circuit whole_;
    FlowGraph graph_;
    std::vector<PointFigures> points_ = {};
    std::vector<double> shares_ = {};
    double rest_ = 1.0;
    std::vector<PointStanding> standing_ = {};
    std::vector<Part> parts_ = {};
};

/// `oil`: in K, or nothing for that at which the heat balances.
std::optional<DutyHeat> mean_heat(const Circuit& circuit, std::optional<double> oil) {
    if (!can_balance_heat(circuit)) return std::nullopt;
    Shares shares(circuit);
    if (!shares.are_known()) return std::nullopt;
    DutyHeat duty{.rest = shares.rest()};
    const Answer<Fluid> fluid = fluid_of(circuit);
    if (!fluid) {
        duty.problem = fmt::format("the oil is not known: {}", fluid.reason());
        return duty;
    }
    shares.stand(*fluid);
    if (!oil) oil = shares.balance();
    if (!oil) {
        duty.problem = "the oil finds no temperature up to 150 degC at which its heat balances";
        return duty;
    }
    duty.oil = *oil;
    shares.add_to(duty, *fluid);
    return duty;
}

}  // namespace

std::optional<DutyHeat> duty_heat(const Circuit& circuit) { return mean_heat(circuit, {}); }

std::optional<DutyHeat> duty_heat_at(const Circuit& circuit, double oil) {
    return mean_heat(circuit, oil);
}

}  // namespace loopwright::hydraulics
