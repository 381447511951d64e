// For each prime mover: where the load drives, does it take up what comes back to it, and no faster
// than it may turn?
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <loopwright/hydraulics/load_at_rest.h>
#include <loopwright/hydraulics/rated_mover.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool overruns(State state) {
    return state == State::overrun_forward || state == State::overrun_reverse;
}

bool overruns(const hydraulics::OperatingPoint& point) {
    return overruns(point.state) ||
           std::any_of(point.loop_states.begin(), point.loop_states.end(),
                       [](const hydraulics::LoopState& loop) { return overruns(loop.state); });
}

/// What the prime movers of one shaft take up together, and what they lack to say so.
struct Braking {
    std::vector<Index> movers = {};
    double torque = 0.0;
    std::vector<std::string_view> missing = {};  ///< empty: `torque` is known
    /// The most that they take up at any speed, where no torque says it.
    std::optional<double> power = 0.0;
};

Braking braking_of(const Circuit& circuit, Docket& docket, std::span<const Index> components) {
    Braking braking;
    for (const Index c : components) {
        const Component& mover = circuit.components[c];
        if (mover.kind->part != Part::prime_mover) continue;
        braking.movers.push_back(c);
        if (const auto torque = hydraulics::braking_torque(circuit, mover)) {
            braking.torque += torque->si();
            braking.power.reset();
            continue;
        }
        const auto power = circuit.figure(mover, "braking-power");
        braking.missing.push_back(docket.text(mover.path, power ? ".max-speed" : ".braking-power"));
        if (power && braking.power)
            *braking.power += *power;
        else
            braking.power.reset();
    }
    return braking;
}

class Judge {
  public:
    Judge(const AtWork& at, Docket& docket, const hydraulics::ShaftPoint& shaft)
        : at_(at),
          docket_(docket),
          shaft_(shaft),
          braking_(braking_of(at.circuit(), docket, shaft.joins)) {}

    void run() {
        if (shaft_.torque * shaft_.speed < 0.0)
            for (const Index mover : braking_.movers) judge(mover);
        else if (overruns(at_.point) && !at_.is_torn())
            for (const Index mover : braking_.movers) taken_up(mover);
    }

  private:
    std::string_view path(Index c) const { return at_.circuit().components[c].path; }

    void judge(Index mover) {
        // Of a point that no machine works at only one that runs away is told, which may be why.
        if (at_.is_torn() && !gives_way(mover)) return;
        Held held{.measured = std::abs(shaft_.torque),
                  .required = braking_.torque,
                  .dimension = Dimension::torque};
        if (!braking_.missing.empty()) {
            held = {.measured = std::abs(shaft_.power),
                    .required = braking_.power.value_or(0.0),
                    .dimension = Dimension::power};
            if (!braking_.power || held.holds()) {
                leave_open(mover, braking_.missing,
                           "how hard the prime mover brakes what drives it is not known");
                return;
            }
        }
        const auto highest = at_.circuit().figure(at_.circuit().components[mover], "max-speed");
        const Held speed{.measured = std::abs(shaft_.speed),
                         .required = highest.value_or(0.0),
                         .dimension = Dimension::speed};
        if (held.holds() && !highest) {
            const std::string_view missing[] = {docket_.text(path(mover), ".max-speed")};
            leave_open(mover, missing, "how fast the prime mover may be driven is not given");
            return;
        }
        if (highest && speed.margin() / speed.required < held.margin() / held.required)
            held = speed;
        if (at_.is_torn() && held.holds()) return;
        if (!held.holds() && leave_open_for_losses(mover)) return;
        tell(mover, held);
    }

    bool gives_way(Index mover) const {
        return at_.circuit().figure(at_.circuit().components[mover], "droop").value_or(0.0) > 0.0;
    }

    /// What machines lose brakes with the prime mover: where that is not known, it may do.
    bool leave_open_for_losses(Index mover) {
        std::vector<Index> machines;
        for (const auto& machine : at_.point.machines) machines.push_back(machine.component);
        const auto unknown = unknown_losses(at_, docket_, machines, Loss::torque);
        if (unknown.empty()) return false;
        leave_open(mover, unknown, "what the machines lose of torque, and so brake, is not known");
        return true;
    }

    void leave_open(Index mover, std::span<const std::string_view> missing,
                    std::string_view message) {
        Verdict* const verdict = lacks(at_, docket_, ElementType::component, mover, missing);
        if (verdict != nullptr) verdict->message = message;
    }

    void taken_up(Index mover) {
        Verdict* const verdict = docket_.record_at(at_.point.id, ElementType::component, mover,
                                                   Outcome::pass, Level::error, -1.0);
        if (verdict == nullptr) return;
        verdict->message =
            docket_.text("what the load gives back goes into losses and what else the shaft of ",
                         path(mover), " turns: ", path(mover), " still drives, with ",
                         docket_.told(shaft_.power, Dimension::power));
        verdict->witness = witness(mover, "drives");
    }

    void tell(Index mover, const Held& held) {
        Verdict* const verdict = hold(at_, docket_, ElementType::component, mover, held);
        if (verdict == nullptr) return;
        const auto highest = at_.circuit().figure(at_.circuit().components[mover], "max-speed");
        verdict->message = docket_.text(
            "the load drives ", path(mover), " with ",
            docket_.told(std::abs(shaft_.torque), Dimension::torque), ", ",
            docket_.told(std::abs(shaft_.power), Dimension::power), " at ",
            docket_.told(std::abs(shaft_.speed), Dimension::speed), "; it takes up ",
            braking_.power ? docket_.told(*braking_.power, Dimension::power)
                           : docket_.told(braking_.torque, Dimension::torque),
            " at most", braking_.movers.size() > 1 ? " together with those beside it" : "",
            highest ? docket_.text(" and bears ", docket_.told(*highest, Dimension::speed)) : "");
        verdict->witness = witness(mover, "brakes");
    }

    Witness witness(Index mover, std::string_view does) {
        std::vector<Step> steps;
        for (const Index c : shaft_.joins)
            steps.push_back(
                {ElementType::component, c, none, none, c == mover ? does : "is on its shaft"});
        return docket_.witness(WitnessShape::set, steps);
    }

    const AtWork& at_;
    Docket& docket_;
    const hydraulics::ShaftPoint& shaft_;
    Braking braking_;
};

void judge_point(const AtWork& at, Docket& docket) {
    for (const hydraulics::ShaftPoint& shaft : at.point.shafts)
        if (shaft.driven) Judge(at, docket, shaft).run();
}

/// Whether a load can drive its motor, or does at some point.
bool concerns(const FlowGraph& graph, const Structure& /*structure*/) {
    const Circuit& circuit = graph.circuit();
    if (!has_part(graph, Part::prime_mover)) return false;
    for (const Component& one : circuit.components)
        if (one.kind->part == Part::load && hydraulics::can_drive(circuit, one)) return true;
    for (Index point = 0; point < circuit.points.size(); ++point)
        if (overruns(hydraulics::PointFigures(circuit, point).state())) return true;
    return false;
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K11 and K22)",
     .place = "5.4.7, 5.4.1"}};

}  // namespace

extern constinit const Rule engine_braking{
    .info = {.id = "engine-braking",
             .family = "Control and stopping",
             .question = "Where the load drives, does the prime mover take up what comes back to "
                         "it without turning too fast?",
             .why = "A closed loop hands a load that drives on to the prime mover. One that cannot "
                    "hold it races until its valves or its rotor fail, and the machine runs away "
                    "downhill with the driver's foot off the pedal.",
             .decided = "At duty points at which a shaft drives its prime mover: the torque that "
                        "comes back, when all that machines, valves and other drives lose or need "
                        "is taken off, against braking-torque, or braking-power over max-speed; "
                        "and the speed against max-speed. Prime movers on one shaft count "
                        "together. Where nothing comes back, the losses brake.",
             .data = "duty, braking-torque, braking-power, max-speed, droop, efficiencies or "
                     "coefficients",
             .subject = "each prime mover that is joined to a shaft, where a load drives",
             .states = "at each duty point that overruns",
             .level = Level::error,
             .remedy = "Go downhill slower or in a lower gear, let a service brake or a relief "
                       "valve with a cooler take up the rest, or fit a prime mover that brakes "
                       "harder.",
             .sources = sources},
    .judge_point = judge_point,
    .concerns = concerns,
    .where_torn = true};

}  // namespace loopwright
