#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include <loopwright/hydraulics/machine.h>

/// What moves a machine's stroke away from where its command sets it.
namespace loopwright::hydraulics {

/// Of a motor whose displacement rises with the pressure of its higher port, in proportion from
/// the least at `begin` to the largest at `end`; where both are the same it keeps that pressure.
struct PressureRise {
    Pressure begin;
    Pressure end;        ///< not below `begin`
    double least = 0.0;  ///< displacement over the largest; below 1
};

/// Of a pump: each limit takes the stroke back, at most to nothing, as far as it must. Of a motor
/// `rise` alone, which never takes it below what is set.
struct StrokeControl {
    std::optional<Pressure> pressure_limit = {};  ///< of the higher port: limiter, compensator
    std::optional<Pressure> margin = {};          ///< load-sensing: of A over the pressure sensed
    std::optional<Torque> torque_limit = {};      ///< at the shaft: torque limiter, constant power
    bool spares_mover = false;                    ///< anti-stall: follows its prime mover's share
    std::optional<PressureRise> rise = {};

    bool acts() const {
        return pressure_limit || margin || torque_limit || spares_mover || rise.has_value();
    }
};

/// What the law hangs on; pressures in Pa, the stroke with its sign.
struct StrokeState {
    enum Variable : std::size_t { stroke, a, b, speed, sensed, share };
    static constexpr std::size_t count = 6;

    double relative_displacement;
    double pressure_a;
    double pressure_b;
    double shaft_speed;
    double pressure_sensed;
    double share_left;  ///< of the set stroke, by what spares the prime mover; 0 to 1
};

/// Nothing where the stroke stands as its controls want it: as large as it is `set` (-1 to 1) and
/// all limits allow, or as the rise asks, if that is more. For a control that acts. `torque`: of
/// the machine's law at the same state.
Dual<StrokeState::count> stroke_law(const StrokeControl& control, double set,
                                    const StrokeState& state, const MachineLaw::Figure& torque);

/// What holds the stroke elsewhere than it is set.
enum class StrokeHold : std::uint8_t {
    none,
    pressure_limit,
    load_sensing,
    torque_limit,
    anti_stall,
    pressure_rise,
};
/// "at its pressure limit"; empty of none.
std::string_view told(StrokeHold hold);
/// At a solution of the law.
StrokeHold stroke_hold(const StrokeControl& control, double set, const StrokeState& state,
                       double torque);

}  // namespace loopwright::hydraulics
