// The equations of heat, with figures.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/heat_balance.h>
#include <loopwright/hydraulics/loop_heat.h>
#include <loopwright/hydraulics/power_balance.h>
#include <loopwright/hydraulics/working.h>

namespace loopwright::hydraulics {

namespace {

std::string power(double si) { return format_quantity(si, Dimension::power); }
std::string flow(double si) { return format_quantity(si, Dimension::flow); }
std::string temperature(double si) { return format_quantity(si, Dimension::temperature); }

/// A sum, term by term: "2 kW (P1) - 1 kW (K1)".
class Sum {
  public:
    Sum(Dimension dimension, double told_from) : dimension_(dimension), told_from_(told_from) {}

    /// Less than what is told is left out.
    void add(double term, std::string_view of) {
        if (std::abs(term) < told_from_) return;
        if (!text_.empty()) text_ += ' ';
        const std::string_view sign = term < 0.0 ? "- " : text_.empty() ? "" : "+ ";
        text_ += fmt::format("{}{} ({})", sign, format_quantity(std::abs(term), dimension_), of);
    }
    const std::string& text() const { return text_; }

  private:
    Dimension dimension_;
    double told_from_;
    std::string text_ = {};
};
Sum sum_of_powers() { return {Dimension::power, 1e-3}; }  // W
Sum sum_of_flows() { return {Dimension::flow, 1e-9}; }    // m3/s

class HeatWorker {
  public:
    HeatWorker(const Circuit& circuit, const Model& model, const SteadyState& state,
               const WarmPoint& point)
        : circuit_(circuit), model_(model), state_(state), point_(point) {}

    std::vector<WorkedEquation> work() {
        const auto heats = loop_heats(model_, state_, point_.fluid, point_.loops, point_.oil);
        for (std::size_t i = 0; i < point_.loops.size(); ++i)
            for (const LoopHeat& heat : heats)
                if (heat.first_pump == point_.loops[i].first_pump) loop(i, heat);
        if (point_.ambient) balance(*point_.ambient);
        return std::move(worked_);
    }

  private:
    void put(std::string_view of, std::string_view what, std::string_view equation,
             std::string figures, std::string result) {
        worked_.push_back({std::string(of), std::string(what), std::string(equation),
                           std::move(figures), std::move(result)});
    }

    std::string_view path(Index component) const { return circuit_.components[component].path; }
    std::string_view name(const LoopTerm& term) const {
        if (term.line != none) return circuit_.lines[term.line].path;
        return path(term.machine != none ? term.machine
                                         : circuit_.passages[term.passage].component);
    }

    /// What a kelvin more of a flow carries: "846 kg/m3 x 1940 J/(kg.K) x 43 L/min".
    std::string stream(double q) const {
        const auto specific = point_.fluid.specific_heat(Temperature(point_.oil));
        return fmt::format(
            "{} x {} x {}", format_quantity(model_.network.oil.density.si(), Dimension::density),
            specific ? format_quantity(specific->si(), Dimension::specific_heat) : "?", flow(q));
    }
    std::string over_ambient(double ambient) const {
        return fmt::format("({} - {})", temperature(point_.oil), temperature(ambient));
    }

    void loop(std::size_t i, const LoopHeat& heat) {
        const std::string of = fmt::format("loop:{}", path(heat.first_pump));
        const LoopTerms terms = loop_terms(model_, state_, point_.loops, i);
        Sum lost = sum_of_powers();
        for (const LoopTerm& term : terms.heat) lost.add(term.value, name(term));
        put(of, "heat into its oil, but for what warms the oil of housings", "P = sum of losses",
            lost.text(), power(heat.heat));
        Sum in = sum_of_flows();
        for (const LoopTerm& term : terms.exchange) in.add(term.value, name(term));
        put(of, "oil that comes in, and as much goes out", "q = sum of q in", in.text(),
            flow(heat.exchange));
        if (heat.temperature)
            put(of, "its temperature, over that of the reservoir", "T = T0 + P/(rho c q)",
                fmt::format("{} + {} / ({})", temperature(point_.oil), power(heat.heat),
                            stream(heat.exchange)),
                temperature(*heat.temperature));
    }

    void balance(double ambient) {
        const auto parts = heat_parts(circuit_, model_, state_, point_.fluid, point_.oil, ambient);
        Sum into = sum_of_powers();
        double made = lost_in_oil(model_, state_);
        for (const Loss& loss : losses(circuit_, model_, state_))
            if (!is_gear(loss.of)) into.add(loss.power, loss.of);
        Sum left = sum_of_powers();
        double carried = 0.0;
        for (const HeatPart& part : parts) {
            if (part.kind == HeatPart::Kind::heater) {
                into.add(part.power, path(part.component));
                made += part.power;
                continue;
            }
            carried_off(part, ambient);
            left.add(-part.power, path(part.component));
            carried += part.power;
        }
        constexpr std::string_view of = "oil";
        put(of, "heat into it", "P in = sum of losses, but for those of gears", into.text(),
            power(made));
        constexpr double nothing = 1e-3;  // W
        const double stays = std::abs(made - carried) < nothing ? 0.0 : made - carried;
        put(of,
            point_.balanced ? "heat that stays: none at the temperature of its balance"
                            : "heat that stays and warms it",
            "P in - P out", fmt::format("{} {}", power(made), left.text()), power(stays));
    }

    bool is_gear(std::string_view of) const {
        return std::any_of(model_.gears.begin(), model_.gears.end(),
                           [&](Index gear) { return path(gear) == of; });
    }

    void carried_off(const HeatPart& part, double ambient) {
        const Component& component = circuit_.components[part.component];
        const auto figure = [&](std::string_view of, Dimension dimension) {
            return format_quantity(circuit_.figure(component, of).value_or(0.0), dimension);
        };
        if (part.kind == HeatPart::Kind::wall)
            put(component.path, "heat through its walls", "P = k A (T - Ta)",
                fmt::format("{} x {:.4g} m2 x {}",
                            format_quantity(wall_heat_transfer(circuit_, component),
                                            Dimension::heat_transfer),
                            circuit_.figure(component, "cooling-area").value_or(0.0),
                            over_ambient(ambient)),
                power(part.power));
        else if (part.starved_of)
            put(component.path, "heat that it carries off, all that its oil brings",
                "P = rho c q (T - Ta)",
                fmt::format("{} x {}", stream(*part.starved_of), over_ambient(ambient)),
                power(part.power));
        else
            put(component.path, "heat that it carries off", "P = P0 (T - Ta)/dT0",
                fmt::format("{} x {} / {}", figure("capacity", Dimension::power),
                            over_ambient(ambient),
                            figure("temperature-difference", Dimension::temperature_difference)),
                power(part.power));
    }

    const Circuit& circuit_;
    const Model& model_;
    const SteadyState& state_;
    const WarmPoint& point_;
    std::vector<WorkedEquation> worked_ = {};
};

}  // namespace

std::vector<WorkedEquation> heat_working_of(const Circuit& circuit, const Model& model,
                                            const SteadyState& state, const WarmPoint& point) {
    return HeatWorker(circuit, model, state, point).work();
}

}  // namespace loopwright::hydraulics
