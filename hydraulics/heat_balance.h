#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include <loopwright/hydraulics/duty.h>
#include <loopwright/hydraulics/fluid.h>
#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/steady_state.h>

namespace loopwright::hydraulics {

/// Where the heat goes that a steady state makes; W.
struct HeatBalance {
    double into_oil = 0.0;  ///< losses of machines, lines and valves, and heaters; not of gearboxes
    double cooler = 0.0;    ///< carried off by coolers that oil flows through
    double wall = 0.0;      ///< through reservoir walls
    /// What stays: the oil warms where it is positive.
    double left() const { return into_oil - cooler - wall; }
};

/// Temperature of the air at a point, K; nothing where neither point nor duty says.
std::optional<double> ambient_of(const PointFigures& point);

/// Whether the circuit says by what its oil is cooled: a cooler's capacity or a reservoir's walls.
bool can_balance_heat(const Circuit& circuit);

/// What gives heat to the air, or to the oil, beside what is lost.
struct HeatPart {
    enum class Kind : std::uint8_t { cooler, wall, heater };
    Kind kind = Kind::cooler;
    Index component = none;
    double power = 0.0;  ///< W out of the oil; of a heater into it
    /// m3/s through a cooler that carries off all that its oil brings, though it could do more.
    std::optional<double> starved_of = {};
};

/// At an oil temperature and an ambient one, both in K, in file order. A cooler gives its capacity
/// in proportion to the oil's temperature over the ambient, and no more than would bring what flows
/// through it down to that; walls where their cooling area is given.
std::vector<HeatPart> heat_parts(const Circuit& circuit, const Model& model,
                                 const SteadyState& state, const Fluid& fluid, double oil,
                                 double ambient);

/// Heat that a reservoir's walls give to the air, W/(m2.K), as given or assumed.
double wall_heat_transfer(const Circuit& circuit, const Component& reservoir);

/// The sums of these, and what is lost.
HeatBalance heat_balance(const Circuit& circuit, const Model& model, const SteadyState& state,
                         const Fluid& fluid, double oil, double ambient);

/// The oil's temperature at which `left_at` gives no heat that stays, by the false position
/// (Illinois), from `coldest` to 150 degC, both in K: the lowest such, looked for in steps of 10 K,
/// below which it warms and above which it cools; nothing where there is none in what of that range
/// can be computed. `left_at` gives W, or nothing where it cannot tell. `near`: where it is looked
/// for first, K.
std::optional<double> temperature_of_balance(
    const std::function<std::optional<double>(double)>& left_at, double coldest,
    std::optional<double> near = std::nullopt);

}  // namespace loopwright::hydraulics
