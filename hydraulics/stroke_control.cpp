#include <loopwright/hydraulics/stroke_control.h>

#include <cmath>

#include <loopwright/hydraulics/complementarity.h>
#include <loopwright/hydraulics/scales.h>

namespace loopwright::hydraulics {

namespace {

using Figure = Dual<StrokeState::count>;

double sense_of(double set) { return set < 0.0 ? -1.0 : 1.0; }

Figure of_machine(const MachineLaw::Figure& torque) {
    Figure figure(torque.value);
    figure.slope[StrokeState::a] = torque.slope[MachineState::a];
    figure.slope[StrokeState::b] = torque.slope[MachineState::b];
    figure.slope[StrokeState::speed] = torque.slope[MachineState::speed];
    figure.slope[StrokeState::stroke] = torque.slope[MachineState::stroke];
    return figure;
}

/// How far each limit is away, scaled; what a pump's stroke has no limit for is left out.
struct Rooms {
    std::optional<Figure> pressure = {};
    std::optional<Figure> margin = {};
    std::optional<Figure> torque = {};

    Rooms(const StrokeControl& control, const StrokeState& state,
          const MachineLaw::Figure& shaft_torque) {
        const auto a = Figure::variable(StrokeState::a, state.pressure_a);
        const auto b = Figure::variable(StrokeState::b, state.pressure_b);
        if (control.pressure_limit)
            pressure = (Figure(control.pressure_limit->si()) - max(a, b)) / pressure_scale;
        if (control.margin)
            margin = (Figure::variable(StrokeState::sensed, state.pressure_sensed) +
                      control.margin->si() - a) /
                     pressure_scale;
        // A shaft that turns backwards is turned by a torque below nothing.
        if (control.torque_limit)
            torque = (Figure(control.torque_limit->si()) -
                      of_machine(shaft_torque) * sense_of(state.shaft_speed)) /
                     torque_scale;
    }
};

}  // namespace

Figure stroke_law(const StrokeControl& control, double set, const StrokeState& state,
                  const MachineLaw::Figure& torque) {
    const Figure stroke =
        Figure::variable(StrokeState::stroke, state.relative_displacement) * sense_of(set);
    if (control.rise) {
        const PressureRise& rise = *control.rise;
        const Figure high = max(Figure::variable(StrokeState::a, state.pressure_a),
                                Figure::variable(StrokeState::b, state.pressure_b));
        const Figure asked =
            (stroke - rise.least) / (1.0 - rise.least) * (rise.end.si() - rise.begin.si()) +
            rise.begin.si();
        return between(stroke - std::abs(set), Figure(1.0) - stroke,
                       (high - asked) / pressure_scale);
    }
    const Rooms rooms(control, state, torque);
    std::optional<Figure> least;  // below nothing where one is, nothing where the least is
    for (const auto& room : {rooms.pressure, rooms.margin, rooms.torque})
        if (room) least = least ? complementarity(*least, *room) : *room;
    const Figure most = Figure::variable(StrokeState::share, state.share_left) * std::abs(set);
    return least ? between(stroke, most - stroke, *least) : most - stroke;
}

std::string_view told(StrokeHold hold) {
    switch (hold) {
        case StrokeHold::pressure_limit:
            return "at its pressure limit";
        case StrokeHold::load_sensing:
            return "at its margin over the load's pressure";
        case StrokeHold::torque_limit:
            return "at its torque limit";
        case StrokeHold::anti_stall:
            return "taken back to spare its prime mover";
        case StrokeHold::pressure_rise:
            return "raised by the loop's pressure";
        case StrokeHold::none:
            break;
    }
    return {};
}

StrokeHold stroke_hold(const StrokeControl& control, double set, const StrokeState& state,
                       double torque) {
    constexpr double nothing = 1e-9;
    const double stroke = std::abs(state.relative_displacement);
    const double size = std::abs(set);
    if (control.rise) return stroke > size + nothing ? StrokeHold::pressure_rise : StrokeHold::none;
    if (stroke > size - nothing) return StrokeHold::none;
    if (stroke > size * state.share_left - nothing) return StrokeHold::anti_stall;
    const Rooms rooms(control, state, MachineLaw::Figure(torque));
    StrokeHold hold = StrokeHold::none;
    double least = 0.0;
    const auto ask = [&](const std::optional<Figure>& room, StrokeHold by) {
        if (!room || (hold != StrokeHold::none && room->value >= least)) return;
        hold = by;
        least = room->value;
    };
    ask(rooms.pressure, StrokeHold::pressure_limit);
    ask(rooms.margin, StrokeHold::load_sensing);
    ask(rooms.torque, StrokeHold::torque_limit);
    return hold;
}

}  // namespace loopwright::hydraulics
