#include <loopwright/rules/at_work.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Why a rule cannot be asked at a point.
struct Unknown {
    std::string_view point = {};
    std::string_view message = {};
    std::span<const std::string_view> missing = {};
};

class JudgedAtWork {
  public:
    JudgedAtWork(const FlowGraph& graph, const Structure& structure, Keep& keep)
        : graph_(graph), structure_(structure), keep_(keep) {}

    void without_duty(const Rule& rule, Docket& docket) const {
        if (!rule.is_asked_at_work_alone()) return;
        if (rule.concerns != nullptr && !rule.concerns(graph_, structure_)) return;
        static constexpr std::string_view missing[] = {"duty"};
        docket.leave_open({}, without_a_duty, missing);
    }

    void work_out(bool cold) {
        points_ = hydraulics::operating_points(graph_.circuit());
        duty_points_ = points_.size();
        if (cold) {
            if (auto start = hydraulics::cold_start(graph_.circuit()))
                points_.push_back(std::move(*start));
            else
                no_cold_start_ = true;
        }
        for (const hydraulics::OperatingPoint& point : points_)
            unknown_.push_back(stands(point) ? Unknown{} : unknown(point));
    }

    void judge(const Rule& rule, Docket& docket) const {
        const std::size_t count = rule.at_cold_start ? points_.size() : duty_points_;
        bool any_stands = false;
        for (std::size_t i = 0; i < count; ++i) {
            if (!points_[i].solved || (!stands(points_[i]) && !rule.where_torn)) continue;
            any_stands = any_stands || stands(points_[i]);
            rule.judge_point({.graph = graph_,
                              .structure = structure_,
                              .point = points_[i],
                              .duty = {points_.data(), duty_points_},
                              .cold_start = i >= duty_points_},
                             docket);
        }
        if (!rule.is_asked_at_work_alone() && docket.empty()) return;
        if (!any_stands && rule.concerns != nullptr && !rule.concerns(graph_, structure_)) return;
        if (any_stands && docket.empty()) return;
        for (std::size_t i = 0; i < count; ++i)
            if (!stands(points_[i]))
                docket.leave_open(unknown_[i].point, unknown_[i].message, unknown_[i].missing);
        static constexpr std::string_view missing[] = {"duty.cold-start"};
        if (rule.at_cold_start && no_cold_start_)
            docket.leave_open({}, "how cold the oil is at a start is not given", missing);
    }

  private:
    static bool stands(const hydraulics::OperatingPoint& point) {
        return point.solved && point.problem.empty();
    }

    Unknown unknown(const hydraulics::OperatingPoint& point) {
        std::vector<std::string_view> missing;
        for (const std::string& datum : point.missing) missing.push_back(keep_.text(datum));
        return {.point = point.id,
                .message = keep_.text("the point ", point.id,
                                      point.solved ? " does not stand: " : " is not solved: ",
                                      std::string_view(point.problem)),
                .missing = keep_.list(std::span<const std::string_view>(missing))};
    }

    const FlowGraph& graph_;
    const Structure& structure_;
    Keep& keep_;
    std::vector<hydraulics::OperatingPoint> points_;
    std::vector<Unknown> unknown_;
    std::size_t duty_points_ = 0;
    bool no_cold_start_ = false;
};

}  // namespace

const hydraulics::MachinePoint* AtWork::machine(Index component) const {
    const auto found = std::find_if(
        point.machines.begin(), point.machines.end(),
        [&](const hydraulics::MachinePoint& one) { return one.component == component; });
    return found == point.machines.end() ? nullptr : &*found;
}

bool AtWork::moves() const { return (bit(point.state) & moving_states) != 0; }

void judge_at_work(const FlowGraph& graph, const Structure& structure,
                   std::span<const Rule* const> rules, std::span<Docket> dockets, Keep& keep) {
    const auto at_work = [](const Rule* rule) { return rule->judge_point != nullptr; };
    if (std::none_of(rules.begin(), rules.end(), at_work)) return;
    JudgedAtWork judged(graph, structure, keep);
    const bool has_duty = !graph.circuit().points.empty();
    if (has_duty)
        judged.work_out(std::any_of(rules.begin(), rules.end(), [&](const Rule* rule) {
            return at_work(rule) && rule->at_cold_start;
        }));
    for (std::size_t i = 0; i < rules.size(); ++i) {
        if (!at_work(rules[i])) continue;
        if (has_duty)
            judged.judge(*rules[i], dockets[i]);
        else
            judged.without_duty(*rules[i], dockets[i]);
    }
}

bool Held::holds() const {
    return margin() >= -1e-9 * std::max(std::abs(measured), std::abs(required));
}

Figures figures_of(const Held& held) {
    // A margin between temperatures is no temperature.
    const Dimension margin = held.dimension == Dimension::temperature
                                 ? Dimension::temperature_difference
                                 : held.dimension;
    return {.measured = {held.measured, held.dimension},
            .required = Measure{held.required, held.dimension},
            .margin = Measure{held.margin(), margin}};
}

Verdict* hold(const AtWork& at, Docket& docket, ElementType type, Index index, const Held& held,
              Level level) {
    // Limits of one subject differ from point to point, so that shares of them are compared.
    const double scale = std::max(std::abs(held.required), std::numeric_limits<double>::min());
    Verdict* const verdict =
        docket.record_at(at.point.id, type, index, held.holds() ? Outcome::pass : Outcome::fail,
                         level, -held.margin() / scale);
    if (verdict == nullptr) return nullptr;
    verdict->figures = docket.figures(figures_of(held));
    return verdict;
}

Verdict* lacks(const AtWork& at, Docket& docket, ElementType type, Index index,
               std::span<const std::string_view> missing) {
    Verdict* const verdict = docket.record_at(at.point.id, type, index, Outcome::inconclusive);
    if (verdict != nullptr) verdict->missing = docket.missing(missing);
    return verdict;
}

Verdict* lacks(const AtWork& at, Docket& docket, Index component, std::string_view datum) {
    Verdict* const verdict =
        docket.record_at(at.point.id, ElementType::component, component, Outcome::inconclusive);
    if (verdict == nullptr) return nullptr;
    const std::string_view path = at.circuit().components[component].path;
    const std::string_view missing[] = {docket.text(path, ".", datum)};
    verdict->missing = docket.missing(missing);
    verdict->message = docket.text("the ", datum, " of ", path, " is not given");
    return verdict;
}

std::vector<std::string_view> unknown_losses(const AtWork& at, Docket& docket,
                                             std::span<const Index> machines, Loss loss) {
    return unknown_losses(at.circuit(), at.point.assumptions, docket, machines, loss);
}

std::vector<std::string_view> unknown_losses(const Circuit& circuit,
                                             std::span<const hydraulics::Assumption> assumptions,
                                             Docket& docket, std::span<const Index> machines,
                                             Loss loss) {
    const bool leakage = loss == Loss::leakage;
    std::vector<std::string_view> unknown;
    for (const Index machine : machines) {
        const std::string_view path = circuit.components[machine].path;
        // As the network's model names what it assumes.
        const std::string_view name = docket.text(path, leakage ? ": leakage" : ": loss of torque");
        const bool assumed =
            std::any_of(assumptions.begin(), assumptions.end(),
                        [&](const hydraulics::Assumption& one) { return one.of == name; });
        if (assumed)
            unknown.push_back(
                docket.text(path, leakage ? ".volumetric-efficiency" : ".torque-efficiency"));
    }
    return unknown;
}

bool has_loops(const FlowGraph& /*graph*/, const Structure& structure) {
    return !structure.loops.empty();
}

bool has_machines(const FlowGraph& graph, const Structure& /*structure*/) {
    return has_part(graph, Part::pump) || has_part(graph, Part::actuator);
}

bool has_part(const FlowGraph& graph, Part part) {
    const auto& components = graph.circuit().components;
    return std::any_of(components.begin(), components.end(), [&](const Component& one) {
        return one.kind->part == part || (one.kind->part == Part::pump_motor &&
                                          (part == Part::pump || part == Part::actuator));
    });
}

}  // namespace loopwright
