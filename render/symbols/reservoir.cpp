#include <algorithm>
#include <numbers>

#include <loopwright/render/nets.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

namespace {

/// A line that ends in the oil runs down to the bottom; one above the level stops clear of it.
double stub_end(const Circuit& circuit, Index port, double depth) {
    return circuit.ports[port].below_level ? depth : depth * above_level;
}

/// As the line that is joined to the port.
Dash dash_of(const Circuit& circuit, Index port) {
    for (Index l = 0; l < circuit.lines.size(); ++l) {
        const auto ports = circuit.ports_of(circuit.lines[l]);
        if (std::find(ports.begin(), ports.end(), port) != ports.end())
            return is_dashed(circuit, l) ? Dash::dashed : Dash::continuous;
    }
    return Dash::continuous;
}

/// Recipe RS1, or RS6 where gas keeps it under pressure; its top in the middle is the origin.
void draw_tank(Strokes& strokes, double half, double depth) {
    if (!strokes.is_given("pressure")) {
        strokes.path({{-half, 0}, {-half, depth}, {half, depth}, {half, 0}});
        return;
    }
    const double quarter_turn = std::numbers::pi / 2;
    strokes.line({-half, 0}, {half, 0});
    strokes.arc({half, depth / 2}, depth / 2, -quarter_turn, quarter_turn);
    strokes.line({-half, depth}, {half, depth});
    strokes.arc({-half, depth / 2}, depth / 2, quarter_turn, 3 * quarter_turn);
}

}  // namespace

// Recipes RS2 to RS5: the whole reservoir with all its ports.
void draw_reservoir(Strokes& strokes) {
    const Component& component = strokes.component();
    const double half = std::max(1.0, static_cast<double>(component.ports.size()));
    draw_tank(strokes, half, tank_depth);
    double x = 1.0 - half;
    for (Index p = component.ports.begin; p < component.ports.end; ++p, x += port_pitch)
        strokes.stub(p, {x, mark_port}, Side::up, {x, stub_end(strokes.circuit(), p, tank_depth)},
                     dash_of(strokes.circuit(), p));
    strokes.keep_upright();
}

// The mark beside a line's end.
Symbol local_reservoir(const Circuit& circuit, const Component& reservoir, Index port) {
    Strokes strokes(circuit, reservoir);
    draw_tank(strokes, mark_half, mark_depth);
    strokes.stub(port, {0, mark_port}, Side::up, {0, stub_end(circuit, port, mark_depth)},
                 dash_of(circuit, port));
    strokes.keep_upright();
    return strokes.finish();
}

}  // namespace loopwright
