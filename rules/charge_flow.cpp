// For each loop that a pump charges: at each duty point, is charge oil left over when leakage,
// controls and all other consumers have theirs?
#include <algorithm>
#include <string>
#include <vector>

#include <loopwright/base/unit_text.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/charged_loops.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view reserve = "reserve";
/// Over what is given: less is no valve that holds a pressure.
constexpr double nothing_left = 1e-6;

/// The flows of a charge line, m3/s.
struct ChargeFlows {
    double given = 0.0;
    double left = 0.0;  ///< over the settings of reliefs
    std::string table = {};

    double used() const { return given - left; }
};

ChargeFlows flows_of(const hydraulics::ChargeBalance& balance) {
    ChargeFlows flows{.given = charge_given(balance)};
    const auto told = [](double flow) { return format_quantity(flow, Dimension::flow); };
    for (const hydraulics::ChargeUse& use : balance.uses) {
        if (use.flow > 0.0 && use.spilt) flows.left += use.flow;
        if (use.flow > 0.0)
            flows.table += (flows.table.empty() ? "" : ", ") + std::string(use.what) + " " +
                           use.where + " " + told(use.flow);
    }
    return flows;
}

void judge_loop(const AtWork& at, Docket& docket, const ChargedLoop& charged) {
    const ChargeFlows flows = flows_of(*charged.balance);
    const bool nothing = flows.left <= nothing_left * flows.given;
    const Index subject = charged.loop->pumps.front();
    const Held held{.against = Held::Against::least,
                    .measured = nothing ? 0.0 : flows.left,
                    .required = docket.threshold(reserve) * flows.used(),
                    .dimension = Dimension::flow};
    const auto missing = unknown_leakage(at, docket, charged);
    if (!nothing && held.holds() && !missing.empty()) {
        if (Verdict* const verdict = lacks(at, docket, ElementType::loop, subject, missing))
            verdict->message =
                "what the charge pump and the machines of the loop leak is not known";
        return;
    }
    Verdict* const verdict =
        hold(at, docket, ElementType::loop, subject, held, nothing ? Level::error : Level::warning);
    if (verdict == nullptr) return;
    const std::string_view pump = at.circuit().components[charged.balance->source].path;
    const auto told = [&](double flow) { return docket.told(flow, Dimension::flow); };
    const bool idle = flows.table.empty();  // nothing comes out of it
    verdict->message =
        idle      ? docket.text(pump, " gives no oil, so that no relief holds the charge pressure")
        : nothing ? docket.text("all ", told(flows.given), " that ", pump, " gives are used up (",
                                flows.table, "), so that no relief holds the charge pressure")
                  : docket.text("of ", told(flows.given), " that ", pump, " gives, ",
                                told(flows.left), " are left over (", flows.table, ")");
    verdict->witness = docket.witness(WitnessShape::set, steps_of(charged));
}

void judge_point(const AtWork& at, Docket& docket) {
    for (const ChargedLoop& charged : known_charged_loops(at)) judge_loop(at, docket, charged);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented", "charge-supply", "lost-loop"};
constexpr Threshold thresholds[] = {
    {.name = reserve,
     .dimension = Dimension::ratio,
     .value = 0.10,
     .most = 10.0,
     .doc = "least flow left over, over what leakage, controls and other consumers use",
     .example = "10 %",
     .source = sources[0]}};

}  // namespace

extern constinit const Rule charge_flow{
    .info = {.id = "charge-flow",
             .family = "Charge supply",
             .question = "Does the charge pump give more than leakage, controls and other "
                         "consumers use at every duty point?",
             .why = "Where the charge oil is used up, the low side runs empty: the machines "
                    "cavitate and break up, springs centre the controls, a brake comes on, and a "
                    "vehicle on a grade or a load on a rope is no longer held.",
             .decided = "From the solved duty point: what the charge pumps give, less what leaves "
                        "by leakage and consumers, is what goes over the settings of charge and "
                        "flushing reliefs. None left is an error, less than the reserve a warning. "
                        "How much the flushing should take, a circuit does not say.",
             .data = "duty, displacements, efficiencies or coefficients, settings, fluid",
             .subject = "each loop that a pump charges",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Fit a larger charge pump, or take consumers off the charge line; renew "
                       "machines that leak too much.",
             .sources = sources,
             .thresholds = thresholds,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = has_loops,
    .where_torn = true};

}  // namespace loopwright
