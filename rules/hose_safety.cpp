#include <loopwright/rules/rule.h>

#include <fmt/format.h>

namespace loopwright {

namespace {

constexpr std::string_view burst_ratio = "burst-ratio";

void judge_hose(const Circuit& circuit, Index line, Docket& docket) {
    const Line& hose = circuit.lines[line];
    const auto add = [&](Outcome outcome) -> Verdict& {
        return docket.conclude(ElementType::line, line, outcome, Level::warning);
    };
    if (!hose.burst_pressure) {
        add(Outcome::not_applicable).message =
            docket.text("the burst pressure of hose ", hose.path, " is not given");
        return;
    }
    if (!hose.rating) {
        const std::string_view missing[] = {docket.text(hose.path, ".rating")};
        Verdict& verdict = add(Outcome::inconclusive);
        verdict.message = docket.text("the working pressure of hose ", hose.path,
                                      " is not given, so its burst pressure tells nothing");
        verdict.missing = docket.missing(missing);
        return;
    }
    const double required = docket.threshold(burst_ratio);
    const double ratio = hose.burst_pressure->si() / hose.rating->si();
    const bool enough = ratio >= required * (1 - 1e-9);  // 1680 bar are four times 420 bar
    Verdict& verdict = add(enough ? Outcome::pass : Outcome::fail);
    verdict.message = docket.text(
        "hose ", hose.path, " bursts at ",
        docket.told(hose.burst_pressure->si(), Dimension::pressure), ", ",
        fmt::format("{:.3g}", ratio), " times the ",
        docket.told(hose.rating->si(), Dimension::pressure), " that it is rated for; at least ",
        fmt::format("{:.3g}", required), enough ? " are asked for" : " times are asked for");
    verdict.figures = docket.figures({.measured = {ratio, Dimension::ratio},
                                      .required = Measure{required, Dimension::ratio},
                                      .margin = Measure{ratio - required, Dimension::ratio}});
    const Step step[] = {{.type = ElementType::line, .index = line, .text = "the hose"}};
    verdict.witness = docket.witness(WitnessShape::set, step);
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (Index line = 0; line < circuit.lines.size(); ++line)
        if (circuit.lines[line].flexible) judge_hose(circuit, line, docket);
}

constexpr Citation sources[] = {
    {.work = "SAE J517, Hydraulic Hose, as a trade article on hose assemblies gives it",
     .place = "minimum burst pressure four times the maximum working pressure"}};
constexpr Threshold thresholds[] = {{.name = burst_ratio,
                                     .dimension = Dimension::ratio,
                                     .value = 4.0,
                                     .least = 1.0,
                                     .doc = "least burst pressure over working pressure of a hose",
                                     .example = "4",
                                     .source = sources[0]}};

}  // namespace

extern constinit const Rule hose_safety{
    .info = {.id = "hose-safety",
             .family = "High-pressure protection",
             .question =
                 "Does each hose burst at a pressure far enough above what it is rated for?",
             .why = "A hose ages, is bent and rubs. One that bursts whips, throws hot oil, can "
                    "inject it through skin, and lets a load go.",
             .decided = "The burst pressure of a hose, over the working pressure that it is rated "
                        "for, is at least the threshold.",
             .data = "burst pressure and rating of hoses",
             .subject = "each hose whose burst pressure is given",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a hose with a higher burst pressure, or rate it lower.",
             .sources = sources,
             .thresholds = thresholds},
    .conclude = conclude};

}  // namespace loopwright
