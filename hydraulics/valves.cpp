#include <loopwright/hydraulics/valves.h>

#include <loopwright/hydraulics/smooth.h>

namespace loopwright::hydraulics {

using Figure = ValveState::Figure;

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

// Straight lines, with their slopes at once: the law that a network of valves asks most often.
Figure holding(const SpringValve& valve, const ValveState& state) {
    const double back = state.pressure_outlet - state.pressure_inlet;
    Figure held(valve.spring.si() + valve.override * state.through -
                valve.inlet * state.pressure_inlet - valve.outlet * state.pressure_outlet -
                valve.chamber * state.pressure_chamber - valve.pilot * state.pressure_pilot);
    if (held.value >= back) {
        held.slope = {valve.override, -valve.inlet, -valve.outlet, -valve.chamber, -valve.pilot};
        return held;
    }
    held.value = back;
    held.slope[ValveState::outlet] = 1.0;
    held.slope[ValveState::inlet] = -1.0;
    return held;
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
