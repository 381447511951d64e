#include <loopwright/hydraulics/sizing_duty.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/hydraulics/load_at_rest.h>
#include <loopwright/hydraulics/loads.h>
#include <loopwright/hydraulics/point_worker.h>

namespace loopwright::hydraulics {

namespace {

class TaskReader {
  public:
    explicit TaskReader(const Circuit& circuit) : circuit_(circuit) {}

    SizingTask read() {
        find_parts();
        if (!task_.wrong.empty()) return std::move(task_);
        read_parts();
        Answer<Fluid> fluid = fluid_of(circuit_);
        if (fluid)
            task_.fluid = *fluid;
        else
            wrong(fmt::format("the oil is not known: {}", fluid.reason()));
        bool moves = false;
        for (Index i = 0; i < circuit_.points.size(); ++i) moves = read_point(i) || moves;
        if (!moves) wrong("no duty point in which the load moves");
        read_holding();
        return std::move(task_);
    }

  private:
    void wrong(std::string what) { task_.wrong.push_back(std::move(what)); }

    /// The only component of a part; `none` with a complaint where there is none or are several.
    Index only(Part part, std::string_view what, bool needed) {
        Index found = none;
        int count = 0;
        for (Index c = 0; c < circuit_.components.size(); ++c) {
            if (circuit_.components[c].kind->part != part) continue;
            found = c;
            ++count;
        }
        if (count > 1 || (needed && count == 0))
            wrong(fmt::format("it has {} {}s: a drive is sized for one",
                              count == 0 ? "no" : fmt::format("{}", count), what));
        return count == 1 ? found : none;
    }

    void find_parts() {
        task_.mover = only(Part::prime_mover, "prime mover", true);
        task_.load = only(Part::load, "load", true);
        task_.pump = only(Part::pump, "pump", true);
        task_.gearbox = only(Part::gearbox, "gearbox", false);
        for (const Component& one : circuit_.components) {
            const Part part = one.kind->part;
            if (part != Part::prime_mover && part != Part::load && part != Part::pump &&
                part != Part::gearbox)
                wrong(fmt::format(
                    "{} is there already: a drive is sized for a prime mover, a load, a gearbox or "
                    "none, and a pump with a working-pressure",
                    one.path));
        }
        if (!circuit_.tables.empty() || !circuit_.tolerances.empty())
            wrong("it has tables or tolerances, which are not taken over");
        if (!circuit_.lines.empty())
            wrong(fmt::format("line {} is there already: the drive's lines are written with it",
                              circuit_.lines.front().path));
    }

    double need(Index component, std::string_view name) {
        const Component& one = circuit_.components[component];
        if (const auto figure = circuit_.figure(one, name)) return *figure;
        wrong(fmt::format("not given: {}.{}", one.path, name));
        return 1.0;
    }

    void read_parts() {
        SizingDuty& duty = task_.duty;
        duty.power = Power(need(task_.mover, "power"));
        duty.rated_speed = Speed(need(task_.mover, "speed"));
        if (const auto torque = circuit_.figure(circuit_.components[task_.mover], "max-torque"))
            duty.max_torque = Torque(*torque);
        duty.working_pressure = Pressure(need(task_.pump, "working-pressure"));
        if (duty.working_pressure.si() <= 0.0) wrong("the pump's working-pressure is nothing");
        if (circuit_.figure(circuit_.components[task_.pump], "displacement"))
            wrong(fmt::format("{}.displacement is given, which is to be sized",
                              circuit_.components[task_.pump].path));
        if (task_.gearbox != none) read_gear();
        if (circuit_.duty)
            if (const AttributeValue* const cold = circuit_.figure_of(*circuit_.duty, "cold-start"))
                duty.cold_start = Temperature(cold->si);
    }

    void read_gear() {
        const Component& gearbox = circuit_.components[task_.gearbox];
        const Component& load = circuit_.components[task_.load];
        double ratio = need(task_.gearbox, "ratio");
        const bool at_out = load.shaft != none && gearbox.far_shaft == load.shaft;
        if (load.shaft == none || (!at_out && gearbox.shaft != load.shaft))
            return wrong(
                fmt::format("{} and {} are on no shaft together", gearbox.path, load.path));
        task_.load_at_out = at_out;
        if (!at_out) ratio = 1.0 / ratio;
        task_.duty.gear = Gear{.ratio = ratio,
                               .efficiency = circuit_.figure(gearbox, "efficiency").value_or(1.0)};
    }

    /// How fast the load is to be, rad/s; nothing where the point does not say.
    std::optional<double> load_speed(const PointFigures& point) {
        if (const auto velocity = point.set_figure(task_.load, "velocity"))
            return *velocity / need(task_.load, "wheel-radius");
        return point.set_figure(task_.load, "speed");
    }

    /// In the sense of the motion.
    std::optional<double> torque(const PointFigures& point, double sense) {
        const Component& load = circuit_.components[task_.load];
        const std::string_view pulls = circuit_.is_yes(load, "overrunning")
                                           ? circuit_.choice(load, "overrunning-sense")
                                           : std::string_view();
        const double weight = pulls == "forward" ? -sense : pulls == "reverse" ? sense : 0.0;
        const auto mass = point.figure(task_.load, "mass");
        const auto radius = circuit_.figure(load, "wheel-radius");
        if (const auto given = point.figure(task_.load, "torque"))
            return weight == 0.0 ? *given : *given * weight;
        if (circuit_.is_yes(load, "vehicle") && mass && radius) {
            const Vehicle vehicle{
                .mass = Mass(*mass),
                .wheel_radius = Length(*radius),
                .grade = Grade(point.set_figure(task_.load, "grade").value_or(0.0)),
                .rolling_resistance = need(task_.load, "rolling-resistance")};
            return (grade_resistance(vehicle) + rolling_resistance(vehicle)).si() * *radius;
        }
        if (weight != 0.0 && mass && radius)
            return weight *
                   load_torque(Hoist{.mass = Mass(*mass), .drum_radius = Length(*radius)}).si();
        return std::nullopt;
    }

    bool read_point(Index i) {
        const PointFigures point(circuit_, i);
        const auto speed = load_speed(point);
        if (!speed)
            wrong(
                fmt::format("point {} does not say how fast {} is to be: velocity, or speed of "
                            "it in a set",
                            point.id(), circuit_.components[task_.load].path));
        const double sense = speed.value_or(0.0) < 0.0 ? -1.0 : 1.0;
        const auto asked = torque(point, sense);
        if (!asked)
            wrong(
                fmt::format("point {} does not say what {} asks for: torque, or mass and "
                            "wheel-radius",
                            point.id(), circuit_.components[task_.load].path));
        const double mover =
            point.set_figure(task_.mover, "speed").value_or(task_.duty.rated_speed.si());
        if (mover <= 0.0) wrong(fmt::format("the prime mover stands at point {}", point.id()));
        task_.duty.points.push_back({.id = point.id(),
                                     .torque = Torque(asked.value_or(0.0)),
                                     .speed = Speed(speed.value_or(0.0)),
                                     .mover = Speed(mover),
                                     .oil = Temperature(point.figure("oil").value_or(hot))});
        return speed && *speed != 0.0;
    }

    /// What a brake has to hold where the load can drive.
    void read_holding() {
        if (!can_drive(circuit_, circuit_.components[task_.load])) return;
        double most = 0.0;
        const auto hold = [&](const PointFigures& point) {
            most = std::max(most, load_at_rest(point, task_.load).torque.value_or(0.0));
        };
        hold(PointFigures(circuit_, none));
        for (Index i = 0; i < circuit_.points.size(); ++i) hold(PointFigures(circuit_, i));
        // A vehicle without a grade anywhere still has to stand.
        const auto mass = circuit_.figure(circuit_.components[task_.load], "mass");
        const auto radius = circuit_.figure(circuit_.components[task_.load], "wheel-radius");
        constexpr double usual_grade = 0.15;
        if (most == 0.0 && mass && radius)
            most = grade_resistance({.mass = Mass(*mass),
                                     .wheel_radius = Length(*radius),
                                     .grade = Grade(usual_grade),
                                     .rolling_resistance = 0.0})
                       .si() *
                   *radius;
        task_.duty.holding = Torque(most);
    }

    /// Where the heat balance is to find it: as hot as oil may be all the time.
    static constexpr double hot = 333.15;

    const Circuit& circuit_;
    SizingTask task_ = {};
};

}  // namespace

SizingTask sizing_task(const Circuit& circuit) { return TaskReader(circuit).read(); }

}  // namespace loopwright::hydraulics
