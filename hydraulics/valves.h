#pragma once

#include <cstddef>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// A valve that lets oil one way, from inlet to outlet, once the pressures on it overcome its
/// spring. All that a circuit may hold are one balance of forces and differ in the areas on which
/// the pressures act, counted over the area on which the spring's pressure is set:
///     holding = spring + override x flow - inlet x p_inlet - outlet x p_outlet
///                      - chamber x p_chamber - pilot x p_pilot
/// Flow and what still holds the valve shut (never less than the outlet's pressure over the
/// inlet's) are never both above nothing: `holding` and `complementarity.h` make its equation.
struct SpringValve {
    Pressure spring;        ///< 0 or more; of a reducing valve minus its setting
    double override = 0.0;  ///< Pa/(m3/s): what a flow adds; 0 where the setting holds at any flow
    double inlet = 0.0;     ///< areas, with the sign of what they do: above 0 where they open it
    double outlet = 0.0;
    double chamber = 0.0;
    double pilot = 0.0;
};

/// A check; spring 0 where it has none.
SpringValve check_valve(Pressure opening);

/// A relief valve, an element's bypass, a sequence valve opened by its own inlet, the third port of
/// a relieving reducing valve: the spring chamber stands at the outlet, or where it is drained to.
/// The excess way of a priority valve: the chamber is the priority port, or the load-sensing one;
/// its priority way is a `FlowControl` that has the spring for its least drop.
SpringValve relief_valve(Pressure setting);

/// The same from its pressure at full flow; above 0, the pressure not below the setting.
SpringValve relief_valve(Pressure setting, Pressure at_full_flow, Flow full_flow);

/// Opened by a pilot alone: an unloading valve, a sequence valve with an outer pilot.
SpringValve unloading_valve(Pressure setting);

/// Opened by the load at its inlet and, `pilot_ratio` times as strong, by the pilot. What stands in
/// the spring chamber holds against both.
SpringValve counterbalance_valve(Pressure setting, double pilot_ratio);

/// Shut by its outlet at the setting over the spring chamber, open below.
SpringValve reducing_valve(Pressure setting);

/// Flow in m3/s, pressures in Pa, in the order of the derivatives.
struct ValveState {
    enum Variable : std::size_t { flow, inlet, outlet, chamber, pilot };
    static constexpr std::size_t count = 5;
    using Figure = Dual<count>;

    double through;
    double pressure_inlet;
    double pressure_outlet;
    double pressure_chamber;
    double pressure_pilot;
};

/// What still holds the valve shut, in Pa; below nothing at no state that can be.
ValveState::Figure holding(const SpringValve& valve, const ValveState& state);

/// Flow in m3/s as a function of the pressures (`through` is not read), for a valve with an
/// override: nothing until it opens, then excess over override, rounded off over the first
/// `opening_band` of the full flow given. Rises with what opens the valve.
ValveState::Figure opened_flow(const SpringValve& valve, const ValveState& state, Flow full_flow);
inline constexpr double opening_band = 0.01;

}  // namespace loopwright::hydraulics
