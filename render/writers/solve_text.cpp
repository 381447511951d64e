#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/base/utf8.h>
#include <loopwright/render/writers/report.h>
#include <loopwright/render/writers/solve_report.h>

namespace loopwright {

using namespace hydraulics;

namespace {

/// Rows of words, set out in columns; all but the first to the right.
class Columns {
  public:
    explicit Columns(std::vector<std::string> head) { rows_.push_back(std::move(head)); }
    void add(std::vector<std::string> row) { rows_.push_back(std::move(row)); }
    bool empty() const { return rows_.size() < 2; }

    std::string text() const {
        if (empty()) return {};
        std::vector<std::size_t> widths(rows_.front().size(), 0);
        for (const auto& row : rows_)
            for (std::size_t i = 0; i < row.size(); ++i)
                widths[i] = std::max(widths[i], row[i].size());
        std::string out;
        for (const auto& row : rows_) {
            std::string line = "  ";
            for (std::size_t i = 0; i < row.size(); ++i) {
                line += i == 0 ? fmt::format("{:<{}}", row[i], widths[i])
                               : fmt::format("  {:>{}}", row[i], widths[i]);
            }
            line.erase(line.find_last_not_of(' ') + 1);
            out += line + "\n";
        }
        return out;
    }

  private:
    std::vector<std::vector<std::string>> rows_;
};

/// Rounding is not told as a figure.
std::string said(double si, Dimension dimension, double nothing = 0.0) {
    return format_quantity(std::abs(si) <= nothing ? 0.0 : si, dimension);
}
/// The number alone, for a column whose head has the unit.
std::string number(double si, Dimension dimension, double nothing = 0.0) {
    const std::string text = said(si, dimension, nothing);
    return text.substr(0, text.find(' '));
}
std::string pressure(double si) { return number(si, Dimension::pressure, 10.0); }
std::string flow(double si) { return number(si, Dimension::flow, 1e-10); }
std::string power(double si) { return number(si, Dimension::power, 0.05); }
std::string speed(double si) { return number(si, Dimension::speed, 1e-3); }
std::string share(const std::optional<double>& si) {
    return si ? fmt::format("{:.1f}", 100.0 * *si) : "-";
}

std::string machines(const Circuit& circuit, const OperatingPoint& point) {
    Columns columns({"machine", "", "rpm", "set %", "A bar", "B bar", "L/min", "N.m", "kW",
                     "vol. %", "mech. %", "case L/min"});
    for (const MachinePoint& one : point.machines)
        if (!one.straight)
            columns.add({std::string(circuit.components[one.component].path),
                         std::string(name(one.mode)), speed(one.speed),
                         fmt::format("{:.1f}", 100.0 * one.stroke), pressure(one.pressure_a),
                         pressure(one.pressure_b), flow(one.flow),
                         number(one.torque, Dimension::torque), power(one.shaft_power),
                         share(one.volumetric_efficiency), share(one.mechanical_efficiency),
                         one.case_flow ? flow(*one.case_flow) : "-"});
    std::string out = columns.text();
    for (const MachinePoint& one : point.machines)
        if (one.hold != StrokeHold::none)
            out += fmt::format("  {}: {}, at {:.1f} % and not {:.1f} % of its displacement\n",
                               circuit.components[one.component].path, told(one.hold),
                               100.0 * one.stroke, 100.0 * one.set_stroke);
    return out;
}

std::string cylinders(const Circuit& circuit, const OperatingPoint& point) {
    Columns columns({"cylinder", "m/s", "A bar", "B bar", "L/min", "kN", "kW"});
    for (const MachinePoint& one : point.machines)
        if (one.straight)
            columns.add({std::string(circuit.components[one.component].path),
                         number(one.speed, Dimension::velocity), pressure(one.pressure_a),
                         pressure(one.pressure_b), flow(one.flow),
                         number(one.torque, Dimension::force), power(one.shaft_power)});
    return columns.text();
}

std::string shafts(const OperatingPoint& point) {
    Columns turning({"shaft", "rpm", "N.m", "kW", ""});
    Columns straight({"rod", "m/s", "kN", "kW", ""});
    for (const ShaftPoint& one : point.shafts) {
        const std::string whose = one.driven ? "given by its prime mover" : "passed on to its load";
        const std::string carried_power = power(one.carried * one.speed);
        if (one.straight)
            straight.add({one.name, number(one.speed, Dimension::velocity),
                          number(one.carried, Dimension::force), carried_power, whose});
        else
            turning.add({one.name, speed(one.speed), number(one.carried, Dimension::torque, 0.05),
                         carried_power, whose});
    }
    return turning.text() + straight.text();
}

std::string lines(const Circuit& circuit, const OperatingPoint& point) {
    Columns columns({"line", "bar", "L/min", "m/s", "Re", "drop bar"});
    for (const LinePoint& one : point.lines)
        columns.add({std::string(circuit.lines[one.line].path), pressure(one.pressure),
                     one.flow ? flow(*one.flow) : "cannot tell",
                     one.velocity ? number(*one.velocity, Dimension::velocity, 1e-6) : "-",
                     one.reynolds ? fmt::format("{:.0f}", *one.reynolds) : "-",
                     pressure(one.drop)});
    return columns.text();
}

std::string charge(const Circuit& circuit, const OperatingPoint& point) {
    std::string out;
    for (const ChargeBalance& one : point.charge) {
        Columns columns({fmt::format("{} gives", circuit.components[one.source].path),
                         flow(one.given), "L/min"});
        for (const ChargeUse& use : one.uses)
            columns.add({fmt::format("  {} {}", use.what, use.where), flow(use.flow), ""});
        out += columns.text();
    }
    return out;
}

std::string losses(const OperatingPoint& point) {
    Columns columns({"turned into heat", "kW"});
    double sum = 0.0;
    for (const Loss& one : point.losses) {
        sum += one.power;
        if (one.power >= 1.0) columns.add({"  " + one.of, power(one.power)});
    }
    columns.add({"  all", power(sum)});
    if (point.heat) {
        columns.add({"carried off by coolers", power(point.heat->cooler)});
        columns.add({"through reservoir walls", power(point.heat->wall)});
        columns.add({point.heat->left() < 0.0 ? "the oil cools by" : "the oil warms by",
                     number(std::abs(point.heat->left()), Dimension::power, 0.5)});
    }
    return columns.text();
}

std::string loops(const Circuit& circuit, const OperatingPoint& point) {
    Columns columns({"loop", "degC", "takes up kW", "exchanges L/min"});
    for (const LoopHeat& one : point.loops)
        columns.add({fmt::format("loop:{}", circuit.components[one.first_pump].path),
                     one.temperature ? number(*one.temperature, Dimension::temperature, 1e-6)
                                     : "hotter and hotter",
                     power(one.heat), flow(one.exchange)});
    return columns.text();
}

/// The oil over the whole duty.
std::string over(const DutyHeat& duty) {
    if (!duty.problem.empty()) return fmt::format("Whole duty: {}\n", duty.problem);
    std::string out = fmt::format("Whole duty: the oil's heat balances at {}\n",
                                  said(duty.oil, Dimension::temperature));
    Columns columns({"mean", "kW"});
    columns.add({"prime movers give", power(duty.power_in)});
    columns.add({"loads take", power(duty.power_out)});
    columns.add({"turned into heat", power(duty.lost)});
    columns.add({"  of it into the oil", power(duty.heat.into_oil)});
    columns.add({"carried off by coolers", power(duty.heat.cooler)});
    columns.add({"through reservoir walls", power(duty.heat.wall)});
    out += columns.text();
    if (duty.rest > 0.0)
        out += fmt::format("  {:.3g} % of the time in neutral, which the points leave\n",
                           100.0 * duty.rest);
    return out;
}

std::string limits(const OperatingPoint& point) {
    Columns columns({"limit", "", "is", "at most", "margin", ""});
    for (const LimitPoint& one : point.limits)
        columns.add({one.subject, std::string(one.quantity), said(one.value, one.dimension, 1e-3),
                     said(one.limit, one.dimension), said(one.margin, one.dimension),
                     one.margin < 0.0 ? "above its limit" : ""});
    return columns.text();
}

std::string assumptions(const OperatingPoint& point) {
    std::string out;
    for (const Assumption& one : point.assumptions)
        out += fmt::format("  {}: {} ({})\n", one.of, one.text, one.source);
    return out;
}

/// Each equation, and below it the same with figures.
std::string working(const OperatingPoint& point) {
    std::string out;
    std::string_view of;
    for (const WorkedEquation& one : point.working) {
        if (one.of != of) out += fmt::format("{}  {}\n", out.empty() ? "" : "\n", one.of);
        of = one.of;
        out += fmt::format("    {}: {}\n", one.what, one.equation);
        out += one.figures.empty() ? fmt::format("      = {}\n", one.result)
                                   : fmt::format("      {} = {}\n", one.figures, one.result);
    }
    return out;
}

std::string heading(const Circuit& circuit, const OperatingPoint& point) {
    std::string out = fmt::format("Point {}: ", point.id);
    if (point.loop_states.empty()) out += name(point.state);
    for (const LoopState& loop : point.loop_states)
        out += fmt::format("{}loop:{} {}", &loop == point.loop_states.data() ? "" : ", ",
                           circuit.components[loop.first_pump].path, name(loop.state));
    if (point.oil)
        out += fmt::format(", oil {}{}", said(*point.oil, Dimension::temperature),
                           point.balanced ? ", where its heat balances" : "");
    return out + "\n";
}

}  // namespace

std::string solve_text(const Circuit& circuit, std::span<const OperatingPoint> points,
                       const std::optional<DutyHeat>& duty) {
    std::string out = visible(circuit.title.title);
    if (!circuit.title.drawing.empty())
        out += fmt::format(", drawing {}", visible(circuit.title.drawing));
    if (!circuit.title.revision.empty())
        out += fmt::format(", revision {}", visible(circuit.title.revision));
    if (!out.empty()) out += "\n";
    for (const OperatingPoint& point : points) {
        out += (out.empty() ? "" : "\n") + heading(circuit, point);
        if (!point.solved) {
            out += fmt::format("  not solved: {}\n", point.problem);
            continue;
        }
        if (!point.problem.empty()) out += fmt::format("  BEWARE: {}\n", point.problem);
        const auto part = [&](const std::string& text) {
            if (!text.empty()) out += "\n" + text;
        };
        part(machines(circuit, point));
        part(cylinders(circuit, point));
        part(shafts(point));
        part(charge(circuit, point));
        part(lines(circuit, point));
        part(losses(point));
        part(loops(circuit, point));
        part(limits(point));
        part(working(point));
        const std::string taken = assumptions(point);
        if (!taken.empty()) out += "\n  Taken, for it is not given:\n" + taken;
        out += fmt::format("\n  Flows close to {:.0e} of the largest, powers to {:.0e}.\n",
                           point.mass_residual, point.energy_residual);
    }
    if (duty) out += "\n" + over(*duty);
    out +=
        "\nFigures are computed for a steady state and support a review by a competent person; "
        "they "
        "do not\nreplace it. Measure on the machine with the usual cautions: oil under pressure "
        "injects, hot oil\nscalds, loads move when pressure goes.\n";
    return out;
}

}  // namespace loopwright
