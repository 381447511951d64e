#include <loopwright/render/symbols/machine.h>

#include <cmath>
#include <iterator>
#include <utility>

#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

double inward_apex(double radius, double side) {
    return std::sqrt(radius * radius - side * side / 4) - side * std::sqrt(3.0) / 2;
}

namespace {

void draw_triangles(Strokes& strokes, MachineWork work, bool both_ways) {
    if (work == MachineWork::pump) {
        strokes.triangle({0, -converter_radius}, Side::up, triangle_side);
        if (both_ways) strokes.triangle({0, converter_radius}, Side::down, triangle_side);
        return;
    }
    const double apex = inward_apex(converter_radius, triangle_side);
    strokes.triangle({0, -apex}, Side::down, triangle_side);
    if (work == MachineWork::through)
        strokes.triangle({0, converter_radius}, Side::down, triangle_side);
    if (both_ways) strokes.triangle({0, apex}, Side::up, triangle_side);
}

/// One port is L, several are L1, L2, L3: low on both sides first, then high. The third leaves the
/// upper half, since the arrow's tail and its control take the room that is left below.
void draw_case_ports(Strokes& strokes) {
    constexpr Point ends[] = {
        {case_port_x, machine_port}, {-case_port_x, machine_port}, {-case_port_x, -machine_port}};
    const double on_circle =
        std::sqrt(converter_radius * converter_radius - case_port_x * case_port_x);
    const Component& component = strokes.component();
    std::size_t next = 0;
    for (Index p = component.ports.begin; p < component.ports.end; ++p) {
        if (strokes.circuit().ports[p].use != PortUse::drain || next == std::size(ends)) continue;
        const Point end = ends[next++];
        const bool low = end.y > 0;
        strokes.stub(p, end, low ? Side::down : Side::up, {end.x, low ? on_circle : -on_circle},
                     Dash::dashed);
    }
}

/// A spring from the left edge of a control frame and a pressure that works against it.
void draw_sensed_pressure(Strokes& strokes, double left, double right, double middle, bool load) {
    const double high = small_triangle_side * std::sqrt(3.0) / 2;
    strokes.triangle({right, middle}, Side::right, small_triangle_side);
    const double from = load ? left + high : left;
    if (load) strokes.triangle({from, middle}, Side::right, small_triangle_side);
    const double room = std::floor((right - high - from) / spring_pitch) * spring_pitch;
    strokes.spring({from, middle}, {from + room, middle}, control_spring_half);
}

/// The simplified control: a frame at the arrow's tail with the mark of what sets the displacement,
/// and the pilots that lead to it from outside: X at the frame's end, X1 and X2 below it.
void draw_control(Strokes& strokes, std::string_view control) {
    const int pilots = strokes.count("pilot-ports");
    const double right = -controlled_arrow;
    const double left = right - (pilots == 2 ? long_frame_length : frame_length);
    const double middle = controlled_arrow;
    const double top = middle - frame_height / 2;
    const double bottom = middle + frame_height / 2;
    strokes.box(left, top, right, bottom);
    if (control == "electric")
        strokes.line({left, top}, {right, bottom});
    else if (control == "pressure-compensated" || control == "load-sensing")
        draw_sensed_pressure(strokes, left, right, middle, control == "load-sensing");
    else if (control == "manual") {  // a lever on its pivot
        const Point pivot{right - frame_length / 2, bottom};
        const Point knob{pivot.x - 0.6, top - 0.6};
        const double length = std::hypot(knob.x - pivot.x, knob.y - pivot.y);
        strokes.line(pivot, {knob.x + (pivot.x - knob.x) * knob_radius / length,
                             knob.y + (pivot.y - knob.y) * knob_radius / length});
        strokes.circle(knob, knob_radius);
    } else {
        strokes.triangle({right, middle}, Side::right, small_triangle_side);
    }
    strokes.stub("X", {left - level_frame_port, middle}, Side::left, {left, middle}, Dash::dashed);
    for (const auto& [letter, x] : {std::pair{"X1", left + 1.0}, std::pair{"X2", right - 1.0}})
        strokes.stub(letter, {x, bottom + frame_port}, Side::down, {x, bottom}, Dash::dashed);
}

}  // namespace

void draw_machine(Strokes& strokes, MachineWork work, std::string_view upper,
                  std::string_view lower, bool both_ways) {
    strokes.stub(upper, {0, -machine_port}, Side::up, {0, -converter_radius});
    strokes.stub(lower, {0, machine_port}, Side::down, {0, converter_radius});
    draw_case_ports(strokes);
    strokes.circle({0, 0}, converter_radius);
    draw_triangles(strokes, work, both_ways);
    strokes.shaft({-converter_radius, 0}, Side::left);
    strokes.shaft({converter_radius, 0}, Side::right);
    const double rim = std::sqrt(converter_radius * converter_radius - shaft_half * shaft_half);
    if (work == MachineWork::motor)
        strokes.free_shaft({rim, 0}, Side::right);
    else
        strokes.free_shaft({-rim, 0}, Side::left);
    const std::string_view control = strokes.circuit().choice(strokes.component(), "control");
    const bool controlled =
        (!control.empty() && control != "none") || strokes.count("pilot-ports") > 0;
    if (!strokes.is_yes("variable")) return;
    const double reach = controlled ? controlled_arrow : variable_arrow;
    strokes.arrow({-reach, reach}, {reach, -reach});
    if (controlled) draw_control(strokes, control);
}

}  // namespace loopwright
