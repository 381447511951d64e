#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/fluid.h>
#include <loopwright/hydraulics/gear.h>

/// A drive out of its duty: one loop with a pump on the prime mover's shaft and a motor, behind a
/// gearbox or not. Closed forms with stated efficiencies; solving the circuit then shows how far
/// they hold, and asks for reserves where they do not.
namespace loopwright::hydraulics {

/// What a load asks for at one point, in the sense of its motion.
struct SizingPoint {
    std::string_view id = {};
    Torque torque;    ///< at the load; negative where it drives
    Speed speed;      ///< of the load; negative in reverse, 0: stands
    Speed mover;      ///< of the prime mover; above 0
    Temperature oil;  ///< of the reservoir
};

struct SizingDuty {
    std::vector<SizingPoint> points = {};
    std::optional<Gear> gear = {};
    Power power;                            ///< rated, of the prime mover; above 0
    Speed rated_speed;                      ///< of the prime mover; above 0
    std::optional<Torque> max_torque = {};  ///< of the prime mover; none: that at rated power
    Pressure working_pressure;              ///< highest between the working ports; above 0
    std::optional<Temperature> cold_start = {};
    Torque holding = {};  ///< that a brake must hold at the load; 0: none asked for
};

/// What the closed forms left out, as solving showed it; each 1 or more.
struct SizingReserve {
    double pump = 1.0;
    double motor = 1.0;
    double charge = 1.0;
    double cooler = 1.0;
};

/// Sizes of what is to be bought or made; pressures and speeds that it must bear.
struct DriveSizes {
    Displacement pump;
    Displacement motor;
    Displacement least_motor;  ///< as `motor`: fixed
    Displacement charge;
    bool is_variable() const { return least_motor < motor; }

    Pressure relief;       ///< setting of the crossport reliefs
    Pressure relief_full;  ///< at their full flow
    Flow loop_flow;        ///< the pump's largest
    Pressure rating;       ///< of what stands on the loop
    Torque pump_torque;    ///< of its shaft end, the charge pump's too
    Torque through_torque;
    Torque motor_torque;
    Speed pump_speed;   ///< highest
    Speed motor_speed;  ///< highest
    std::optional<Torque> brake = {};

    Flow charge_flow;  ///< the charge pump's largest
    Power cooler;      ///< at `cooler_difference`
    Volume reservoir;
    Area reservoir_walls;
    Length working_bore;
    Length charge_bore;
    Length suction_bore;
    Length drain_bore;
};

/// A figure with how it was come by.
struct SizedFigure {
    std::string what;      ///< "pump displacement"
    std::string result;    ///< "71 cm3/rev"
    std::string equation;  ///< "V = T 2 pi/(dp eta_hm)"
    std::string figures;   ///< with the figures put in
    std::string source;
};

struct Sizing {
    DriveSizes sizes = {};
    std::vector<SizedFigure> figures = {};
    std::vector<std::string> unmet =
        {};  ///< what no drive of this form can meet; empty: all is met
};

/// What is taken for machines that are not chosen yet; common practice, no source.
namespace sizing {
inline constexpr double pump_volumetric = 0.97;
inline constexpr double pump_torque = 0.94;
inline constexpr double motor_volumetric = 0.98;
inline constexpr double motor_torque = 0.96;
inline constexpr double charge_volumetric = 0.94;
inline constexpr double charge_torque = 0.85;
/// Where these hold.
inline constexpr Pressure rated_pressure{250e5};
inline constexpr KinematicViscosity rated_viscosity{25e-6};
inline constexpr Pressure charge_relief{24e5};
inline constexpr Pressure flushing_relief{18e5};
inline constexpr TemperatureDifference cooler_difference{30.0};
/// The suction line's, as in the circuits to begin with.
inline constexpr Length suction_length{0.8};
}  // namespace sizing

/// Figures of `duty` in the ranges that its members say; at least one point where the load moves.
/// `fluid` gives the viscosity; where it gives none, that is unmet.
Sizing size_drive(const SizingDuty& duty, const Fluid& fluid, const SizingReserve& reserve = {});

/// Set displacement of the motor at a point, and share of the pump's stroke, in closed form.
struct SetPoint {
    double pump_share = 0.0;  ///< 0 to 1
    Displacement motor;
};
SetPoint set_point(const SizingDuty& duty, const DriveSizes& sizes, const SizingPoint& point);

}  // namespace loopwright::hydraulics
