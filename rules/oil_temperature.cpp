// For each reservoir: at each duty point, is its oil no warmer than it may be?
#include <loopwright/rules/rule.h>
#include <loopwright/rules/warm_oil.h>

namespace loopwright {

namespace {

void judge_reservoir(const AtWork& at, Docket& docket, Index c) {
    const LeastLimit limit = least_max_temperature(at.circuit(), docket, {&c, 1});
    const std::string_view path = at.circuit().components[c].path;
    if (!limit.least) {
        lacks(at, docket, c, "max-temperature");
        return;
    }
    const Held held{
        .measured = *at.point.oil, .required = *limit.least, .dimension = Dimension::temperature};
    // More heat can only make it warmer.
    const auto missing = unknown_oil(at, docket);
    if (is_oil_guessed(at) || (held.holds() && !missing.empty())) {
        if (Verdict* const verdict = lacks(at, docket, ElementType::component, c, missing))
            verdict->message = docket.text("how warm the oil in ", path, " gets is not known");
        return;
    }
    Verdict* const verdict = hold(at, docket, ElementType::component, c, held);
    if (verdict == nullptr) return;
    const auto told = [&](double kelvin) { return docket.told(kelvin, Dimension::temperature); };
    verdict->message =
        docket.text("the oil in ", path, at.point.balanced ? " gets to " : " is taken to be at ",
                    told(held.measured), at.point.balanced ? ", where its heat balances; " : "; ",
                    "it may be at ", told(held.required));
    const Step steps[] = {{ElementType::component, c, none, none, "its oil"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    const auto& components = at.circuit().components;
    if (at.point.machines.empty()) return;
    for (Index c = 0; c < components.size(); ++c)
        if (components[c].kind->part == Part::reservoir) judge_reservoir(at, docket, c);
}

bool concerns(const FlowGraph& graph, const Structure& structure) {
    return has_part(graph, Part::reservoir) && has_machines(graph, structure);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K36)", .place = "5.2.6"}};
constexpr std::string_view follows[] = {"cooling-capacity"};

}  // namespace

extern constinit const Rule oil_temperature{
    .info = {.id = "oil-temperature",
             .family = "Flushing and cooling",
             .question = "Is the oil of each reservoir no warmer than it may be at every duty "
                         "point?",
             .why = "Hot oil is thin: it wears out bearings and pistons, and the load sinks by "
                    "leakage. It ages many times faster, seals harden and leak, and whoever "
                    "touches a hose is burnt.",
             .decided = "The point's oil, or where that is not given the temperature at which the "
                        "heat that machines, lines and valves make at that point is carried off "
                        "by coolers and walls, against the reservoir's max-temperature.",
             .data = "duty, oil or ambient, capacity and temperature-difference of coolers, "
                     "cooling-area, max-temperature, losses of machines",
             .subject = "each reservoir",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Fit a larger cooler, keep reliefs from opening in normal work, or use "
                       "machines that lose less.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = concerns};

}  // namespace loopwright
