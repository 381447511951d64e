// Of a drive's sizes those of its oil: charge, cooler, reservoir, bores.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/hydraulics/sizer.h>

namespace loopwright::hydraulics::sizing {

void Sizer::size_charge() {
    // Leaks grow as the oil thins: the hottest point decides.
    double hottest = 0.0;
    for (const MotorPoint& at : points_) hottest = std::max(hottest, at.point->oil.si());
    const auto oil = fluid_.at(Temperature(hottest));
    if (!oil) return refuse(oil.reason());
    const double thinned = sizing::rated_viscosity.si() / oil->viscosity.si();
    const double pressed = duty_.working_pressure / sizing::rated_pressure;
    const double motor_rated = out_.sizes.motor_speed.si() / 1.1;
    const double leaks =
        ((1.0 - sizing::pump_volumetric) * out_.sizes.pump.si() * duty_.rated_speed.si() +
         (1.0 / sizing::motor_volumetric - 1.0) * out_.sizes.motor.si() * motor_rated) *
        thinned * pressed;
    tell("leakage at the hottest point", said(leaks, Dimension::flow),
         "q = ((1 - eta_v) V n of the pump + (1/eta_v - 1) V n of the motor) dp/dp_r nu_r/nu",
         fmt::format("{}, {}; {}/250 bar; 25/{:.3g} mm2/s", said(out_.sizes.pump),
                     said(out_.sizes.motor), said(duty_.working_pressure),
                     oil->viscosity.si() * 1e6),
         "W. E. Wilson's slip (from memory)");
    constexpr double flushed = 0.10;  // of the loop flow
    const double flushing = flushed * out_.sizes.pump.si() * slowest_mover_;
    constexpr double spare = 1.2;
    const double share = 0.10 * (out_.sizes.pump.si() + out_.sizes.motor.si());
    const double flow = spare * (leaks + flushing) / (slowest_mover_ * sizing::charge_volumetric);
    const double need = std::max(share, flow) * reserve_.charge;
    out_.sizes.charge = Displacement(std::max(ceiled(need / cm3_per_rev, 1.0), 4.0) * cm3_per_rev);
    if (flow > share)
        tell("charge displacement", said(out_.sizes.charge), "V = 1.2 (q_leak + q_flush)/(n eta_v)",
             fmt::format("1.2 x ({} + {})/({} x {}){}", said(leaks, Dimension::flow),
                         said(flushing, Dimension::flow), said(slowest_mover_, Dimension::speed),
                         sizing::charge_volumetric, reserved(reserve_.charge)),
             "flushing 10 % of the loop flow, a fifth to spare: common practice, no source");
    else
        tell("charge displacement", said(out_.sizes.charge), "10 % of pump and motor",
             fmt::format("0.1 x ({} + {}){}", said(out_.sizes.pump), said(out_.sizes.motor),
                         reserved(reserve_.charge)),
             practice);
    out_.sizes.charge_flow = Flow(out_.sizes.charge.si() * fastest_mover_);
}

void Sizer::size_oil() {
    constexpr double share = 0.25;
    const double heat = share * most_power_ * reserve_.cooler;
    out_.sizes.cooler = Power(std::max(ceiled(heat, 500.0), 1000.0));
    tell("cooler", fmt::format("{} at 30 K", said(out_.sizes.cooler)), "25 % of the power put in",
         fmt::format("0.25 x {}{}", said(most_power_, Dimension::power), reserved(reserve_.cooler)),
         "TM 5-3895-346-14, pp. 480-482 (20 to 25 %)");
    const double volume = ceiled(out_.sizes.charge_flow.si() * 60.0, 5e-3);
    out_.sizes.reservoir = Volume(volume);
    tell("reservoir", said(out_.sizes.reservoir), "the charge flow of a minute",
         fmt::format("{} x {}", said(out_.sizes.charge), said(fastest_mover_, Dimension::speed)),
         "common practice, no source; TM 5-3895-346-14 asks for half a minute at least");
    const double walls = std::floor(5.0 * std::pow(volume, 2.0 / 3.0) * 100.0) / 100.0;
    out_.sizes.reservoir_walls = Area(walls);
    tell("its walls", said(out_.sizes.reservoir_walls), "A = 5 V^(2/3), a cube without its base",
         said(out_.sizes.reservoir), "B. Casey: 1.7 m2 of a 200 L tank");
}

Length Sizer::bore_for(std::string what, double flow, double velocity, std::string_view source) {
    constexpr double least = 6e-3;
    const double bore = ceiled(std::max(std::sqrt(4.0 * flow / (pi * velocity)), least), 1e-3);
    tell(std::move(what), said(bore, Dimension::length), "D = sqrt(4 q/(pi v))",
         fmt::format("{}, {:.3g} m/s", said(flow, Dimension::flow), velocity), source);
    return Length(bore);
}

void Sizer::size_bores() {
    const double charge = out_.sizes.charge_flow.si();
    out_.sizes.loop_flow = Flow(out_.sizes.pump.si() * fastest_mover_);
    const double loop = out_.sizes.loop_flow.si();
    out_.sizes.working_bore =
        bore_for("bore of the loop", loop, 5.0, "A. Esposito, ex. 10-1 and 10-2 (6.1 m/s at most)");
    out_.sizes.charge_bore = bore_for("bore of charge lines", charge, 3.0, practice);
    // What is charged leaves with the leakage, at the points that leak most beside it.
    out_.sizes.drain_bore = bore_for("bore of drains", 1.2 * charge, 2.0, practice);
    out_.sizes.suction_bore = bore_for("bore of the suction line", charge, 0.8,
                                       "A. Esposito, chapter 10 (4 ft/s at most; from memory)");
    if (!duty_.cold_start) return;
    const auto cold = fluid_.at(*duty_.cold_start);
    if (!cold) return refuse(fmt::format("at the cold start: {}", cold.reason()));
    constexpr double loss = 0.12e5;  // of the 0.21 bar from the atmosphere to 0.8 bar absolute
    const double bore = std::pow(
        128.0 * cold->dynamic_viscosity().si() * sizing::suction_length.si() * charge / (pi * loss),
        0.25);
    if (bore <= out_.sizes.suction_bore.si()) return;
    out_.sizes.suction_bore = Length(ceiled(bore, 1e-3));
    tell("the same at a cold start", said(out_.sizes.suction_bore),
         "D = (128 mu L q/(pi dp))^(1/4)",
         fmt::format("{:.3g} Pa.s, {}, {}, 0.12 bar", cold->dynamic_viscosity().si(),
                     said(sizing::suction_length), said(charge, Dimension::flow)),
         "Hagen and Poiseuille, laminar");
}

}  // namespace loopwright::hydraulics::sizing
