// For each reservoir: can its oil level be read?
#include <optional>

#include <loopwright/rules/reservoir_parts.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

void judge(const Circuit& circuit, Index c, bool told, Index indicator, Docket& docket) {
    const std::string_view path = circuit.components[c].path;
    const bool sound = told || indicator != none;
    Verdict& verdict = docket.conclude(ElementType::component, c,
                                       sound ? Outcome::pass : Outcome::fail, Level::warning);
    if (indicator != none)
        verdict.message = docket.text("the oil level of ", path, " is shown by ",
                                      circuit.components[indicator].path);
    else
        verdict.message =
            docket.text("the oil level of ", path, sound ? " can be read" : " cannot be read");
    std::vector<Step> steps{{ElementType::component, c, none, none, "reservoir"}};
    if (indicator != none)
        steps.push_back({ElementType::component, indicator, none, none, "shows the level"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const auto tells_level = [&](const Component& one) {
        return one.kind->shows_level ||
               (one.kind->part == Part::instrument && circuit.choice(one, "measures") == "level");
    };
    std::optional<ReservoirParts> indicators;
    for (const Index c : graph.components_with(Part::reservoir)) {
        const Component& reservoir = circuit.components[c];
        const bool told = circuit.is_yes(reservoir, "level-indicator");
        if (!told && !indicators) indicators.emplace(graph, tells_level);
        judge(circuit, c, told, told ? none : indicators->of(reservoir), docket);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K25)", .place = "5.4.5"}};

}  // namespace

namespace rules_named_like_kinds {

extern constinit const Rule level_indicator{
    .info = {.id = "level-indicator",
             .family = "Suction and reservoir",
             .question = "Can the oil level of every reservoir be read?",
             .why = "Oil that is lost is noticed by the level first. Unseen, the charge pump draws "
                    "air, and the drive loses braking, brakes and control while it moves.",
             .decided = "The reservoir says that its level can be read, or a level indicator or "
                        "level sensor stands on a line of its own ports.",
             .data = "level-indicator, measures, joins",
             .subject = "each reservoir",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a level indicator to the reservoir.",
             .sources = sources},
    .conclude = conclude};

}  // namespace rules_named_like_kinds

}  // namespace loopwright
