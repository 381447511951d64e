#include <loopwright/hydraulics/measured_machine.h>

#include <array>

namespace loopwright::hydraulics {

namespace {

using Figure = MachineLaw::Figure;

double sense(double value) { return value < 0.0 ? -1.0 : 1.0; }

/// The state as it was measured: speed and stroke of the sense that the tables have.
struct Point {
    double turns;   // sense of rotation
    bool out_at_a;  // where the geometric flow goes
    Figure pressure;
    Figure speed;
    Figure stroke;
};

Point measured_at(Work work, const MachineState& state) {
    using State = MachineState;
    const double turns = sense(state.shaft_speed);
    const double side = sense(state.relative_displacement);
    const double against = work == Work::pump ? 1.0 : -1.0;
    const Figure difference =
        Figure::variable(State::a, state.pressure_a) - Figure::variable(State::b, state.pressure_b);
    return {turns, turns * side > 0.0, against * turns * side * difference,
            turns * Figure::variable(State::speed, state.shaft_speed),
            side * Figure::variable(State::stroke, state.relative_displacement)};
}

std::array<double, Grid::most_axes> values(const Point& at) {
    return {at.pressure.value, at.speed.value, at.stroke.value};
}

Figure figure_at(const MeasuredColumn& column, const Point& at) {
    const auto point = values(at);
    const Grid::Figure found = column.grid.at(point);
    Figure figure = found.value;
    for (std::size_t i = 0; i < MachineState::count; ++i)
        figure.slope[i] = found.slope[0] * at.pressure.slope[i] +
                          found.slope[1] * at.speed.slope[i] + found.slope[2] * at.stroke.slope[i];
    return figure;
}

void put_flows(const MeasuredMachine& measured, const Point& at, MachineLaw& law) {
    const bool pump = measured.work == Work::pump;
    const Figure geometric = measured.machine.displacement.si() * at.stroke * at.speed;
    Figure flow = figure_at(*measured.flow, at);
    // Overrun, a pump is a motor, and its efficiency counts the other way; and the other way round.
    const bool gives = pump == (at.pressure.value >= 0.0);
    if (measured.flow->efficiency) flow = gives ? geometric * flow : geometric / flow;
    const Figure leakage = pump ? geometric - flow : flow - geometric;
    law.flow_case = measured.machine.case_share * leakage;
    const Figure out = pump ? flow : flow - law.flow_case;
    const Figure in = -1.0 * (out + law.flow_case);
    law.flow_a = at.out_at_a ? out : in;
    law.flow_b = at.out_at_a ? in : out;
}

void put_torque(const MeasuredMachine& measured, const Point& at, MachineLaw& law) {
    const bool pump = measured.work == Work::pump;
    const Figure ideal = measured.machine.displacement.si() * at.stroke * at.pressure;
    Figure torque = figure_at(*measured.torque, at);
    const bool gives = pump == (at.pressure.value >= 0.0);
    if (measured.torque->efficiency) torque = gives ? ideal / torque : ideal * torque;
    law.torque = at.turns * (pump ? torque : -torque);
}

}  // namespace

MachineLaw machine_law(const MeasuredMachine& measured, const MachineState& state) {
    MachineLaw law = machine_law(measured.machine, state);
    const Point at = measured_at(measured.work, state);
    if (measured.flow) put_flows(measured, at, law);
    if (measured.torque) put_torque(measured, at, law);
    return law;
}

std::optional<Grid::Outside> outside(const MeasuredMachine& measured, const MachineState& state) {
    const auto point = values(measured_at(measured.work, state));
    for (const auto* column : {&measured.flow, &measured.torque})
        if (*column)
            if (const auto beyond = (*column)->grid.outside(point)) return beyond;
    return std::nullopt;
}

}  // namespace loopwright::hydraulics
