#include <loopwright/hydraulics/valves.h>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

namespace {

using Figure = ValveState::Figure;

Figure balance(const SpringValve& valve, const ValveState& state) {
    return valve.spring.si() + valve.override * Figure::variable(ValveState::flow, state.through) -
           valve.inlet * Figure::variable(ValveState::inlet, state.pressure_inlet) -
           valve.outlet * Figure::variable(ValveState::outlet, state.pressure_outlet) -
           valve.chamber * Figure::variable(ValveState::chamber, state.pressure_chamber) -
           valve.pilot * Figure::variable(ValveState::pilot, state.pressure_pilot);
}

}  // namespace

SpringValve check_valve(Pressure opening) {
    return {.spring = opening, .inlet = 1.0, .outlet = -1.0};
}

SpringValve relief_valve(Pressure setting) {
    return {.spring = setting, .inlet = 1.0, .chamber = -1.0};
}

SpringValve relief_valve(Pressure setting, Pressure at_full_flow, Flow full_flow) {
    SpringValve valve = relief_valve(setting);
    valve.override = (at_full_flow - setting).si() / full_flow.si();
    return valve;
}

SpringValve unloading_valve(Pressure setting) {
    return {.spring = setting, .chamber = -1.0, .pilot = 1.0};
}

SpringValve counterbalance_valve(Pressure setting, double pilot_ratio) {
    return {.spring = setting, .inlet = 1.0, .chamber = -1.0 - pilot_ratio, .pilot = pilot_ratio};
}

SpringValve reducing_valve(Pressure setting) {
    return {.spring = Pressure(-setting.si()), .outlet = -1.0, .chamber = 1.0};
}

Figure holding(const SpringValve& valve, const ValveState& state) {
    return max(balance(valve, state),
               Figure::variable(ValveState::outlet, state.pressure_outlet) -
                   Figure::variable(ValveState::inlet, state.pressure_inlet));
}

Figure opened_flow(const SpringValve& valve, const ValveState& state, Flow full_flow) {
    ValveState shut = state;
    shut.through = 0.0;
    Figure excess = -1.0 * holding(valve, shut);
    excess.slope[ValveState::flow] = 0.0;
    const double band = opening_band * full_flow.si();
    return band * soft_ramp(excess / (valve.override * band));
}

}  // namespace loopwright::hydraulics
