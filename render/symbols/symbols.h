#pragma once

#include <span>
#include <string_view>

#include <loopwright/render/symbols/strokes.h>

/// The list of symbols: one function a kind, in the file of its name. To add a kind, write its file
/// and add its line in symbols.cpp; a test holds the list against the kinds.
///
/// Order of the strokes: an adjusting arrow (two points at 45 degrees, then its head) comes last,
/// followed only by what is fixed to it (a control frame). From there on the strokes keep their
/// sense when the symbol is turned and only move with the arrow's middle.
namespace loopwright {

void draw_accumulator(Strokes& strokes);
void draw_brake(Strokes& strokes);
void draw_breather(Strokes& strokes);
void draw_bypass_valve(Strokes& strokes);
void draw_check_valve(Strokes& strokes);
void draw_clutch(Strokes& strokes);
void draw_cooler(Strokes& strokes);
void draw_counterbalance_valve(Strokes& strokes);
void draw_cylinder(Strokes& strokes);
void draw_device(Strokes& strokes);
void draw_directional_valve(Strokes& strokes);
void draw_electric_motor(Strokes& strokes);
void draw_engine(Strokes& strokes);
void draw_filter(Strokes& strokes);
void draw_flow_control(Strokes& strokes);
void draw_flow_divider(Strokes& strokes);
void draw_flow_meter(Strokes& strokes);
void draw_flushing_valve(Strokes& strokes);
void draw_gauge(Strokes& strokes);
void draw_gearbox(Strokes& strokes);
void draw_hand_pump(Strokes& strokes);
void draw_heater(Strokes& strokes);
void draw_junction(Strokes& strokes);
void draw_level_indicator(Strokes& strokes);
void draw_load(Strokes& strokes);
void draw_measuring_point(Strokes& strokes);
void draw_motor(Strokes& strokes);
void draw_orifice(Strokes& strokes);
void draw_pilot_control_valve(Strokes& strokes);
void draw_plug(Strokes& strokes);
void draw_pressure_switch(Strokes& strokes);
void draw_priority_valve(Strokes& strokes);
void draw_pump(Strokes& strokes);
void draw_pump_motor(Strokes& strokes);
void draw_quick_coupling(Strokes& strokes);
void draw_reducing_valve(Strokes& strokes);
void draw_relief_valve(Strokes& strokes);
void draw_reservoir(Strokes& strokes);
void draw_rotary_joint(Strokes& strokes);
void draw_semi_rotary_actuator(Strokes& strokes);
void draw_sensor(Strokes& strokes);
void draw_sequence_valve(Strokes& strokes);
void draw_shut_off_valve(Strokes& strokes);
void draw_shuttle_valve(Strokes& strokes);
void draw_strainer(Strokes& strokes);
void draw_tachometer(Strokes& strokes);
void draw_thermometer(Strokes& strokes);
void draw_thermostatic_bypass(Strokes& strokes);
void draw_throttle(Strokes& strokes);
void draw_throttle_check(Strokes& strokes);
void draw_unloading_valve(Strokes& strokes);

struct KindSymbol {
    std::string_view kind = {};
    void (*draw)(Strokes&) = nullptr;
};
std::span<const KindSymbol> kind_symbols();

/// Index of the first stroke that keeps its sense; the number of strokes where there is none.
std::size_t first_steady(const Symbol& symbol);

/// Works out the body from the strokes that belong to no stub.
Box body_of(const Symbol& symbol);

/// Places the letter of each port beside its stub, clear of all strokes and the other letters.
/// `halves`: half the width of each letter, M, in the order of the ports.
void place_letters(Symbol& symbol, std::span<const double> halves);
/// Half the width of a letter that `place_letters` has placed, told from its place.
double letter_half(const PortAnchor& anchor);

/// All kinds and variants with their names and port letters on one sheet.
Drawing symbol_sheet();

}  // namespace loopwright
