#include <loopwright/render/symbols/symbols.h>

#include <algorithm>
#include <stdexcept>
#include <string>

namespace loopwright {

namespace {

constexpr KindSymbol symbols[] = {
    {"accumulator", draw_accumulator},
    {"brake", draw_brake},
    {"breather", draw_breather},
    {"bypass-valve", draw_bypass_valve},
    {"check-valve", draw_check_valve},
    {"clutch", draw_clutch},
    {"cooler", draw_cooler},
    {"counterbalance-valve", draw_counterbalance_valve},
    {"cylinder", draw_cylinder},
    {"device", draw_device},
    {"directional-valve", draw_directional_valve},
    {"electric-motor", draw_electric_motor},
    {"engine", draw_engine},
    {"filter", draw_filter},
    {"flow-control", draw_flow_control},
    {"flow-divider", draw_flow_divider},
    {"flow-meter", draw_flow_meter},
    {"flushing-valve", draw_flushing_valve},
    {"gauge", draw_gauge},
    {"gearbox", draw_gearbox},
    {"hand-pump", draw_hand_pump},
    {"heater", draw_heater},
    {"junction", draw_junction},
    {"level-indicator", draw_level_indicator},
    {"load", draw_load},
    {"measuring-point", draw_measuring_point},
    {"motor", draw_motor},
    {"orifice", draw_orifice},
    {"pilot-control-valve", draw_pilot_control_valve},
    {"plug", draw_plug},
    {"pressure-switch", draw_pressure_switch},
    {"priority-valve", draw_priority_valve},
    {"pump", draw_pump},
    {"pump-motor", draw_pump_motor},
    {"quick-coupling", draw_quick_coupling},
    {"reducing-valve", draw_reducing_valve},
    {"relief-valve", draw_relief_valve},
    {"reservoir", draw_reservoir},
    {"rotary-joint", draw_rotary_joint},
    {"semi-rotary-actuator", draw_semi_rotary_actuator},
    {"sensor", draw_sensor},
    {"sequence-valve", draw_sequence_valve},
    {"shut-off-valve", draw_shut_off_valve},
    {"shuttle-valve", draw_shuttle_valve},
    {"strainer", draw_strainer},
    {"tachometer", draw_tachometer},
    {"thermometer", draw_thermometer},
    {"thermostatic-bypass", draw_thermostatic_bypass},
    {"throttle", draw_throttle},
    {"throttle-check", draw_throttle_check},
    {"unloading-valve", draw_unloading_valve},
};

}  // namespace

std::span<const KindSymbol> kind_symbols() { return symbols; }

Symbol symbol_of(const Circuit& circuit, const Component& component) {
    const auto* const at =
        std::find_if(std::begin(symbols), std::end(symbols),
                     [&](const KindSymbol& symbol) { return symbol.kind == component.kind->name; });
    if (at == std::end(symbols))
        throw std::logic_error("no symbol of kind " + std::string(component.kind->name));
    Strokes strokes(circuit, component);
    at->draw(strokes);
    Symbol symbol = strokes.finish();
    if (symbol.ports.size() != component.ports.size())
        throw std::logic_error("the symbol of " + std::string(component.path) +
                               " does not show every port");
    return symbol;
}

}  // namespace loopwright
