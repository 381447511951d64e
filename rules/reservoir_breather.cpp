// For each vented reservoir: does it breathe through a filter?
#include <optional>

#include <loopwright/rules/reservoir_parts.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

void judge(const Circuit& circuit, Index c, bool told, Index breather, Docket& docket) {
    const std::string_view path = circuit.components[c].path;
    const bool sound = told || breather != none;
    Verdict& verdict = docket.conclude(ElementType::component, c,
                                       sound ? Outcome::pass : Outcome::fail, Level::warning);
    if (breather != none)
        verdict.message =
            docket.text(path, " breathes through ", circuit.components[breather].path);
    else
        verdict.message = docket.text(path, sound ? " has a breather" : " has no breather");
    std::vector<Step> steps{{ElementType::component, c, none, none, "reservoir"}};
    if (breather != none)
        steps.push_back({ElementType::component, breather, none, none, "breather"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::optional<ReservoirParts> breathers;
    for (const Index c : graph.components_with(Part::reservoir)) {
        const Component& reservoir = circuit.components[c];
        if (circuit.attribute(reservoir, "pressure") != nullptr) continue;
        const bool told = circuit.is_yes(reservoir, "breather");
        if (!told && !breathers)
            breathers.emplace(graph, [](const Component& one) { return one.kind->breathes; });
        judge(circuit, c, told, told ? none : breathers->of(reservoir), docket);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K27)", .place = "5.4.5"}};

}  // namespace

extern constinit const Rule reservoir_breather{
    .info = {.id = "reservoir-breather",
             .family = "Suction and reservoir",
             .question = "Does every vented reservoir breathe through a filter?",
             .why = "As the level moves, air goes in and out. Without a filter it brings the dust "
                    "of the site into the oil, which wears pump and motor; without any opening "
                    "the pumps draw a vacuum.",
             .decided = "The reservoir says that it has a breather, or one stands on a line of "
                        "its own ports.",
             .data = "breather, pressure, joins",
             .subject = "each reservoir that is not sealed",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a breather with a filter to the reservoir.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
