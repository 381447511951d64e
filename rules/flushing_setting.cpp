// For each relief behind a flushing valve: does it open before the charge relief does?
#include <cmath>
#include <vector>

#include <loopwright/rules/charge_settings.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view offset = "offset";

/// The reliefs of the charge line: the one that is set lowest, and those without a setting.
struct ChargeReliefs {
    Index lowest = none;
    std::vector<Index> unknown = {};

    bool any() const { return lowest != none || !unknown.empty(); }
};

ChargeReliefs find_charge_reliefs(const Situation& s) {
    ChargeReliefs found;
    for (const Index e : charge_reliefs(s)) {
        const double setting = s.region.edges[e].opening;
        if (std::isnan(setting))
            found.unknown.push_back(e);
        else if (found.lowest == none || setting < s.region.edges[found.lowest].opening)
            found.lowest = e;
    }
    return found;
}

std::string_view path_of(const Situation& s, Index edge) {
    return s.circuit().components[s.region.edges[edge].component].path;
}

void say_missing(const Situation& s, Docket& docket, Index e, const ChargeReliefs& charge,
                 Verdict& verdict) {
    std::vector<std::string_view> missing;
    const auto add = [&](Index edge) {
        const Component& valve = s.circuit().components[s.region.edges[edge].component];
        missing.push_back(docket.text(valve.path, ".", setting_of(valve)));
    };
    if (std::isnan(s.region.edges[e].opening)) add(e);
    for (const Index relief : charge.unknown) add(relief);
    verdict.missing = docket.missing(missing);
    verdict.message = docket.text("whether ", path_of(s, e),
                                  " opens before the charge relief cannot be told: a setting is "
                                  "not given");
}

void judge_one(const Situation& s, Docket& docket, StateSet states, Index e,
               const ChargeReliefs& charge) {
    const Index component = s.region.edges[e].component;
    if (!charge.any()) {
        Verdict* verdict =
            docket.record(s, ElementType::component, component, states, Outcome::not_applicable);
        if (verdict != nullptr) verdict->message = "no relief limits the charge line";
        return;
    }
    const double required = docket.threshold(offset);
    const double flushing = s.region.edges[e].opening;
    const double below =
        charge.lowest == none ? NAN : s.region.edges[charge.lowest].opening - flushing;
    const bool no_flow = below <= 0.0;
    const Outcome outcome = below < required * (1 - 1e-9)                  ? Outcome::fail
                            : std::isnan(below) || !charge.unknown.empty() ? Outcome::inconclusive
                                                                           : Outcome::pass;
    Verdict* verdict =
        docket.record(s, ElementType::component, component, states, outcome,
                      no_flow ? Level::error : Level::warning, std::isnan(below) ? 0.0 : -below);
    if (verdict == nullptr) return;
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, component, none, none, "opens first"});
    if (charge.lowest != none)
        steps.push_back({ElementType::component, s.region.edges[charge.lowest].component, none,
                         none, "limits the charge line"});
    verdict->witness = docket.witness(WitnessShape::set, steps);
    if (outcome == Outcome::inconclusive) {
        say_missing(s, docket, e, charge, *verdict);
        return;
    }
    const auto say = [&](double pressure) { return docket.told(pressure, Dimension::pressure); };
    verdict->figures = docket.figures({.measured = {below, Dimension::pressure},
                                       .required = Measure{required, Dimension::pressure},
                                       .margin = Measure{below - required, Dimension::pressure}});
    const std::string_view limits = path_of(s, charge.lowest);
    verdict->message =
        no_flow ? docket.text(path_of(s, e), " is set to ", say(flushing),
                              ", not below the charge relief ", limits, " at ",
                              say(flushing + below), ": no oil is flushed")
                : docket.text(path_of(s, e), " is set ", say(below), " below the charge relief ",
                              limits, "; at least ", say(required), " are asked for");
}

void judge_in(const Situation& s, Docket& docket, StateSet states) {
    const std::vector<Index> flushing = flushing_reliefs(s);
    if (flushing.empty()) return;
    const ChargeReliefs charge = find_charge_reliefs(s);
    for (const Index e : flushing) judge_one(s, docket, states, e, charge);
}

bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds) return false;
    judge_in(s, docket, s.alike.states);
    return true;
}

void judge(const Situation& s, Docket& docket) { judge_in(s, docket, s.states); }

constexpr Citation sources[] = {
    {.work = "common practice, no source",
     .place = "the flushing relief 2 to 4 bar below the charge relief at least"},
    {.work = "US Army TM 5-3895-382-24", .place = "p. 11-9: 11 bar on one roller"}};
constexpr Threshold thresholds[] = {{.name = offset,
                                     .dimension = Dimension::pressure,
                                     .value = 2e5,
                                     .doc = "least setting of the charge relief over that of the "
                                            "flushing relief",
                                     .example = "2 bar",
                                     .source = sources[0]}};

}  // namespace

extern constinit const Rule flushing_setting{
    .info = {.id = "flushing-setting",
             .family = "Flushing and cooling",
             .question = "Is the flushing relief set so far below the charge relief that oil is "
                         "flushed?",
             .why = "A flushing relief that opens no sooner than the charge relief flushes "
                    "nothing: the loop's oil stays in it, runs hot and loses its film.",
             .decided = "Reliefs reached from the outlet of a flushing valve, against the lowest "
                        "relief of the charge line, both over ways that nobody can close.",
             .data = "setting, joins",
             .subject = "each relief valve behind a flushing valve",
             .states = "moving",
             .level = Level::error,
             .remedy = "Set the flushing relief lower, or the charge relief higher.",
             .sources = sources,
             .thresholds = thresholds},
    .asked = moving_states,
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
