// For each machine on a shaft: at each duty point, do its shaft end and its through-drive bear the
// torque that goes through them?
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view own_rating = "max-torque";
constexpr std::string_view through_rating = "through-drive-torque";

/// What a machine takes from its shaft, N.m; negative where it drives.
double taken(const hydraulics::MachinePoint& machine) {
    return machine.mode == hydraulics::MachineMode::motor ? -machine.torque : machine.torque;
}

class Judge {
  public:
    Judge(const AtWork& at, Docket& docket, const Shaft& shaft)
        : at_(at), docket_(docket), joins_(at.circuit().components_of(shaft)) {}

    void run() {
        for (std::size_t i = 0; i < joins_.size(); ++i) {
            const hydraulics::MachinePoint* const machine = at_.machine(joins_[i]);
            if (machine != nullptr && !machine->straight) judge(i, *machine);
        }
    }

  private:
    std::optional<double> rating(Index c, std::string_view name) const {
        return at_.circuit().figure(at_.circuit().components[c], name);
    }
    /// The machines that one drives through itself: those that the shaft names behind it.
    std::vector<Index> driven_through(std::size_t i) const {
        std::vector<Index> behind;
        if (!rating(joins_[i], through_rating)) return behind;
        for (std::size_t j = i + 1; j < joins_.size(); ++j)
            if (at_.machine(joins_[j]) != nullptr) behind.push_back(joins_[j]);
        return behind;
    }

    void judge(std::size_t i, const hydraulics::MachinePoint& machine) {
        const Index c = joins_[i];
        const std::vector<Index> behind = driven_through(i);
        double through = 0.0;
        for (const Index other : behind) through += taken(*at_.machine(other));
        const double all = through + taken(machine);
        std::vector<Index> counted{c};
        counted.insert(counted.end(), behind.begin(), behind.end());
        const auto most = rating(c, own_rating);
        const Held own{.measured = std::abs(all),
                       .required = most.value_or(0.0),
                       .dimension = Dimension::torque};
        const bool has_through = !behind.empty();
        const Held handed_on{.measured = std::abs(through),
                             .required = rating(c, through_rating).value_or(0.0),
                             .dimension = Dimension::torque};
        const bool fails = (most && !own.holds()) || (has_through && !handed_on.holds());
        if (!most && !fails) {
            lacks(at_, docket_, c, own_rating);
            return;
        }
        if (!fails) {
            const auto unknown = unknown_losses(at_, docket_, counted, Loss::torque);
            if (!unknown.empty()) {
                Verdict* const verdict = lacks(at_, docket_, ElementType::component, c, unknown);
                if (verdict != nullptr)
                    verdict->message = "what the machines lose of torque is not known";
                return;
            }
        }
        const auto share = [](const Held& held) { return held.margin() / held.required; };
        const bool by_through = has_through && (!most || share(handed_on) < share(own));
        tell(c, behind, by_through, by_through ? handed_on : own);
    }

    void tell(Index c, const std::vector<Index>& behind, bool by_through, const Held& held) {
        Verdict* const verdict = hold(at_, docket_, ElementType::component, c, held);
        if (verdict == nullptr) return;
        verdict->message =
            docket_.text(by_through ? "the through-drive of " : "the shaft end of ",
                         at_.circuit().components[c].path, by_through ? " hands on " : " takes ",
                         docket_.told(held.measured, Dimension::torque), "; it bears ",
                         docket_.told(held.required, Dimension::torque));
        std::vector<Step> steps{{ElementType::component, c, none, none, "is driven"}};
        for (const Index other : behind)
            steps.push_back({ElementType::component, other, none, none, "is driven through it"});
        verdict->witness = docket_.witness(WitnessShape::set, steps);
    }

    const AtWork& at_;
    Docket& docket_;
    std::span<const Index> joins_;
};

void judge_point(const AtWork& at, Docket& docket) {
    for (const Shaft& shaft : at.circuit().shafts) Judge(at, docket, shaft).run();
}

bool concerns(const FlowGraph& graph, const Structure& structure) {
    return !graph.circuit().shafts.empty() && has_machines(graph, structure);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule shaft_torque{
    .info = {.id = "shaft-torque",
             .family = "Control and stopping",
             .question = "Do each machine's shaft end and through-drive bear their torque at every "
                         "duty point?",
             .why = "A shaft or a splined coupling that breaks takes all pumps behind it out at "
                    "once: charge, controls, the brake's release and the loop's own pressure.",
             .decided = "Torque of the machine at the solved duty point, and of all that it drives "
                        "through itself, against max-torque; theirs alone against "
                        "through-drive-torque. A machine with a through-drive-torque drives "
                        "through itself the machines that the shaft's joins names behind it.",
             .data = "duty, max-torque, through-drive-torque, displacements, efficiencies or "
                     "coefficients",
             .subject = "each pump, motor and unit on a shaft",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Put the machines on two shafts, use a larger shaft end, or drive the "
                       "charge pump apart.",
             .sources = sources},
    .judge_point = judge_point,
    .concerns = concerns};

}  // namespace loopwright
