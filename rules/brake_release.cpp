// For each brake that pressure releases: is the lowest pressure of its supply enough to release it
// fully?
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/charge_settings.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// What reaches a brake, at the least.
struct Supply {
    double pressure = 0.0;
    std::vector<Index> unknown = {};  ///< components whose setting is not given
};

/// From the charge sources by every way that stands open, past no relief and over no side.
void find_supplied(const Situation& s, Search& supplied) {
    for (const ChargeSource& source : s.feeds.sources)
        if (source.has_line && source.is_pump()) supplied.begin_at(source.outlet);
    s.graph.work += supplied.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return stands_open(s.standing, arc) && s.region.is_reservoir[arc.to] == 0 &&
               !on_a_side(s, arc.to) &&
               (hands_on(s.region.edges[arc.edge]) ||
                s.region.edges[arc.edge].passage_class == PassageClass::switched);
    });
}

/// The charge line's lowest pressure, less what a reducing valve on the way leaves of it.
Supply supply_of(const Situation& s, const LowestCharge& charge, std::span<const FlowArc> way) {
    Supply supply{.pressure = charge.pressure, .unknown = charge.unknown};
    for (const FlowArc& arc : way) {
        const Edge& edge = s.region.edges[arc.edge];
        if (edge.passage_class != PassageClass::reduced) continue;
        if (std::isnan(edge.opening))
            supply.unknown.push_back(edge.component);
        else
            supply.pressure = std::min(supply.pressure, edge.opening);
    }
    return supply;
}

Outcome outcome_of(const Supply& supply, bool any_known, std::optional<double> needed) {
    if (!needed || (!any_known && supply.pressure == 0.0)) return Outcome::inconclusive;
    if (supply.pressure < *needed) return Outcome::fail;
    return supply.unknown.empty() ? Outcome::pass : Outcome::inconclusive;
}

void judge_brake(const Situation& s, Docket& docket, StateSet states, Index port,
                 const Search& supplied, const LowestCharge& charge) {
    const Index c = s.circuit().ports[port].component;
    const Component& brake = s.circuit().components[c];
    std::vector<FlowArc>& arcs = s.searches.path();
    supplied.add_path_to(s.region, s.graph.node_of(port), arcs);
    const Supply supply = supply_of(s, charge, arcs);
    const std::optional<double> needed = s.circuit().figure(brake, "full-release-pressure");
    const Outcome outcome = outcome_of(supply, charge.relief != none, needed);
    Verdict* verdict = docket.record(s, ElementType::component, c, states, outcome, Level::error,
                                     -supply.pressure);
    if (verdict == nullptr) return;
    std::vector<Step>& steps = s.searches.steps();
    const Index start = arcs.empty() ? s.graph.node_of(port) : tail(s.region, arcs.front());
    const Index outlet = add_source(s.graph, s.region, s.feeds.sources, start, steps);
    add_walk(s.graph, s.region, arcs, {.from = outlet, .to = port}, steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
    if (outcome == Outcome::inconclusive) {
        std::vector<std::string_view> missing;
        if (!needed) missing.push_back(docket.text(brake.path, ".full-release-pressure"));
        for (const Index valve : supply.unknown)
            missing.push_back(docket.text(s.circuit().components[valve].path, ".setting"));
        verdict->missing = docket.missing(missing);
        verdict->message =
            docket.text("whether its supply releases ", brake.path, " fully cannot be told");
        return;
    }
    const auto say = [&](double pressure) { return docket.told(pressure, Dimension::pressure); };
    verdict->figures =
        docket.figures({.measured = {supply.pressure, Dimension::pressure},
                        .required = Measure{*needed, Dimension::pressure},
                        .margin = Measure{supply.pressure - *needed, Dimension::pressure}});
    verdict->message = docket.text(brake.path, " is fully released at ", say(*needed),
                                   "; its supply gives ", say(supply.pressure), " at the least");
}

void judge_in(const Situation& s, Docket& docket, StateSet states) {
    std::optional<LowestCharge> charge;
    const auto lease = s.searches.take(s.region.node_count);
    for (const Index port : s.region.guests) {
        const Component& brake = s.circuit().components[s.circuit().ports[port].component];
        if (brake.kind->part != Part::brake || s.circuit().choice(brake, "applied") != "spring")
            continue;
        if (!charge) {
            charge = lowest_charge(s);
            if (!charge) return;
            find_supplied(s, *lease);
        }
        if (lease->reached(s.graph.node_of(port)))
            judge_brake(s, docket, states, port, *lease, *charge);
    }
}

bool judge_alike(const Situation& s, Docket& /*docket*/) {
    const bool any = std::any_of(s.region.guests.begin(), s.region.guests.end(), [&](Index port) {
        const Index c = s.circuit().ports[port].component;
        return s.circuit().components[c].kind->part == Part::brake;
    });
    return !any;
}

void judge(const Situation& s, Docket& docket) { judge_in(s, docket, s.states); }

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"charge-vented", "flushing-setting"};

}  // namespace

extern constinit const Rule brake_release{
    .info = {.id = "brake-release",
             .family = "Control and stopping",
             .question = "Is the lowest pressure of its supply enough to release each brake fully?",
             .why = "A brake that is not fully released drags: it burns its linings, fills the "
                    "housing with hot oil, and then no longer holds the load.",
             .decided = "The lowest setting of the reliefs of the charge line and of those behind "
                        "the flushing valve, less what a reducing valve on the way takes, against "
                        "the pressure of full release; asked in motion, wherever the brake valve "
                        "lets the oil on.",
             .data = "full-release-pressure, setting, joins, valve positions",
             .subject = "each spring-applied brake that charge oil releases",
             .states = "moving",
             .level = Level::error,
             .remedy = "Fit a brake that releases at a lower pressure, or raise the flushing and "
                       "charge reliefs.",
             .sources = sources,
             .follows = follows},
    .asked = moving_states,
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
