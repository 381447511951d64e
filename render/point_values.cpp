#include <loopwright/render/point_values.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_table.h>
#include <loopwright/base/unit_text.h>

namespace loopwright {

using namespace hydraulics;

namespace {

double in_unit(double si, Dimension dimension) {
    const Unit& unit = units_of(dimension).front();
    return (si - unit.offset) / unit.factor;
}

/// How a machine works where that is not what its kind is there for.
std::string_view other_work(const Component& component, MachineMode mode) {
    const Part part = component.kind->part;
    if (part == Part::pump && mode == MachineMode::motor) return "as motor";
    if (part == Part::actuator && mode == MachineMode::pump) return "as pump";
    if (part == Part::pump_motor && mode != MachineMode::idle)
        return mode == MachineMode::pump ? "as pump" : "as motor";
    return {};
}

std::vector<std::string> rows_of(const Circuit& circuit, const MachinePoint& machine) {
    const Component& component = circuit.components[machine.component];
    std::vector<std::string> rows{
        short_quantity(machine.speed, machine.straight ? Dimension::velocity : Dimension::speed),
        short_quantity(machine.torque, machine.straight ? Dimension::force : Dimension::torque),
        short_quantity(machine.shaft_power, Dimension::power)};
    if (!machine.straight && circuit.is_yes(component, "variable"))
        rows.push_back(fmt::format("set {:.3g} %", 100.0 * machine.stroke));
    if (const std::string_view work = other_work(component, machine.mode); !work.empty())
        rows.emplace_back(work);
    return rows;
}

std::vector<std::string> rows_of(const OnShaftPoint& one) {
    const Dimension dimension = one.straight ? Dimension::force : Dimension::torque;
    if (one.holding) {
        if (rounds_to_nothing(*one.holding, dimension)) return {"released"};
        return {"takes " + short_quantity(one.torque, dimension),
                "holds " + short_quantity(*one.holding, dimension)};
    }
    return {short_quantity(one.speed, one.straight ? Dimension::velocity : Dimension::speed),
            short_quantity(one.torque, dimension), short_quantity(one.power, Dimension::power)};
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", word);
    return text;
}

}  // namespace

std::string short_quantity(double si, Dimension dimension) {
    const Unit& unit = units_of(dimension).front();
    const double number = in_unit(si, dimension);
    // The number of decimals goes by the number as it is shown: 9.996 is 10.0.
    int decimals = 2;
    for (const double most : {9.995, 99.95})
        if (std::abs(number) >= most) --decimals;
    std::string text =
        rounds_to_nothing(si, dimension) ? "0" : fmt::format("{:.{}f}", number, decimals);
    if (!unit.spelling.empty()) text += fmt::format(" {}", unit.spelling);
    return text;
}

bool rounds_to_nothing(double si, Dimension dimension) {
    return std::abs(in_unit(si, dimension)) < 0.005;
}

std::vector<ComponentValue> component_values(const Circuit& circuit, const OperatingPoint& point) {
    std::vector<ComponentValue> values;
    for (const MachinePoint& machine : point.machines)
        values.push_back({machine.component, rows_of(circuit, machine)});
    for (const OnShaftPoint& one : point.on_shafts) values.push_back({one.component, rows_of(one)});
    return values;
}

std::vector<LineValue> line_values(const OperatingPoint& point) {
    std::vector<LineValue> values;
    for (const LinePoint& one : point.lines) {
        LineValue value{.line = one.line,
                        .pressure = short_quantity(one.pressure, Dimension::pressure)};
        if (one.flow && !rounds_to_nothing(*one.flow, Dimension::flow)) {
            value.flow = short_quantity(std::abs(*one.flow), Dimension::flow);
            value.backwards = *one.flow < 0.0;
        }
        values.push_back(std::move(value));
    }
    return values;
}

PanelList point_list(const Circuit& circuit, const OperatingPoint& point,
                     std::span<const std::string> apart) {
    PanelList list;
    list.heading = list_heading(fmt::format("Duty point {}", point.id));
    const auto add = [&list](const std::string& text) {
        list.rows.push_back(list_paragraph(text));
    };
    std::string what = "Computed steady state";
    for (const DutyPoint& asked : circuit.points)
        if (asked.id == point.id && !asked.title.empty()) what += fmt::format(", {}", asked.title);
    what += fmt::format(": {}", name(point.state));
    if (point.oil)
        what += fmt::format(", oil {}{}", format_quantity(*point.oil, Dimension::temperature),
                            point.balanced ? ", where its heat balances" : "");
    add(what + ".");
    if (!point.problem.empty()) add(fmt::format("BEWARE: {}", point.problem));
    for (const LimitPoint& one : point.limits)
        if (one.margin < 0.0)
            add(fmt::format("Above its limit: {} of {}, {}, at most {}.", one.quantity, one.subject,
                            short_quantity(one.value, one.dimension),
                            format_quantity(one.limit, one.dimension)));
    add("Figures on a tinted ground are computed and rounded to three digits; all others are data. "
        "A pressure stands at its line's first port and holds for all lines of its net that have "
        "none. A line without a flow carries none. Torque and power go into a pump and come out "
        "of a motor, are given by a prime mover and taken by a load.");
    std::vector<std::string> unknown;
    for (const LinePoint& one : point.lines)
        if (!one.flow && circuit.ports_of(circuit.lines[one.line]).size() > 1)
            unknown.emplace_back(circuit.lines[one.line].path);
    if (!unknown.empty())
        add(
            fmt::format("Not to be told, for nothing is known that would share it out: the flow "
                        "through {}.",
                        listed(unknown)));
    std::vector<std::string> taken;
    for (const Assumption& one : point.assumptions) taken.push_back(one.of + " " + one.text);
    if (!taken.empty())
        add(fmt::format("Taken, for it is not given: {}. Sources: see solve.", listed(taken)));
    for (const std::string& one : apart) add(fmt::format("Not at its place: {}.", one));
    return list;
}

}  // namespace loopwright
