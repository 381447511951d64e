#pragma once

#include <cstddef>
#include <optional>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/dual.h>
#include <loopwright/hydraulics/grid.h>

namespace loopwright::hydraulics {

/// An engine under its governor. Torques in N.m over speeds in rad/s, both above 0 where it drives.
///
///   the governor's line   rated torque at the speed that it is set to, none at a speed higher by
///                         `droop` of the rated one; straight, and for each setting as steep
///   the full-load line    as measured, or rated power at any speed, up to `max_torque` and never
///                         more (common practice, no source)
///   engine braking        beyond no torque the governor's line goes on until the engine brakes
///   with
///                         `braking_torque`, and never more (common practice, no source)
struct PrimeMover {
    Speed rated_speed;                      ///< above 0
    Torque rated_torque;                    ///< above 0
    double droop = 0.0;                     ///< 0: its speed is the setting whatever it is asked
    std::optional<Torque> max_torque = {};  ///< none: the rated one
    std::optional<Torque> braking_torque = {};  ///< none: not known, the line has no end
    /// Measured torque over speed in place of power and `max_torque`; beyond its ends as there.
    std::optional<Grid> full_load = {};
};

Dual<1> governed_torque(const PrimeMover& mover, Speed setting, double speed);
Dual<1> full_load_torque(const PrimeMover& mover, double speed);
/// Below it the engine gives its highest torque and can give no more: it stalls.
Speed stalling_speed(const PrimeMover& mover);

/// What the laws below hang on.
struct MoverState {
    enum Variable : std::size_t { speed, torque };
    static constexpr std::size_t count = 2;

    double shaft_speed;
    double given_torque;
};
/// Nothing where speed and torque go together; about 1 for a torque, or a speed, that is off by
/// the rated one.
Dual<MoverState::count> mover_law(const PrimeMover& mover, Speed setting, const MoverState& state);

/// How far the load may rise until what spares the engine takes strokes back: with droop until the
/// speed is down to the setting, else until rated torque (above rated speed, rated power) is given.
/// Over what no load leaves; below nothing where more is asked.
Dual<MoverState::count> load_room(const PrimeMover& mover, Speed setting, const MoverState& state);

}  // namespace loopwright::hydraulics
