// For each pump with a pressure limiter: does it act below the relief valves on its sides?
#include <algorithm>
#include <cmath>
#include <optional>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view margin = "margin";

/// The relief valve on a loop's main sides that is set lowest: its passage, and those without a
/// setting.
struct LowestRelief {
    Index passage = none;
    std::vector<Index> unknown = {};  ///< components
};

LowestRelief lowest_relief(const Circuit& circuit, const LoopInfo& loop) {
    LowestRelief found;
    for (const SideInfo& side : loop.sides) {
        if (side.role != SideRole::main) continue;
        for (const Index port : side.ports) {
            const Component& valve = circuit.components[circuit.ports[port].component];
            for (Index p = valve.passages.begin; p < valve.passages.end; ++p) {
                const Passage& passage = circuit.passages[p];
                if (passage.passage != PassageClass::pressure_opened || passage.bypass ||
                    passage.from != port)
                    continue;
                if (std::isnan(passage.opening))
                    found.unknown.push_back(passage.component);
                else if (found.passage == none ||
                         passage.opening < circuit.passages[found.passage].opening)
                    found.passage = p;
            }
        }
    }
    return found;
}

void judge_pump(const Circuit& circuit, const LoopInfo& loop, Index pump, double limiter,
                Docket& docket) {
    const LowestRelief relief = lowest_relief(circuit, loop);
    if (relief.passage == none && relief.unknown.empty()) return;  // crossport-relief says so
    const double required = docket.threshold(margin);
    const double below =
        relief.passage == none ? 0.0 : circuit.passages[relief.passage].opening - limiter;
    const bool fails = relief.passage != none && below < required * (1 - 1e-9);
    const Outcome outcome = fails                    ? Outcome::fail
                            : relief.unknown.empty() ? Outcome::pass
                                                     : Outcome::inconclusive;
    Verdict& verdict = docket.conclude(ElementType::component, pump, outcome, Level::warning);
    const std::string_view path = circuit.components[pump].path;
    if (outcome == Outcome::inconclusive) {
        std::vector<std::string_view> missing;
        for (const Index c : relief.unknown)
            missing.push_back(docket.text(circuit.components[c].path, ".setting"));
        verdict.missing = docket.missing(missing);
        verdict.message = docket.text("whether the limiter of ", path,
                                      " acts before the relief valve cannot be told");
        return;
    }
    const Index valve = circuit.passages[relief.passage].component;
    const auto say = [&](double pressure) { return docket.told(pressure, Dimension::pressure); };
    verdict.message =
        below > 0.0 ? docket.text("the limiter of ", path, " acts ", say(below),
                                  " below relief valve ", circuit.components[valve].path,
                                  "; at least ", say(required), " are asked for")
                    : docket.text("the limiter of ", path, " acts at ", say(limiter),
                                  ", not below relief valve ", circuit.components[valve].path);
    verdict.figures = docket.figures({.measured = {below, Dimension::pressure},
                                      .required = Measure{required, Dimension::pressure},
                                      .margin = Measure{below - required, Dimension::pressure}});
    const Step steps[] = {{ElementType::component, pump, none, none, "its limiter acts"},
                          {ElementType::component, valve, none, none, "opens at its setting"}};
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (const LoopInfo& loop : structure.loops)
        for (const Index pump : loop.pumps)
            if (const auto limiter = circuit.figure(circuit.components[pump], "pressure-limiter"))
                judge_pump(circuit, loop, pump, *limiter, docket);
}

constexpr Citation sources[] = {
    {.work = "common practice, no source", .place = "20 to 30 bar below the crossport relief"},
    {.work = "ISO 4413:2010 (paraphrase; the project's row K02)", .place = "5.2.2"}};
constexpr Threshold thresholds[] = {
    {.name = margin,
     .dimension = Dimension::pressure,
     .value = 20e5,
     .doc = "least setting of the relief valves on a loop over the limiter of its pump",
     .example = "20 bar",
     .source = sources[0]}};

}  // namespace

extern constinit const Rule pressure_limiter{
    .info = {.id = "pressure-limiter",
             .family = "High-pressure protection",
             .question = "Does the pump's pressure limiter act below the relief valves?",
             .why = "A relief valve that opens before the limiter turns all the pump's power into "
                    "heat within seconds and burns the oil. The limiter never stands for the "
                    "relief valve: an overrunning load raises the pressure all the same.",
             .decided = "The limiter's pressure against the lowest setting of the relief valves "
                        "on the main sides of the pump's loop.",
             .data = "pressure-limiter, setting",
             .subject = "each pump with a pressure limiter in a loop with relief valves",
             .states = "none",
             .level = Level::warning,
             .remedy = "Set the limiter lower or the relief valves higher, within what the parts "
                       "bear.",
             .sources = sources,
             .thresholds = thresholds},
    .conclude = conclude};

}  // namespace loopwright
