// For each loop: at each duty point, does it exchange oil at the rate that its heat needs?
#include <algorithm>
#include <string>
#include <vector>

#include <loopwright/base/unit_text.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/warm_oil.h>

namespace loopwright {

namespace {

using hydraulics::LoopHeat;

std::vector<Index> machines_of(const LoopInfo& loop) {
    std::vector<Index> machines = loop.pumps;
    machines.insert(machines.end(), loop.actuators.begin(), loop.actuators.end());
    return machines;
}

/// Lines of the loop's sides that oil flows through at a loss that is not known.
void add_unknown_lines(const AtWork& at, Docket& docket, const LoopInfo& loop,
                       std::vector<std::string_view>& missing) {
    constexpr double flows_from = 1e-9;  // m3/s; less is rounding
    const auto lack = [&](const Line& line, std::string_view datum) {
        const std::string_view name = docket.text(line.path, ".", datum);
        if (std::find(missing.begin(), missing.end(), name) == missing.end())
            missing.push_back(name);
    };
    for (const SideInfo& side : loop.sides)
        for (const Index l : side.lines) {
            const auto point =
                std::find_if(at.point.lines.begin(), at.point.lines.end(),
                             [&](const hydraulics::LinePoint& one) { return one.line == l; });
            const Line& line = at.circuit().lines[l];
            if (point == at.point.lines.end() || at.circuit().ports_of(line).size() < 2) continue;
            if (point->flow && std::abs(*point->flow) < flows_from) continue;
            if (!line.bore) lack(line, "bore");
            if (!line.length) lack(line, "length");
        }
}

/// Whether what is told of the loop would be as bad if everything were known. Records it otherwise.
bool is_known(const AtWork& at, Docket& docket, const LoopInfo& loop, bool holds) {
    const std::vector<Index> machines = machines_of(loop);
    // What leaks warms the loop, but carries heat out of it as well.
    auto missing = unknown_losses(at, docket, machines, Loss::leakage);
    if (holds) {
        const auto torque = unknown_losses(at, docket, machines, Loss::torque);
        missing.insert(missing.end(), torque.begin(), torque.end());
        add_unknown_lines(at, docket, loop, missing);
        for (const std::string_view datum : unknown_oil(at, docket))
            if (std::find(missing.begin(), missing.end(), datum) == missing.end())
                missing.push_back(datum);
    } else if (is_oil_guessed(at)) {
        missing.push_back(unknown_oil(at, docket).front());
    }
    if (missing.empty()) return true;
    if (Verdict* const verdict = lacks(at, docket, ElementType::loop, loop.pumps.front(), missing))
        verdict->message = docket.text("how warm the oil in ", loop.id, " gets is not known");
    return false;
}

void show(const LoopInfo& loop, Docket& docket, Verdict& verdict) {
    std::vector<Step> steps;
    for (const Index c : machines_of(loop))
        steps.push_back({ElementType::component, c, none, none, "warms its oil"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

/// Nothing carries the heat out.
void without_exchange(const AtWork& at, Docket& docket, const LoopInfo& loop,
                      const LoopHeat& heat) {
    constexpr double no_heat = 1.0;  // W; any pipe gives off more
    const bool holds = heat.heat < no_heat;
    if (!is_known(at, docket, loop, holds)) return;
    Verdict* const verdict =
        docket.record_at(at.point.id, ElementType::loop, loop.pumps.front(),
                         holds ? Outcome::pass : Outcome::fail, Level::error, heat.heat);
    if (verdict == nullptr) return;
    verdict->message = holds
                           ? docket.text("nothing warms the oil in ", loop.id)
                           : docket.text("the oil in ", loop.id, " takes up ",
                                         docket.told(heat.heat, Dimension::power),
                                         " and none of it is exchanged: it gets warmer and warmer");
    show(loop, docket, *verdict);
}

void judge_loop(const AtWork& at, Docket& docket, const LoopInfo& loop, const LoopHeat& heat) {
    if (!heat.temperature) {
        without_exchange(at, docket, loop, heat);
        return;
    }
    const LeastLimit limit = least_max_temperature(at.circuit(), docket, machines_of(loop));
    const Index subject = loop.pumps.front();
    const Held held{.measured = *heat.temperature,
                    .required = limit.least.value_or(0.0),
                    .dimension = Dimension::temperature};
    if (!limit.missing.empty() && (!limit.least || held.holds())) {
        if (Verdict* const verdict = lacks(at, docket, ElementType::loop, subject, limit.missing))
            verdict->message = docket.text("how warm the oil in ", loop.id, " may be is not given");
        return;
    }
    if (!limit.least || !is_known(at, docket, loop, held.holds())) return;
    Verdict* const verdict = hold(at, docket, ElementType::loop, subject, held);
    if (verdict == nullptr) return;
    const auto told = [&](double kelvin) { return docket.told(kelvin, Dimension::temperature); };
    const auto flow = [&](double si) { return docket.told(si, Dimension::flow); };
    const double room = held.required - *at.point.oil;
    const double rise = held.measured - *at.point.oil;
    verdict->message = docket.text(
        "the oil in ", loop.id, " takes up ", docket.told(heat.heat, Dimension::power),
        " and exchanges ", flow(heat.exchange), ", so that it gets to ", told(held.measured), "; ",
        at.circuit().components[limit.of].path, " bears ", told(held.required),
        held.holds() ? std::string_view{}
        : room > 0.0 ? docket.text(", for which it would have to exchange ",
                                   flow(heat.exchange * rise / room))
                     : std::string_view(", which the reservoir's oil has already"));
    show(loop, docket, *verdict);
}

void judge_point(const AtWork& at, Docket& docket) {
    for (const LoopInfo& loop : at.structure.loops)
        for (const LoopHeat& heat : at.point.loops)
            if (heat.first_pump == loop.pumps.front()) judge_loop(at, docket, loop, heat);
}

constexpr Citation sources[] = {
    {.work = "heat balance of a stream: power over density, specific heat and flow", .place = {}},
    {.work = "common practice, no source", .place = "that a loop's heat leaves with its oil"}};
constexpr std::string_view follows[] = {"oil-temperature", "loop-flushing", "flushing-side",
                                        "flushing-setting", "charge-flow"};

}  // namespace

extern constinit const Rule loop_temperature{
    .info = {.id = "loop-temperature",
             .family = "Flushing and cooling",
             .question = "Does each loop exchange oil at the rate that its heat needs?",
             .why = "The same oil goes round and round, and what machines and lines lose warms it "
                    "at every turn. Where too little is exchanged it gets far hotter than the "
                    "reservoir shows: pistons seize and seals fail while the thermometer reads "
                    "well.",
             .decided = "From the solved duty point: the heat that its machines, lines and valves "
                        "put into the loop's oil, over the flow that flushing and leakage take "
                        "out, raises it over the reservoir's oil; what machines lose into their "
                        "housings' oil does not. Against the least max-temperature of its "
                        "machines. A cooler inside the loop is not counted.",
             .data = "duty, oil or ambient, losses of machines, bores, lengths, settings, fluid, "
                     "max-temperature",
             .subject = "each loop",
             .states = "at each duty point",
             .level = Level::error,
             .remedy = "Fit a flushing valve, or let it flush more: a larger charge pump, a lower "
                       "flushing relief.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = has_loops};

}  // namespace loopwright
