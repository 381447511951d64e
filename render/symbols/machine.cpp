#include <loopwright/render/symbols/machine.h>

#include <cmath>
#include <iterator>

#include <loopwright/render/symbols/symbol_metrics.h>

namespace loopwright {

using namespace metrics;

namespace {

void draw_triangles(Strokes& strokes, MachineWork work, bool both_ways) {
    if (work == MachineWork::pump) {
        strokes.triangle({0, -converter_radius}, Side::up, triangle_side);
        if (both_ways) strokes.triangle({0, converter_radius}, Side::down, triangle_side);
        return;
    }
    // The base's corners lie on the circle.
    const double half = triangle_side / 2;
    const double apex = std::sqrt(converter_radius * converter_radius - half * half) -
                        triangle_side * std::sqrt(3.0) / 2;
    strokes.triangle({0, -apex}, Side::down, triangle_side);
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

/// The simplified control: a frame at the arrow's tail with the mark of what sets the displacement.
void draw_control(Strokes& strokes, std::string_view control) {
    const double right = -controlled_arrow;
    const double left = right - frame_length;
    const double middle = controlled_arrow;
    const double top = middle - frame_height / 2;
    const double bottom = middle + frame_height / 2;
    strokes.box(left, top, right, bottom);
    if (control == "hydraulic")
        strokes.triangle({right, middle}, Side::right, small_triangle_side);
    else if (control == "electric")
        strokes.line({left, top}, {right, bottom});
    else {  // manual: a lever on its pivot
        const Point pivot{right - frame_length / 2, bottom};
        const Point knob{pivot.x - 0.6, top - 0.6};
        const double length = std::hypot(knob.x - pivot.x, knob.y - pivot.y);
        strokes.line(pivot, {knob.x + (pivot.x - knob.x) * knob_radius / length,
                             knob.y + (pivot.y - knob.y) * knob_radius / length});
        strokes.circle(knob, knob_radius);
    }
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
    if (work == MachineWork::pump)
        strokes.free_shaft({-rim, 0}, Side::left);
    else
        strokes.free_shaft({rim, 0}, Side::right);
    const std::string_view control = strokes.circuit().choice(strokes.component(), "control");
    const bool controlled = !control.empty() && control != "none";
    if (!strokes.is_yes("variable")) return;
    const double reach = controlled ? controlled_arrow : variable_arrow;
    strokes.arrow({-reach, reach}, {reach, -reach});
    if (controlled) draw_control(strokes, control);
}

}  // namespace loopwright
