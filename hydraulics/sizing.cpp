#include <loopwright/hydraulics/sizing.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/hydraulics/sizer.h>

namespace loopwright::hydraulics {

namespace sizing {

namespace {

/// A motor is reduced to a third at most: three to five is usual.
constexpr double least_share = 1.0 / 3.0;
/// So much larger a pump is worth a motor without control.
constexpr double worth_a_fixed_motor = 1.2;
/// Displacement in cm3/rev and speed in 1/min at which n V^(1/3) is as high as a piston machine
/// bears: equal velocities of its parts at any size.
constexpr double pump_speed_number = 14'000.0;
constexpr double motor_speed_number = 20'000.0;
constexpr double largest_machine = 1000.0;  // cm3/rev

}  // namespace

Sizer::Sizer(const SizingDuty& duty, const Fluid& fluid, const SizingReserve& reserve)
    : duty_(duty), fluid_(fluid), reserve_(reserve) {
    for (const SizingPoint& one : duty.points) {
        fastest_mover_ = std::max(fastest_mover_, one.mover.si());
        if (one.speed.si() == 0.0) continue;
        points_.push_back(at_motor(one));
        slowest_mover_ = std::min(slowest_mover_, one.mover.si());
    }
    fastest_mover_ = std::max(fastest_mover_, duty.rated_speed.si());
}

Sizing Sizer::size() {
    size_motor();
    size_pump();
    size_pressures();
    size_charge();
    size_prime_mover();
    size_torques();
    size_oil();
    size_bores();
    return std::move(out_);
}

void Sizer::tell(std::string what, std::string result, std::string equation, std::string figures,
                 std::string_view source) {
    out_.figures.push_back({std::move(what), std::move(result), std::move(equation),
                            std::move(figures), std::string(source)});
}

void Sizer::refuse(std::string why) { out_.unmet.push_back(std::move(why)); }

MotorPoint Sizer::at_motor(const SizingPoint& one) const {
    MotorPoint at{.point = &one,
                  .torque = std::abs(one.torque.si()),
                  .drives = one.torque.si() < 0.0,
                  .speed = std::abs(one.speed.si())};
    if (duty_.gear) {
        const double ratio = std::abs(duty_.gear->ratio);
        const double efficiency = duty_.gear->efficiency;
        at.torque *= (at.drives ? efficiency : 1.0 / efficiency) / ratio;
        at.speed *= ratio;
    }
    return at;
}

double Sizer::least_displacement(const MotorPoint& at) const {
    const double efficiency = at.drives ? 1.0 / sizing::motor_torque : sizing::motor_torque;
    return at.torque / (duty_.working_pressure.si() * efficiency);
}

double Sizer::pump_for(const MotorPoint& at, double motor) {
    return motor * at.speed /
           (at.point->mover.si() * sizing::pump_volumetric * sizing::motor_volumetric);
}

void Sizer::size_motor() {
    const MotorPoint& heaviest = *std::max_element(
        points_.begin(), points_.end(), [&](const MotorPoint& a, const MotorPoint& b) {
            return least_displacement(a) < least_displacement(b);
        });
    const double least = least_displacement(heaviest) * reserve_.motor;
    const double size = std::max(ceiled(least / cm3_per_rev, 1.0), 8.0);
    out_.sizes.motor = Displacement(size * cm3_per_rev);
    if (duty_.gear)
        tell("torque at the motor", said(heaviest.torque, Dimension::torque),
             heaviest.drives ? "T_M = T eta/i" : "T_M = T/(i eta)",
             fmt::format("point {}: {} {} {}, i = {:.4g}, eta = {:.3g}", heaviest.point->id,
                         said(std::abs(heaviest.point->torque.si()), Dimension::torque),
                         heaviest.drives ? "driving at" : "at", said(heaviest.point->speed),
                         std::abs(duty_.gear->ratio), duty_.gear->efficiency),
             "equal power on both sides of a gearbox");
    tell("motor displacement", said(out_.sizes.motor),
         heaviest.drives ? "V_M = 2 pi T_M eta_hm/dp" : "V_M = 2 pi T_M/(dp eta_hm)",
         fmt::format("point {}: 2 pi x {}, {}, eta_hm = {}{}", heaviest.point->id,
                     said(heaviest.torque, Dimension::torque), said(duty_.working_pressure),
                     sizing::motor_torque, reserved(reserve_.motor)),
         definition);
    if (size > largest_machine)
        refuse(fmt::format(
            "point {} asks for {} of one motor, and none is larger than {:.0f} cm3/rev ({}): a "
            "gearbox of higher ratio, a higher pressure, or several motors",
            heaviest.point->id, said(out_.sizes.motor), largest_machine, practice));
}

std::string Sizer::reserved(double reserve) {
    return reserve > 1.0 ? fmt::format(", x {:.3f} as solving showed", reserve) : std::string();
}

void Sizer::size_pump() {
    const double motor = out_.sizes.motor.si();
    const auto largest = [&](const auto& displacement) {
        double pump = 0.0;
        const MotorPoint* of = &points_.front();
        for (const MotorPoint& at : points_)
            if (const double one = pump_for(at, displacement(at)); one > pump) {
                pump = one;
                of = &at;
            }
        return std::pair(pump, of);
    };
    const auto set_to = [&](const MotorPoint& at) {
        return std::min(std::max(least_displacement(at) * reserve_.motor, motor * least_share),
                        motor);
    };
    const auto fixed = largest([&](const MotorPoint&) { return motor; });
    const auto varied = largest(set_to);
    const bool is_fixed = fixed.first <= worth_a_fixed_motor * varied.first;
    const auto& [need, of] = is_fixed ? fixed : varied;
    const double size =
        std::max(ceiled(need * reserve_.pump / cm3_per_rev, 1.0), 8.0) * cm3_per_rev;
    out_.sizes.pump = Displacement(size);
    const double set = is_fixed ? motor : set_to(*of);
    tell("pump displacement", said(out_.sizes.pump), "V_P = V n_M/(n_P eta_v,P eta_v,M)",
         fmt::format("point {}: {} x {}/{}, {} and {}{}", of->point->id,
                     said(set, Dimension::displacement), said(of->speed, Dimension::speed),
                     said(of->point->mover), sizing::pump_volumetric, sizing::motor_volumetric,
                     reserved(reserve_.pump)),
         definition);
    out_.sizes.least_motor = out_.sizes.motor;
    if (is_fixed) {
        tell("stages", "pump only, 0 to 100 %", "fixed motor where V_P grows by no more than 20 %",
             fmt::format("{} in place of {}", said(fixed.first, Dimension::displacement),
                         said(varied.first, Dimension::displacement)),
             practice);
    } else {
        // Beyond a point's set displacement there must be travel left to set it.
        constexpr double left = 0.95;
        double least = motor;
        for (const MotorPoint& at : points_) {
            const double full = size / pump_for(at, 1.0);
            least = std::min(least, std::max(full, motor * least_share));
        }
        least = std::floor(left * least / cm3_per_rev) * cm3_per_rev;
        out_.sizes.least_motor = Displacement(std::min(least, motor));
        tell("stages", "pump 0 to 33 %, motor 33 to 100 %",
             "first the pump to full stroke, then the motor reduced", "", practice);
        tell("least motor displacement", said(out_.sizes.least_motor),
             "V = V_P n_P eta_v,P eta_v,M/n_M at the fastest point, 5 % less",
             fmt::format("not below a third of {}", said(out_.sizes.motor)), practice);
    }
    check_speeds();
}

void Sizer::check_speeds() {
    const auto bears = [](double number, Displacement size) {
        return number / std::cbrt(size.si() / cm3_per_rev) * pi / 30.0;
    };
    double fastest = 0.0;
    std::string_view of;
    for (const MotorPoint& at : points_)
        if (at.speed > fastest) {
            fastest = at.speed;
            of = at.point->id;
        }
    out_.sizes.motor_speed = Speed(ceiled(1.1 * fastest * 30.0 / pi, 10.0) * pi / 30.0);
    out_.sizes.pump_speed = Speed(ceiled(1.1 * fastest_mover_ * 30.0 / pi, 10.0) * pi / 30.0);
    if (out_.sizes.pump.si() / cm3_per_rev > largest_machine)
        refuse(fmt::format(
            "one pump would need {}, and none is larger than {:.0f} cm3/rev ({}): a faster "
            "prime mover, a higher pressure, or several pumps",
            said(out_.sizes.pump), largest_machine, practice));
    if (const double most = bears(pump_speed_number, out_.sizes.pump); fastest_mover_ > most)
        refuse(
            fmt::format("the prime mover turns a pump of {} at {}, which bears about {} (n "
                        "V^(1/3) the same "
                        "at any size; {}): a gearbox before the pump, or a slower prime mover",
                        said(out_.sizes.pump), said(fastest_mover_, Dimension::speed),
                        said(most, Dimension::speed), practice));
    if (const double most = bears(motor_speed_number, out_.sizes.motor); fastest > most)
        refuse(
            fmt::format("point {} turns a motor of {} at {}, which bears about {} (n V^(1/3) "
                        "the same at any "
                        "size; {}): a gearbox of lower ratio",
                        of, said(out_.sizes.motor), said(fastest, Dimension::speed),
                        said(most, Dimension::speed), practice));
    tell(
        "highest speeds",
        fmt::format("pump {}, motor {}", said(out_.sizes.pump_speed), said(out_.sizes.motor_speed)),
        "n = 1.1 x the highest of the duty",
        fmt::format("{}; {}", said(fastest_mover_, Dimension::speed),
                    said(fastest, Dimension::speed)),
        practice);
}

void Sizer::size_pressures() {
    const double working = duty_.working_pressure.si();
    const double relief = ceiled(std::max(1.1 * working, working + 30e5), 5e5);
    out_.sizes.relief = Pressure(relief);
    out_.sizes.relief_full = Pressure(relief + 10e5);
    out_.sizes.rating = Pressure(ceiled(relief + 50e5, 10e5));
    tell("crossport relief", said(out_.sizes.relief), "working pressure + 10 %, at least + 30 bar",
         said(duty_.working_pressure), practice);
    tell("rating of the loop", said(out_.sizes.rating),
         "relief at full flow over charge pressure, next 10 bar",
         fmt::format("{} + 10 bar + charge", said(out_.sizes.relief)), practice);
}

void Sizer::size_prime_mover() {
    const double charge =
        out_.sizes.charge.si() * sizing::charge_relief.si() / sizing::charge_torque;
    const double whole = sizing::pump_volumetric * sizing::pump_torque * sizing::motor_volumetric *
                         sizing::motor_torque;
    double most = 0.0;
    const MotorPoint* of = nullptr;
    for (const MotorPoint& at : points_) {
        if (at.drives) continue;
        const double power = at.torque * at.speed / whole + charge * at.point->mover.si();
        if (power > most) {
            most = power;
            of = &at;
        }
        // Solving tells what losses add; no drive gives more than is put in.
        const double alone = at.torque * at.speed;
        if (alone > duty_.power.si())
            refuse(
                fmt::format("point {} asks for {} of the prime mover before any loss; it gives {}",
                            at.point->id, said(alone, Dimension::power), said(duty_.power)));
    }
    most_power_ = std::max(most, charge * fastest_mover_);
    if (of == nullptr) return;
    tell("power of the prime mover", said(most, Dimension::power),
         "P = T_M n_M/(eta_P eta_M) + V_C p_C n/eta_C",
         fmt::format("point {}: {} x {}/{:.3f} + charge; of {}", of->point->id,
                     said(of->torque, Dimension::torque), said(of->speed, Dimension::speed), whole,
                     said(duty_.power)),
         definition);
}

void Sizer::size_torques() {
    const double working = duty_.working_pressure.si();
    const double charge =
        out_.sizes.charge.si() * (sizing::charge_relief.si() + 5e5) / sizing::charge_torque;
    constexpr double spare = 1.1;
    const auto whole = [](double torque) { return Torque(ceiled(torque, 10.0)); };
    out_.sizes.through_torque = whole(1.5 * charge);
    out_.sizes.pump_torque =
        whole(spare * (out_.sizes.pump.si() * working / sizing::pump_torque + charge));
    out_.sizes.motor_torque = whole(spare * out_.sizes.motor.si() * working);
    tell("torque of shaft ends",
         fmt::format("pump {}, motor {}", said(out_.sizes.pump_torque),
                     said(out_.sizes.motor_torque)),
         "T = 1.1 V dp/(2 pi eta_hm) and the charge pump's", said(duty_.working_pressure),
         definition);
    if (duty_.holding.si() <= 0.0) return;
    constexpr double safety = 1.5;
    const double held = duty_.holding.si() / (duty_.gear ? std::abs(duty_.gear->ratio) : 1.0);
    out_.sizes.brake = whole(safety * held);
    tell("brake", said(*out_.sizes.brake), "T = 1.5 T_load/i, the gearbox's losses not counted",
         fmt::format(
             "{}{}", said(duty_.holding),
             duty_.gear ? fmt::format(", i = {:.4g}", std::abs(duty_.gear->ratio)) : std::string()),
         practice);
}

}  // namespace sizing

Sizing size_drive(const SizingDuty& duty, const Fluid& fluid, const SizingReserve& reserve) {
    return sizing::Sizer(duty, fluid, reserve).size();
}

SetPoint set_point(const SizingDuty& duty, const DriveSizes& sizes, const SizingPoint& point) {
    const double ratio = duty.gear ? std::abs(duty.gear->ratio) : 1.0;
    const double speed = std::abs(point.speed.si()) * ratio;
    const double given = point.mover.si() * sizing::pump_volumetric * sizing::motor_volumetric;
    const double share = sizes.motor.si() * speed / (given * sizes.pump.si());
    if (share <= 1.0) return {share, sizes.motor};
    return {1.0, Displacement(std::max(sizes.least_motor.si(), sizes.pump.si() * given / speed))};
}

}  // namespace loopwright::hydraulics
