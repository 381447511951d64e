// For each prime mover: at each duty point, can it give the power and the torque that are asked of
// it?
#include <algorithm>
#include <optional>
#include <vector>

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

Capacity capacity_of(const Circuit& circuit, Docket& docket, std::span<const Index> components) {
    Capacity capacity;
    for (const Index c : components) {
        const Component& mover = circuit.components[c];
        if (mover.kind->part != Part::prime_mover) continue;
        capacity.movers.push_back(c);
        const auto power = circuit.figure(mover, "power");
        const auto speed = circuit.figure(mover, "speed");
        auto torque = circuit.figure(mover, "max-torque");
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

class Judge {
  public:
    Judge(const AtWork& at, Docket& docket, const hydraulics::ShaftPoint& shaft)
        : at_(at),
          docket_(docket),
          shaft_(shaft),
          capacity_(capacity_of(at.circuit(), docket, shaft.joins)) {}

    void run() {
        for (const Index mover : capacity_.movers) judge(mover);
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

    void leave_open(Index mover, std::span<const std::string_view> missing,
                    std::string_view message) {
        Verdict* const verdict = lacks(at_, docket_, ElementType::component, mover, missing);
        if (verdict != nullptr) verdict->message = message;
    }

    void tell(Index mover, bool by_torque, const Held& held) {
        Verdict* const verdict = hold(at_, docket_, ElementType::component, mover, held);
        if (verdict == nullptr) return;
        const Dimension dimension = held.dimension;
        verdict->message =
            docket_.text("the duty asks ", docket_.told(held.measured, dimension), " of ",
                         at_.circuit().components[mover].path, " at ",
                         docket_.told(shaft_.speed, Dimension::speed), "; it gives ",
                         docket_.told(held.required, dimension),
                         !by_torque               ? ""
                         : capacity_.torque_given ? " at most"
                                                  : " at rated power and speed",
                         capacity_.movers.size() > 1 ? " together with those beside it" : "");
        std::vector<Step> steps;
        for (const Index c : shaft_.joins)
            steps.push_back(
                {ElementType::component, c, none, none, c == mover ? "drives" : "is on its shaft"});
        verdict->witness = docket_.witness(WitnessShape::set, steps);
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
    .info = {.id = "torque-limit",
             .family = "Control and stopping",
             .question = "Can each prime mover give the power and torque that each duty point "
                         "asks for?",
             .why = "An engine that is asked for too much stalls: charge pressure and controls go "
                    "with it, a brake comes on at full speed, or the load is no longer held.",
             .decided = "Power and torque on its shaft at the solved duty point against its power "
                        "and max-torque. Where max-torque is not given, the torque at rated power "
                        "and speed is surely there; more is undecided. Prime movers on one shaft "
                        "count together.",
             .data = "duty, power, speed, max-torque, displacements, efficiencies or coefficients",
             .subject = "each prime mover that is joined to a shaft",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Fit a stronger prime mover, limit pump travel or pressure, or use a power "
                       "limiter.",
             .sources = sources},
    .judge_point = judge_point,
    .concerns = concerns};

}  // namespace loopwright
