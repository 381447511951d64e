// For each filter: does a clogged element show?
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

void judge(const Circuit& circuit, Index c, Docket& docket) {
    const Component& filter = circuit.components[c];
    const std::string_view indicator = circuit.choice(filter, "clogging-indicator");
    const bool shows = !indicator.empty() && indicator != "none";
    const bool bypassed = circuit.attribute(filter, "bypass") != nullptr;
    Verdict& verdict = docket.conclude(ElementType::component, c,
                                       shows ? Outcome::pass : Outcome::fail, Level::warning);
    if (shows)
        verdict.message =
            docket.text("an indicator shows when the filter ", filter.path, " is clogged");
    else
        verdict.message = docket.text("the filter ", filter.path, " clogs unseen",
                                      bypassed ? ": oil then passes unfiltered by its bypass" : "");
    const Step step{ElementType::component, c, none, none, shows ? "indicator" : "no indicator"};
    verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (const Index c : graph.components_with(Part::filter)) judge(circuit, c, docket);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule filter_bypass{
    .info = {.id = "filter-bypass",
             .family = "Filtration",
             .question = "Does every filter show when it is clogged?",
             .why = "A clogged filter with a bypass lets dirt through that wears pump and motor; "
                    "one without shuts its line off, and the drive loses charge pressure, brakes "
                    "and control with it.",
             .decided = "The filter has a clogging indicator, visual or electrical.",
             .data = "clogging-indicator, bypass",
             .subject = "each filter",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a clogging indicator, and say what the driver has to do when it tells.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
