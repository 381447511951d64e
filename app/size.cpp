// Sizes a drive for a duty: closed forms first, then the circuit as it would be written, solved and
// checked, until all points are met or it is known why not.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/input.h>
#include <loopwright/app/new_file.h>
#include <loopwright/app/sized_circuit.h>
#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/travel_fit.h>
#include <loopwright/render/writers/sizing_report.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright::app {

using namespace hydraulics;

namespace {

struct Options {
    std::string file = {};
    std::string output = {};
    std::string colour = "auto";
    std::vector<std::string> assemblies = {};
};

/// A drive as far as it came.
struct Sized {
    Sizing sizing = {};
    std::vector<MetPoint> points = {};
    std::vector<std::string> unmet = {};
    std::string circuit = {};
};

class DriveSizer {
  public:
    DriveSizer(const Circuit& asked, const SizingTask& task) : asked_(asked), task_(task) {}

    Sized size() {
        // Each round enlarges what was too small; what does not come right in these never does.
        constexpr int rounds = 25;
        Sized sized;
        for (int round = 0; round < rounds; ++round) {
            sized = {.sizing = size_drive(task_.duty, *task_.fluid, reserve_)};
            sized.unmet = sized.sizing.unmet;
            if (!sized.unmet.empty()) return sized;
            if (!meet_points(sized)) {
                if (!sized.unmet.empty()) return sized;
                continue;
            }
            if (check_clean(sized) || !sized.unmet.empty()) return sized;
        }
        sized.unmet.emplace_back("the sizes grow from round to round and the duty is not met");
        return sized;
    }

  private:
    static ReadResult read(const std::string& text) {
        ReadResult read = read_circuit_text(text, "sized");
        if (!read.circuit)
            throw std::logic_error("a sized circuit cannot be read: " +
                                   read.diagnostics.front().message);
        return read;
    }
    static Index component(const Circuit& circuit, std::string_view path) {
        for (Index c = 0; c < circuit.components.size(); ++c)
            if (circuit.components[c].path == path) return c;
        return none;
    }

    std::vector<double> first_travels(const DriveSizes& sizes) const {
        std::vector<double> travels;
        for (const SizingPoint& point : task_.duty.points) {
            if (point.speed.si() == 0.0) {
                travels.push_back(0.0);
                continue;
            }
            const SetPoint set = set_point(task_.duty, sizes, point);
            double travel = set.pump_share;
            if (sizes.is_variable()) {
                constexpr double first = 0.33;
                travel *= first;
                if (set.pump_share >= 1.0)
                    travel += (1.0 - first) * (sizes.motor - set.motor).si() /
                              (sizes.motor - sizes.least_motor).si();
            }
            travels.push_back(std::copysign(std::clamp(travel, 1e-3, 1.0), point.speed.si()));
        }
        return travels;
    }

    /// Why the prime mover does not bear a point; nothing where it does. No enlarging helps.
    std::string overloads(const SizingPoint& point, double power, double torque) const {
        const SizingDuty& duty = task_.duty;
        const double bears =
            duty.max_torque.value_or(Torque(duty.power.si() / duty.rated_speed.si())).si();
        if (power <= duty.power.si() && torque <= bears) return {};
        return fmt::format("point {} asks for {} of the prime mover at {}, {}; it gives {} and {}",
                           point.id, format_quantity(torque, Dimension::torque),
                           format_quantity(point.mover.si(), Dimension::speed),
                           format_quantity(power, Dimension::power),
                           format_quantity(bears, Dimension::torque),
                           format_quantity(duty.power.si(), Dimension::power));
    }

    /// False where something was enlarged, or something cannot be met.
    bool meet_points(Sized& sized) {
        const DriveSizes& sizes = sized.sizing.sizes;
        std::vector<double> travels = first_travels(sizes);
        const ReadResult first = read(sized_circuit(asked_, task_, sizes, travels));
        const Index load = component(*first.circuit, "D1");
        const Index motor = component(*first.circuit, "M1");
        const Index mover = component(*first.circuit, "E1");
        TravelFitter fitter(*first.circuit);
        const double working = task_.duty.working_pressure.si();
        SizingReserve next = reserve_;
        bool good = true;
        for (Index i = 0; i < task_.duty.points.size(); ++i) {
            const SizingPoint& point = task_.duty.points[i];
            const TravelFit fit = fitter.fit(i, load, point.speed.si(), std::abs(travels[i]));
            if (!fit.problem.empty()) {
                sized.unmet.push_back(fmt::format("point {}: {}", point.id, fit.problem));
                return false;
            }
            double torque = 0.0;
            MetPoint met{.id = point.id,
                         .asked = point.speed.si(),
                         .speed = fit.speed,
                         .travel = fit.travel};
            for (const MachinePoint& one : fit.point.machines)
                if (one.component == motor)
                    met.pressure = std::abs(one.pressure_a - one.pressure_b);
            for (const OnShaftPoint& one : fit.point.on_shafts)
                if (one.component == mover) {
                    met.power = one.power;
                    torque = one.torque;
                }
            travels[i] = fit.travel;
            sized.points.push_back(met);
            if (const std::string why = overloads(point, met.power, torque); !why.empty())
                sized.unmet.push_back(why);
            if (point.speed.si() == 0.0) continue;
            constexpr double rounding = 1e-3;
            constexpr double more = 1.01;
            constexpr double most = 1.5;
            if (met.pressure > working * (1.0 + rounding)) {
                next.motor = std::max(
                    next.motor, reserve_.motor * std::min(most, more * met.pressure / working));
                good = false;
            } else if (!fit.met) {
                const double wanting = std::abs(point.speed.si()) / std::max(fit.speed, 1e-9);
                next.pump = std::max(next.pump, reserve_.pump * std::min(most, more * wanting));
                good = false;
            }
        }
        if (!sized.unmet.empty()) return false;
        reserve_ = next;
        if (good) sized.circuit = sized_circuit(asked_, task_, sizes, travels);
        return good;
    }

    static bool is_one_of(std::string_view id, std::initializer_list<std::string_view> ids) {
        return std::find(ids.begin(), ids.end(), id) != ids.end();
    }

    /// Whether the circuit stands all rules; else what could help is enlarged, or it is told.
    bool check_clean(Sized& sized) {
        const ReadResult whole = read(sized.circuit);
        const CheckResult result = check(*whole.circuit, rules());
        bool clean = true;
        bool enlarged = false;
        std::vector<std::string> told;
        for (const Verdict& verdict : result.verdicts) {
            if (verdict.outcome != Outcome::fail || verdict.level < Level::warning) continue;
            clean = false;
            const std::string_view id = verdict.rule->id;
            constexpr double more = 1.2;
            constexpr double most = 3.0;
            const auto enlarge = [&](double& reserve) {
                if (reserve * more > most) return false;
                if (!enlarged) reserve *= more;
                return enlarged = true;
            };
            const bool helped =
                is_one_of(id, {"charge-flow", "charge-pressure", "low-side-pressure"})
                    ? enlarge(reserve_.charge)
                : is_one_of(id, {"cooling-capacity", "oil-temperature", "loop-temperature",
                                 "viscosity-window"})
                    ? enlarge(reserve_.cooler)
                    : false;
            if (!helped)
                told.push_back(fmt::format("{}{} [{}]",
                                           verdict.point.empty()
                                               ? std::string()
                                               : fmt::format("point {}: ", verdict.point),
                                           verdict.message, id));
        }
        if (!clean && (!enlarged || !told.empty())) {
            sized.unmet = std::move(told);
            sized.circuit.clear();
        }
        return clean;
    }

    const Circuit& asked_;
    const SizingTask& task_;
    SizingReserve reserve_ = {};
};

ExitStatus size_file(const Options& options) {
    const ReadResult read = read_input(options.file, options.assemblies);
    print_diagnostics(read.diagnostics, *read.sources, options.colour);
    if (!read.circuit) return ExitStatus::unusable;
    const SizingTask task = sizing_task(*read.circuit);
    if (!task.wrong.empty()) {
        for (const std::string& one : task.wrong)
            complain(fmt::format("{} asks for no drive that can be sized: {}", options.file, one));
        return ExitStatus::unusable;
    }
    const Sized sized = DriveSizer(*read.circuit, task).size();
    const std::string text = sizing_text(*read.circuit, sized.sizing, sized.points, sized.unmet);
    if (!sized.unmet.empty()) return worse(ExitStatus::findings, print(text));
    if (options.output.empty()) return print(text);
    const ExitStatus written = write_new_file(options.output, sized.circuit);
    return written == ExitStatus::good ? print(text) : written;
}

}  // namespace

std::function<ExitStatus()> declare_size(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options
        .add_option("FILE", given->file,
                    "Circuit with prime mover, load, duty and a pump's working-pressure; - for "
                    "standard input")
        ->required();
    options.add_option("-o,--output", given->output, "A new file for the circuit so sized")
        ->check(is_named);
    options.add_option("--color", given->colour, "auto, always or never")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    add_assemblies_option(options, given->assemblies);
    return [given] { return size_file(*given); };
}

}  // namespace loopwright::app
