#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/heat_balance.h>
#include <loopwright/hydraulics/loop_heat.h>
#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/steady_state.h>
#include <loopwright/hydraulics/working.h>

/// A duty point worked out: what `solve` tells and numeric rules read. SI; flow through a line is
/// counted from its first port to its second.
namespace loopwright::hydraulics {

struct LinePoint {
    Index line = none;
    double pressure = 0.0;  ///< at its first port, over the atmosphere
    std::optional<double> flow = {};
    std::optional<double> velocity = {};  ///< where its bore is given, without a sign
    std::optional<double> reynolds = {};
    double drop = 0.0;
    /// Of each of its ports what the line gives there, in their order.
    std::vector<std::optional<double>> given = {};
};

enum class MachineMode : std::uint8_t { pump, motor, idle };
std::string_view name(MachineMode mode);

struct MachinePoint {
    Index component = none;
    MachineMode mode = MachineMode::idle;
    double speed = 0.0;                  ///< rad/s; of a cylinder's rod m/s
    double stroke = 1.0;                 ///< displacement over the largest
    double set_stroke = 1.0;             ///< as its command has it
    StrokeHold hold = StrokeHold::none;  ///< what keeps it elsewhere
    double displacement = 0.0;           ///< m3/rad
    Index port_a = none;
    Index port_b = none;  ///< none of a single-acting cylinder
    double pressure_a = 0.0;
    double pressure_b = 0.0;
    double out_at_a = 0.0;  ///< flow out of it there
    double out_at_b = 0.0;
    double torque = 0.0;           ///< into a pump, out of a motor; N of a cylinder's rod
    double flow = 0.0;             ///< out of a pump, into a motor, at the higher side
    double shaft_power = 0.0;      ///< into a pump, out of a motor
    double hydraulic_power = 0.0;  ///< out of a pump, into a motor
    std::optional<double> volumetric_efficiency = {};
    std::optional<double> mechanical_efficiency = {};
    std::optional<double> case_flow = {};  ///< where it has a case port
    bool straight = false;                 ///< a cylinder
};

/// Oil on its way through a component, a machine's displacement apart.
struct PassagePoint {
    Index passage = none;
    double flow = 0.0;  ///< from its first port to its second
    double drop = 0.0;  ///< likewise
};

struct ShaftPoint {
    std::string name;
    std::vector<Index> joins = {};  ///< components on it, over engaged clutches too
    double speed = 0.0;
    double torque = 0.0;   ///< that its prime mover gives, or its loads take
    double carried = 0.0;  ///< the same, or what it passes on to gearboxes as well
    double power = 0.0;
    bool driven = false;  ///< by a prime mover
    bool straight = false;
};

/// A prime mover, with the torque that it gives its shaft; a load or a brake, with what it takes.
struct OnShaftPoint {
    Index component = none;
    double speed = 0.0;   ///< rad/s; of a rod m/s
    double torque = 0.0;  ///< N.m, of a rod N; of a load negative where it drives
    double power = 0.0;
    std::optional<double> holding = {};  ///< of a brake: the most that it holds as it stands, N.m
    bool straight = false;
};

/// What a charge pump gives, and where it goes.
struct ChargeUse {
    std::string_view what;  ///< "relief", "leakage", "flushing and others"
    std::string where;
    double flow = 0.0;
    bool spilt = false;  ///< over the setting of a valve that so holds the pressure
};
struct ChargeBalance {
    Index source = none;               ///< component
    std::vector<Index> machines = {};  ///< of loops that it feeds, in file order
    double given = 0.0;
    std::vector<ChargeUse> uses = {};
};

struct Loss {
    std::string of;
    double power = 0.0;
};

/// A figure held against its limit; the margin is positive on the good side.
struct LimitPoint {
    std::string subject;
    std::string_view quantity;
    Dimension dimension = Dimension::ratio;
    double value = 0.0;
    double limit = 0.0;
    double margin = 0.0;
};

/// Oil bears no pull: where it would stand lower, more is drawn than comes. Pa over the standard
/// atmosphere, as pressures at a point are.
inline constexpr double vacuum = -101325.0;

/// Of a loop that does not do as all others.
struct LoopState {
    Index first_pump = none;
    State state = State::drive_forward;
};

struct OperatingPoint {
    std::string_view id;
    State state = State::drive_forward;
    std::vector<LoopState> loop_states = {};  ///< where commands go both ways
    /// Of the loop named after that pump.
    State state_of(Index first_pump) const {
        for (const LoopState& loop : loop_states)
            if (loop.first_pump == first_pump) return loop.state;
        return state;
    }
    bool solved = false;
    std::string problem = {};  ///< why it is not, or, of a solved one, why no machine works so:
                               ///< somewhere oil would stand below vacuum
    std::vector<std::string> missing = {};  ///< data without which it cannot be
    std::optional<double> oil = {};         ///< K
    std::vector<double> pressures = {};     ///< by port, over the atmosphere
    std::vector<LinePoint> lines = {};      ///< in file order
    std::vector<PassagePoint> passages = {};
    std::vector<MachinePoint> machines = {};
    std::vector<ShaftPoint> shafts = {};
    /// Where the figure is one component's: not of prime movers that share a shaft.
    std::vector<OnShaftPoint> on_shafts = {};
    std::vector<ChargeBalance> charge = {};
    std::vector<Loss> losses = {};
    std::optional<HeatBalance> heat = {};  ///< where the ambient temperature is known
    bool balanced = false;                 ///< the oil's temperature is that at which heat balances
    std::vector<LoopHeat> loops = {};
    std::vector<LimitPoint> limits = {};
    std::vector<Assumption> assumptions = {};
    std::vector<WorkedEquation> working = {};  ///< where asked for
    double mass_residual = 0.0;                ///< over the largest flow
    double energy_residual = 0.0;              ///< over the largest power
    int steps = 0;                             ///< of Newton's method
};

/// All duty points of a circuit, in file order; one of rated speed and full travel where it has no
/// duty. `only`: the point of that id alone (empty: all). `working`: with the equations.
std::vector<OperatingPoint> operating_points(const Circuit& circuit, std::string_view only = {},
                                             bool working = false);

/// The cold start, of id "cold-start": the prime movers at rated speed, nothing commanded, no load,
/// the oil as cold as the duty says. Nothing where it does not say.
std::optional<OperatingPoint> cold_start(const Circuit& circuit);

}  // namespace loopwright::hydraulics
