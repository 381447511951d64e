// For each prime mover: at each duty point, can it give the power and the torque that are asked of
// it? And what corner power its drives have beside it.
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <loopwright/hydraulics/rated_mover.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// What the prime movers of one shaft can give together.
struct Capacity {
    std::optional<double> power = 0.0;
    /// The highest torque given, else that at rated power and speed.
    std::optional<double> torque = 0.0;
    bool torque_given = true;
    std::vector<Index> movers = {};
    std::vector<std::string_view> missing = {};
};

void add(std::optional<double>& sum, std::optional<double> more) {
    if (sum && more)
        *sum += *more;
    else
        sum.reset();
}

/// `shaft_speed`: of their shaft, rad/s.
Capacity capacity_of(const Circuit& circuit, Docket& docket, std::span<const Index> components,
                     double shaft_speed) {
    Capacity capacity;
    for (const Index c : components) {
        const Component& mover = circuit.components[c];
        if (mover.kind->part != Part::prime_mover) continue;
        capacity.movers.push_back(c);
        auto power = circuit.figure(mover, "power");
        const auto speed = circuit.figure(mover, "speed");
        auto torque = circuit.figure(mover, "max-torque");
        if (const auto curve = hydraulics::measured_full_load(circuit, c)) {
            const auto [least, most] = curve->ends(0);
            const double turns = std::clamp(std::abs(shaft_speed), least, most);
            torque = curve->at({&turns, 1}).value;
            power = *torque * std::abs(shaft_speed);
        }
        if (!torque) {
            capacity.torque_given = false;
            if (power && speed) torque = *power / *speed;
        }
        add(capacity.power, power);
        add(capacity.torque, torque);
        if (!power) capacity.missing.push_back(docket.text(mover.path, ".power"));
        if (!power && !torque) capacity.missing.push_back(docket.text(mover.path, ".max-torque"));
    }
    return capacity;
}

/// Of what the pumps that a prime mover turns drive: for each actuator its highest torque over the
/// duty times its highest speed, summed.
double corner_power(const AtWork& at, Index mover) {
    const Drives& drives = at.graph.drives();
    const auto is_turned = [&](Index pump) { return drives.of(pump) == drives.of(mover); };
    std::vector<Index> driven;
    const auto add_driven = [&](const auto& part) {
        if (std::none_of(part.pumps.begin(), part.pumps.end(), is_turned)) return;
        for (const Index actuator : part.actuators)
            if (std::find(driven.begin(), driven.end(), actuator) == driven.end())
                driven.push_back(actuator);
    };
    for (const LoopInfo& loop : at.structure.loops) add_driven(loop);
    for (const OpenPart& part : at.structure.open_parts) add_driven(part);
    double sum = 0.0;
    for (const Index actuator : driven) {
        double torque = 0.0;
        double speed = 0.0;
        for (const hydraulics::OperatingPoint& point : at.duty) {
            if (!point.solved || !point.problem.empty()) continue;
            for (const hydraulics::MachinePoint& machine : point.machines) {
                if (machine.component != actuator) continue;
                torque = std::max(torque, std::abs(machine.torque));
                speed = std::max(speed, std::abs(machine.speed));
            }
        }
        sum += torque * speed;
    }
    return sum;
}

class Judge {
  public:
    Judge(const AtWork& at, Docket& docket, const hydraulics::ShaftPoint& shaft)
        : at_(at),
          docket_(docket),
          shaft_(shaft),
          capacity_(capacity_of(at.circuit(), docket, shaft.joins, shaft.speed)) {}

    void run() {
        for (const Index mover : capacity_.movers)
            if (!at_.is_torn())
                judge(mover);
            else
                judge_stall(mover);
    }

  private:
    Held held(bool by_torque) const {
        return by_torque ? Held{.measured = shaft_.torque,
                                .required = *capacity_.torque,
                                .dimension = Dimension::torque}
                         : Held{.measured = shaft_.power,
                                .required = *capacity_.power,
                                .dimension = Dimension::power};
    }

    void judge(Index mover) {
        if (!capacity_.power) {
            leave_open(mover, capacity_.missing, "the power of a prime mover is not given");
            return;
        }
        const Held power = held(false);
        const Held torque = held(true);
        if (power.holds() && !torque.holds() && !capacity_.torque_given) {
            // Below its rated speed an engine may give more than at rated power.
            const std::string_view missing[] = {
                docket_.text(at_.circuit().components[mover].path, ".max-torque")};
            leave_open(mover, missing, "more torque is asked for than at rated power and speed");
            return;
        }
        if (power.holds() && torque.holds()) {
            std::vector<Index> machines;
            for (const auto& machine : at_.point.machines) machines.push_back(machine.component);
            const auto unknown = unknown_losses(at_, docket_, machines, Loss::torque);
            if (!unknown.empty()) {
                leave_open(mover, unknown, "what the machines lose of torque is not known");
                return;
            }
        }
        const bool by_torque = torque.margin() / torque.required < power.margin() / power.required;
        tell(mover, by_torque, by_torque ? torque : power);
    }

    /// One that gives all it can and is slowed down all the same.
    void judge_stall(Index mover) {
        const Component& component = at_.circuit().components[mover];
        const auto rated = hydraulics::rated_mover(at_.circuit(), mover);
        if (!rated || rated->droop <= 0.0) return;
        const double slowest = hydraulics::stalling_speed(*rated).si();
        const Held speed{.against = Held::Against::least,
                         .measured = std::abs(shaft_.speed),
                         .required = slowest,
                         .dimension = Dimension::speed};
        if (speed.holds()) return;
        Verdict* const verdict = hold(at_, docket_, ElementType::component, mover, speed);
        if (verdict == nullptr) return;
        verdict->message =
            docket_.text(component.path, " stalls: what the duty asks for slows it down below ",
                         docket_.told(slowest, Dimension::speed), ", the lowest speed it pulls at");
        verdict->witness = witness(mover);
    }

    void leave_open(Index mover, std::span<const std::string_view> missing,
                    std::string_view message) {
        Verdict* const verdict = lacks(at_, docket_, ElementType::component, mover, missing);
        if (verdict != nullptr) verdict->message = message;
    }

    void tell(Index mover, bool by_torque, const Held& held) {
        Verdict* const verdict = hold(at_, docket_, ElementType::component, mover, held);
        if (verdict == nullptr) return;
        const Dimension dimension = held.dimension;
        verdict->message = docket_.text(
            "the duty asks ", docket_.told(held.measured, dimension), " of ",
            at_.circuit().components[mover].path, " at ",
            docket_.told(shaft_.speed, Dimension::speed), "; it gives ",
            docket_.told(held.required, dimension),
            !by_torque               ? ""
            : capacity_.torque_given ? " at most"
                                     : " at rated power and speed",
            capacity_.movers.size() > 1 ? " together with those beside it" : "", corner(mover));
        verdict->witness = witness(mover);
    }

    /// Nothing where its pumps drive nothing, or its power is not given.
    std::string_view corner(Index mover) const {
        const double corner = corner_power(at_, mover);
        if (corner <= 0.0 || !capacity_.power || *capacity_.power <= 0.0) return {};
        return docket_.text("; the corner power of what it drives is ",
                            docket_.told(corner, Dimension::power), ", ",
                            docket_.told(corner / *capacity_.power, Dimension::ratio),
                            " times its own power");
    }

    Witness witness(Index mover) const {
        std::vector<Step> steps;
        for (const Index c : shaft_.joins)
            steps.push_back(
                {ElementType::component, c, none, none, c == mover ? "drives" : "is on its shaft"});
        return docket_.witness(WitnessShape::set, steps);
    }

    const AtWork& at_;
    Docket& docket_;
    const hydraulics::ShaftPoint& shaft_;
    Capacity capacity_;
};

void judge_point(const AtWork& at, Docket& docket) {
    for (const hydraulics::ShaftPoint& shaft : at.point.shafts)
        if (shaft.driven) Judge(at, docket, shaft).run();
}

bool concerns(const FlowGraph& graph, const Structure& /*structure*/) {
    return has_part(graph, Part::prime_mover);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule torque_limit{
    .info =
        {.id = "torque-limit",
         .family = "Control and stopping",
         .question = "Can each prime mover give the power and torque that each duty point "
                     "asks for?",
         .why = "An engine that is asked for too much stalls: charge pressure and controls go "
                "with it, a brake comes on at full speed, or the load is no longer held.",
         .decided = "Power and torque on its shaft at the solved duty point against its power "
                    "and max-torque. Where max-torque is not given, the torque at rated power "
                    "and speed is surely there; more is undecided. Prime movers on one shaft "
                    "count together. One with droop may not be slowed down below the speed "
                    "at which it gives its highest torque. Told beside it is the corner "
                    "power of what it drives: the highest torque of each actuator over the "
                    "duty times its highest speed. What that is over the prime mover's own "
                    "power, the drive has to convert.",
         .data =
             "duty, power, speed, max-torque, droop, displacements, efficiencies or coefficients",
         .subject = "each prime mover that is joined to a shaft",
         .states = "at each duty point",
         .level = Level::error,
         .remedy = "Fit a stronger prime mover, limit pump travel or pressure, or use a power "
                   "limiter.",
         .sources = sources},
    .judge_point = judge_point,
    .concerns = concerns,
    .where_torn = true};

}  // namespace loopwright
