// For each loop: the displacement of its charge pumps against that of all pumps of the loops they
// feed. A rule of thumb, so a note.
#include <algorithm>
#include <optional>
#include <vector>

#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view share = "share";

/// A sum of displacements, and of what components it is.
struct Sum {
    double displacement = 0.0;
    std::vector<Index> components = {};
    std::vector<std::string_view> missing = {};

    void add(const Situation& s, Docket& docket, Index c) {
        if (std::find(components.begin(), components.end(), c) != components.end()) return;
        components.push_back(c);
        const Component& pump = s.circuit().components[c];
        if (const auto given = s.circuit().figure(pump, "displacement"))
            displacement += *given;
        else
            missing.push_back(docket.text(pump.path, ".displacement"));
    }
};

bool feeds_loop(const Situation& s, const ChargePump& pump, Index loop) {
    const auto fed = s.feeds.feeds(pump);
    return std::find(fed.begin(), fed.end(), loop) != fed.end();
}

void judge_loop(const Situation& s, Docket& docket, StateSet states, Index loop) {
    Sum charge;
    Sum fed;
    for (const ChargePump& pump : s.feeds.pumps) {
        if (!feeds_loop(s, pump, loop)) continue;
        charge.add(s, docket, s.region.edges[pump.edge].component);
        for (const Index other : s.feeds.feeds(pump))
            for (const Index c : s.loops.pumps_of(s.loops.loops[other])) fed.add(s, docket, c);
    }
    if (charge.components.empty()) return;
    const double required = docket.threshold(share);
    const bool known = charge.missing.empty() && fed.missing.empty();
    const double measured = charge.displacement / fed.displacement;
    const Outcome outcome = !known                               ? Outcome::inconclusive
                            : measured < required * (1.0 - 1e-9) ? Outcome::fail
                                                                 : Outcome::pass;
    // The least share is told; where it cannot be told, what lacks the most.
    const double severity =
        known ? -measured : static_cast<double>(charge.missing.size() + fed.missing.size());
    Verdict* verdict = docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, states,
                                     outcome, Level::note, severity);
    if (verdict == nullptr) return;
    std::vector<Step>& steps = s.searches.steps();
    for (const Index c : charge.components)
        steps.push_back({ElementType::component, c, none, none, "charges"});
    for (const Index c : fed.components)
        steps.push_back({ElementType::component, c, none, none, "is charged"});
    verdict->witness = docket.witness(WitnessShape::set, steps);
    if (!known) {
        charge.missing.insert(charge.missing.end(), fed.missing.begin(), fed.missing.end());
        verdict->missing = docket.missing(charge.missing);
        verdict->message = "what the charge pump displaces against the loop's pumps cannot be told";
        return;
    }
    verdict->figures = docket.figures({.measured = {measured, Dimension::ratio},
                                       .required = Measure{required, Dimension::ratio},
                                       .margin = Measure{measured - required, Dimension::ratio}});
    verdict->message =
        docket.text("the charge pump displaces ", docket.told(measured, Dimension::ratio),
                    " of what the pumps of the loops that it feeds do; ",
                    docket.told(required, Dimension::ratio), " are usual at least");
}

void judge_all(const Situation& s, Docket& docket, std::span<const StateSet> states) {
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (judged(s, loop)) judge_loop(s, docket, states[loop], loop);
}

bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds || !same_charge_pumps(s)) return false;
    judge_all(s, docket, s.alike.loop_states);
    return true;
}

void judge(const Situation& s, Docket& docket) { judge_all(s, docket, s.loop_states); }

constexpr Citation sources[] = {
    {.work = "Machinery Lubrication, March-April 2016, article on hydrostatic drives",
     .place = "p. 22 (charge pump 10 to 15 % of the main pump)"}};
constexpr Threshold thresholds[] = {
    {.name = share,
     .dimension = Dimension::ratio,
     .value = 0.10,
     .most = 1.0,
     .doc = "least displacement of the charge pumps over that of all loop pumps that they feed",
     .example = "10 %",
     .source = sources[0]}};

}  // namespace

extern constinit const Rule charge_displacement{
    .info = {.id = "charge-displacement",
             .family = "Charge supply",
             .question = "Is the charge pump as large as is usual for the loop's pumps?",
             .why = "A charge pump too small for leakage, flushing and controls lets the low side "
                    "run empty when the machine is hot and worn. A rule of thumb: the computed "
                    "charge balance decides.",
             .decided = "Displacement of the charge pumps that feed the loop, over that of all "
                        "pumps of the loops that they feed.",
             .data = "displacement, joins",
             .subject = "each loop that a charge pump feeds",
             .states = "running",
             .level = Level::note,
             .remedy = "Compute the charge balance; fit a larger charge pump where it does not "
                       "close.",
             .sources = sources,
             .thresholds = thresholds},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
