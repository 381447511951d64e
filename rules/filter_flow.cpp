// For each filter: at each duty point, is it large enough for its flow, and does all of that pass
// its element?
#include <cmath>
#include <optional>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// What passes a filter at a point.
struct Passed {
    std::optional<double> flow = 0.0;   ///< m3/s, over element and bypass, without a sign
    double drop = 0.0;                  ///< over the element
    std::optional<double> bypass = {};  ///< pressure at which it opens
};

Passed passed(const AtWork& at, const Component& filter) {
    Passed sum;
    const auto flow_of = [&](Index p) -> std::optional<double> {
        for (const hydraulics::PassagePoint& one : at.point.passages)
            if (one.passage == p) return one.flow;
        return std::nullopt;
    };
    for (Index p = filter.passages.begin; p < filter.passages.end; ++p) {
        const Passage& passage = at.circuit().passages[p];
        const auto flow = flow_of(p);
        if (passage.passage == PassageClass::element) {
            sum.drop = std::abs(at.pressure(passage.from) - at.pressure(passage.to));
            if (!flow) sum.flow.reset();
        }
        if (passage.bypass) sum.bypass = passage.opening;
        if (flow && sum.flow) *sum.flow += std::abs(*flow);
    }
    return sum;
}

void judge_filter(const AtWork& at, Docket& docket, Index c) {
    const Component& filter = at.circuit().components[c];
    const Passed through = passed(at, filter);
    const std::optional<double> rated = at.circuit().figure(filter, "flow");
    if (!rated || !through.flow) {
        lacks(at, docket, c, rated ? "pressure-drop" : "flow");
        return;
    }
    const Held flow{.measured = *through.flow, .required = *rated, .dimension = Dimension::flow};
    const Step steps[] = {{ElementType::component, c, none, none, "filters"}};
    if (flow.holds() && through.bypass) {
        for (const std::string_view datum : {"pressure-drop", "viscosity"})
            if (!at.circuit().figure(filter, datum)) {
                lacks(at, docket, c, datum);
                return;
            }
        const Held drop{.measured = through.drop,
                        .required = *through.bypass,
                        .dimension = Dimension::pressure};
        // At its opening pressure the bypass holds the drop there.
        if (through.drop >= *through.bypass * (1.0 - 1e-6)) {
            Verdict* const verdict =
                docket.record_at(at.point.id, ElementType::component, c, Outcome::fail,
                                 Level::warning, drop.measured / drop.required);
            if (verdict == nullptr) return;
            verdict->figures =
                docket.figures({.measured = {drop.measured, Dimension::pressure},
                                .required = Measure{drop.required, Dimension::pressure},
                                .margin = Measure{drop.margin(), Dimension::pressure}});
            verdict->message = docket.text(
                "the clean element of ", filter.path, " loses as much as opens its bypass, ",
                docket.told(*through.bypass, Dimension::pressure), ": oil gets past unfiltered");
            verdict->witness = docket.witness(WitnessShape::set, steps);
            return;
        }
    }
    Verdict* const verdict = hold(at, docket, ElementType::component, c, flow, Level::warning);
    if (verdict == nullptr) return;
    verdict->message =
        docket.text(docket.told(*through.flow, Dimension::flow), " pass ", filter.path,
                    "; it is made for ", docket.told(*rated, Dimension::flow));
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    const auto& components = at.circuit().components;
    for (Index c = 0; c < components.size(); ++c)
        if (components[c].kind->part == Part::filter) judge_filter(at, docket, c);
}

bool concerns(const FlowGraph& graph, const Structure& /*structure*/) {
    return has_part(graph, Part::filter);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K06)", .place = "5.2.1"}};

}  // namespace

extern constinit const Rule filter_flow{
    .info = {.id = "filter-flow",
             .family = "Filtration",
             .question = "Is each filter large enough for its flow at every duty point?",
             .why = "A filter that is too small clogs early, tears its element or lets the oil "
                    "past by its bypass, and what it should have held grinds the machines.",
             .decided = "Flow through the filter at the solved duty points against its rated "
                        "flow; where it has a bypass, the loss of the clean element against the "
                        "pressure that opens it. Cold duty points show the bypass, fast ones the "
                        "flow.",
             .data = "duty, flow, pressure-drop, viscosity, bypass, displacements, fluid",
             .subject = "each filter",
             .states = "at each duty point",
             .level = Level::warning,
             .remedy = "Fit a larger filter.",
             .sources = sources},
    .judge_point = judge_point,
    .concerns = concerns};

}  // namespace loopwright
