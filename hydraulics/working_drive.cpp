#include <loopwright/hydraulics/working_drive.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/assumed.h>
#include <loopwright/hydraulics/power_balance.h>

namespace loopwright::hydraulics {

namespace {

std::string pressure(double si) { return format_quantity(si, Dimension::pressure); }
std::string speed(double si) { return format_quantity(si, Dimension::speed); }
std::string torque(double si) { return format_quantity(si, Dimension::torque); }
std::string force(double si) { return format_quantity(si, Dimension::force); }

/// A stroke where its control holds it.
void work_stroke(std::string_view of, const NetworkMachine& one, const MachineState& at,
                 const SteadyState& state, std::vector<WorkedEquation>& worked) {
    const StrokeControl& control = one.control;
    const StrokeState stroke{
        .relative_displacement = at.relative_displacement,
        .pressure_a = at.pressure_a,
        .pressure_b = at.pressure_b,
        .shaft_speed = at.shaft_speed,
        .pressure_sensed = one.sensed == none ? 0.0 : state.pressures[one.sensed],
        .share_left = one.mover == none ? 1.0 : state.shares_left[one.mover]};
    const double taken = law_of(one, at).torque.value;
    const StrokeHold hold = stroke_hold(control, one.stroke, stroke, taken);
    const double high = std::max(at.pressure_a, at.pressure_b);
    const auto put = [&](std::string_view equation, std::string figures, std::string result) {
        worked.push_back({std::string(of),
                          fmt::format("stroke {:.4g} instead of {:.4g}, {}",
                                      at.relative_displacement, one.stroke, told(hold)),
                          std::string(equation), std::move(figures), std::move(result)});
    };
    switch (hold) {
        case StrokeHold::none:
            break;
        case StrokeHold::pressure_limit:
            put("higher of pA and pB = limit",
                fmt::format("{} and {}", pressure(at.pressure_a), pressure(at.pressure_b)),
                pressure(control.pressure_limit->si()));
            break;
        case StrokeHold::load_sensing:
            put("pA - p sensed = margin",
                fmt::format("{} - {}", pressure(at.pressure_a), pressure(stroke.pressure_sensed)),
                pressure(control.margin->si()));
            break;
        case StrokeHold::torque_limit:
            put("T = limit", torque(std::abs(taken)), torque(control.torque_limit->si()));
            break;
        case StrokeHold::anti_stall:
            put("s = share left x s set",
                fmt::format("{:.4g} x {:.4g}", stroke.share_left, one.stroke),
                fmt::format("{:.4g}", stroke.share_left * one.stroke));
            break;
        case StrokeHold::pressure_rise: {
            const PressureRise& rise = *control.rise;
            if (rise.end.si() <= rise.begin.si())
                put("higher of pA and pB = p1",
                    fmt::format("{} and {}", pressure(at.pressure_a), pressure(at.pressure_b)),
                    pressure(rise.begin.si()));
            else
                put("s = s0 + (1 - s0) (p - p1)/(p2 - p1)",
                    fmt::format("{:.4g} + {:.4g} x ({} - {}) / ({} - {})", rise.least,
                                1.0 - rise.least, pressure(high), pressure(rise.begin.si()),
                                pressure(rise.end.si()), pressure(rise.begin.si())),
                    fmt::format("{:.4g}", std::abs(at.relative_displacement)));
            break;
        }
    }
}

class Trains {
  public:
    Trains(const Circuit& circuit, const Model& model, const SteadyState& state,
           std::vector<WorkedEquation>& worked)
        : circuit_(circuit), model_(model), state_(state), worked_(worked) {}

    void work() {
        for (std::size_t i = 0; i < model_.loads.size(); ++i) load(i);
        for (std::size_t i = 0; i < model_.gears.size(); ++i) gear(i);
        for (std::size_t i = 0; i < model_.movers.size(); ++i) mover(i);
    }

  private:
    void put(Index of, std::string_view what, std::string_view equation, std::string figures,
             std::string result) {
        worked_.push_back({std::string(circuit_.components[of].path), std::string(what),
                           std::string(equation), std::move(figures), std::move(result)});
    }

    void load(std::size_t i) {
        const NetworkLoad& one = model_.network.loads[i];
        const Index of = model_.loads[i];
        const bool straight = model_.network.shafts[one.shaft].straight;
        const double taken = torque_of(model_.network, one, state_);
        if (one.kind == NetworkLoad::Kind::brake) {
            const double held = holding_torque(one.brake, state_.pressures[one.brake_node]).value;
            put(of, "torque that it can hold",
                one.brake.spring_applied ? "Tb (p2 - p)/(p2 - p1), at most Tb, at least 0"
                                         : "Tb (p - p1)/(p2 - p1), at most Tb, at least 0",
                fmt::format("{}, p1 {}, p2 {}, p {}", torque(one.brake.torque.si()),
                            pressure(one.brake.begins.si()), pressure(one.brake.completes.si()),
                            pressure(state_.pressures[one.brake_node])),
                torque(held));
        } else if (one.kind == NetworkLoad::Kind::vehicle) {
            const Vehicle& vehicle = one.vehicle;
            const std::string mass = format_quantity(vehicle.mass.si(), Dimension::mass);
            const std::string angle = fmt::format("atan({:.4g})", vehicle.grade.si());
            const double g = assumed::gravity.figure.si();
            put(of, "pull of the grade", "Fg = m g sin(a)",
                fmt::format("{} x {:.6g} m/s2 x sin({})", mass, g, angle),
                force(grade_resistance(vehicle).si()));
            put(of, "rolling resistance", "Fr = f m g cos(a)",
                fmt::format("{:.4g} x {} x {:.6g} m/s2 x cos({})", vehicle.rolling_resistance, mass,
                            g, angle),
                force(rolling_resistance(vehicle).si()));
            const double turns = state_.speeds[one.shaft];
            const bool stands = std::abs(turns) < 10.0 * standstill.si();
            put(of, "torque at the wheels",
                stands ? "T = (Fg + Fr) r, of Fr what holds it at rest" : "T = (Fg + Fr) r",
                fmt::format("({} {} {}) x {}", force(grade_resistance(vehicle).si()),
                            turns < 0.0 ? "-" : "+", force(rolling_resistance(vehicle).si()),
                            format_quantity(vehicle.wheel_radius.si(), Dimension::length)),
                torque(taken));
        } else {
            put(of, straight ? "force that it takes" : "torque that it takes",
                one.kind == NetworkLoad::Kind::constant ? "as given, in one sense whatever moves"
                                                        : "as given, against the motion",
                {}, straight ? force(taken) : torque(taken));
        }
    }

    void gear(std::size_t i) {
        const NetworkGear& one = model_.network.gears[i];
        const double in = state_.speeds[one.in];
        const double given = state_.gear_torques[i];
        put(model_.gears[i], "speed of the end out", "n out = n in/i",
            fmt::format("{} / {:.6g}", speed(in), one.gear.ratio), speed(speed_out(one.gear, in)));
        const bool drives_in = given * in >= 0.0;
        put(model_.gears[i], "torque at the end out",
            drives_in ? "T out = T in i eta" : "T out = T in i/eta",
            fmt::format("{} x {:.6g} {} {:.4g}", torque(given), one.gear.ratio,
                        drives_in ? "x" : "/", one.gear.efficiency),
            torque(torque_out(one.gear, {.torque_in = given, .speed_in = in}).value));
    }

    void mover(std::size_t i) {
        const NetworkMover& one = model_.network.movers[i];
        if (one.mover.droop <= 0.0) return;
        const double turns = state_.speeds[one.shaft];
        const double given = state_.mover_torques[i];
        const Index of = model_.movers[i];
        const double governed = governed_torque(one.mover, one.setting, turns).value;
        const double full = full_load_torque(one.mover, turns).value;
        constexpr double rounding = 1e-6;
        if (governed > full * (1.0 + rounding)) {
            const double from = std::max(turns, stalling_speed(one.mover).si());
            put(of, "torque under full load", "T = P/n",
                fmt::format(
                    "{} / {}",
                    format_quantity(one.mover.rated_torque.si() * one.mover.rated_speed.si(),
                                    Dimension::power),
                    speed(from)),
                torque(given));
        } else if (one.mover.braking_torque &&
                   governed < -one.mover.braking_torque->si() * (1.0 + rounding)) {
            put(of, "torque with which it brakes", "T = -T braking", {}, torque(given));
        } else {
            put(of, "torque on its governor's line", "T = Tr (1 + (n set - n)/(droop nr))",
                fmt::format("{} x (1 + ({} - {}) / ({:.4g} x {}))",
                            torque(one.mover.rated_torque.si()), speed(one.setting.si()),
                            speed(turns), one.mover.droop, speed(one.mover.rated_speed.si())),
                torque(given));
        }
    }

    const Circuit& circuit_;
    const Model& model_;
    const SteadyState& state_;
    std::vector<WorkedEquation>& worked_;
};

}  // namespace

void work_strokes(const Circuit& circuit, const Model& model, const SteadyState& state,
                  std::vector<WorkedEquation>& worked) {
    for (std::size_t i = 0; i < model.machines.size(); ++i) {
        const NetworkMachine& one = model.network.machines[i];
        if (one.control.acts())
            work_stroke(circuit.components[model.machines[i].component].path, one,
                        state.machines[i], state, worked);
    }
}

void work_trains(const Circuit& circuit, const Model& model, const SteadyState& state,
                 std::vector<WorkedEquation>& worked) {
    Trains(circuit, model, state, worked).work();
}

}  // namespace loopwright::hydraulics
