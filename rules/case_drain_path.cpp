// For each housing drained outside: the way to a reservoir that takes the least pressure, past
// nothing that can close. One search against the oil from all reservoirs serves all housings.
#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr double unreachable = std::numeric_limits<double>::infinity();

/// Pressure that a drain's oil needs to get over the arc; `unreachable` where it cannot, or where
/// somebody can close it.
double resistance(const Situation& s, const FlowArc& flow, bool guess_unknown) {
    const Edge& edge = s.region.edges[flow.edge];
    if (!stands_open(s.standing, flow)) return unreachable;
    switch (edge.passage_class) {
        case PassageClass::element:
        case PassageClass::metering:
            return 0.0;
        case PassageClass::switched:
            return edge.shift == Shift::hand && !edge.locked ? unreachable : 0.0;
        case PassageClass::one_way:
        case PassageClass::pressure_opened:
            if (edge.bypass) return unreachable;  // its element is open anyway
            if (std::isnan(edge.opening)) return guess_unknown ? 0.0 : unreachable;
            return edge.opening;
        case PassageClass::joined:
        case PassageClass::displacement:
        case PassageClass::leakage:
            break;
    }
    return unreachable;
}

struct Ways {
    std::vector<double> pressure = {};  ///< for each node, to the nearest reservoir
    std::vector<Index> next = {};       ///< slot of the arc it is left by; none at a reservoir
};

/// Dijkstra's method against the oil, from all reservoirs at once. Hardly a passage takes pressure,
/// so what lies on the same pressure is gone through first, and the heap holds the rest.
Ways ways_to_reservoirs(const Situation& s, bool guess_unknown) {
    Ways ways;
    ways.pressure.assign(s.region.node_count, unreachable);
    ways.next.assign(s.region.node_count, none);
    using Entry = std::pair<double, Index>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> higher;
    std::vector<Index> level(s.region.reservoirs.begin(), s.region.reservoirs.end());
    for (const Index node : level) ways.pressure[node] = 0.0;
    double pressure = 0.0;
    while (true) {
        for (std::size_t i = 0; i < level.size(); ++i) {
            const Index node = level[i];
            if (pressure > ways.pressure[node]) continue;
            s.graph.work += 1 + s.region.arc_offsets[node + 1] - s.region.arc_offsets[node];
            for (Index slot = s.region.arc_offsets[node]; slot < s.region.arc_offsets[node + 1];
                 ++slot) {
                const FlowArc& arc = s.region.arcs[slot];
                if (ways.pressure[arc.to] <= pressure) continue;
                const double sum =
                    pressure + resistance(s, turned_round(s.region, arc), guess_unknown);
                if (sum >= ways.pressure[arc.to]) continue;
                ways.pressure[arc.to] = sum;
                ways.next[arc.to] = slot;
                if (sum > pressure)
                    higher.emplace(sum, arc.to);
                else
                    level.push_back(arc.to);
            }
        }
        if (higher.empty()) return ways;
        pressure = higher.top().first;
        level.assign(1, higher.top().second);
        higher.pop();
    }
}

const std::vector<FlowArc>& path_from(const Situation& s, const Ways& ways, Index node) {
    std::vector<FlowArc>& path = s.searches.path();
    while (ways.next[node] != none) {
        const FlowArc flow = turned_round(s.region, s.region.arcs[ways.next[node]]);
        path.push_back(flow);
        node = flow.to;
    }
    return path;
}

std::vector<Step> from_housing(const Situation& s, Index port, std::vector<Step> on) {
    on.insert(on.begin(),
              {ElementType::component, s.circuit().ports[port].component, none, port, "housing"});
    return on;
}

Witness drain_way(const Situation& s, const Ways& ways, Index port, Index node) {
    const std::vector<FlowArc>& arcs = path_from(s, ways, node);
    return {WitnessShape::path,
            from_housing(s, port, walk(s.graph, s.region, arcs, {.from = port}))};
}

/// Where the drain's oil gets to when nobody closes anything, and what stops it there.
Witness where_it_ends(const Situation& s, Index port, Index node) {
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    search.begin_at(node);
    search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return resistance(s, arc, true) < unreachable;
    });
    return {WitnessShape::frontier,
            from_housing(s, port, frontier(s.graph, s.region, s.standing, search, true))};
}

/// The settings that a path needs and the file does not give.
std::vector<std::string> unknown_on(const Situation& s, const std::vector<FlowArc>& path) {
    std::vector<std::string> missing;
    for (const FlowArc& arc : path) {
        const Edge& edge = s.region.edges[arc.edge];
        if (std::isnan(edge.opening))
            missing.push_back(
                fmt::format("{}.setting", s.circuit().components[edge.component].path));
    }
    return missing;
}

Index housing_port(const Circuit& circuit, const Component& machine) {
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::drain) return port;
    return none;
}

void judge(const Situation& s, Docket& docket) {
    Ways known;
    Ways with_guesses;
    const Ways* guessed = &known;
    for (const Index c : s.region.components) {
        const Component& machine = s.circuit().components[c];
        const Part part = machine.kind->part;
        if (part != Part::pump && part != Part::actuator) continue;
        const Index port = housing_port(s.circuit(), machine);
        if (port == none) continue;
        if (known.pressure.empty()) {
            known = ways_to_reservoirs(s, false);
            const bool unknown =
                std::any_of(s.region.edges.begin(), s.region.edges.end(),
                            [](const Edge& edge) { return std::isnan(edge.opening); });
            if (unknown) {
                with_guesses = ways_to_reservoirs(s, true);
                guessed = &with_guesses;
            }
        }
        const Index node = s.graph.node_of(port);
        const double least = known.pressure[node];
        const bool path_known = least < unreachable;
        std::optional<double> limit;
        if (least > 0.0) limit = s.circuit().figure(machine, "case-pressure");
        Outcome outcome = Outcome::fail;
        if (path_known && (least == 0.0 || (limit && least <= *limit)))
            outcome = Outcome::pass;
        else if (path_known && !limit)
            outcome = Outcome::inconclusive;
        else if (!path_known && guessed->pressure[node] < unreachable)
            outcome = Outcome::inconclusive;
        Verdict* verdict = docket.record(s, ElementType::component, c, s.states, outcome);
        if (verdict == nullptr) continue;
        limit = s.circuit().figure(machine, "case-pressure");
        const std::string opening =
            path_known && least > 0.0 ? format_quantity(least, Dimension::pressure) : "";
        if (path_known) {
            verdict->witness = drain_way(s, known, port, node);
            verdict->measured = Measure{least, Dimension::pressure};
            if (limit) {
                verdict->required = Measure{*limit, Dimension::pressure};
                verdict->margin = Measure{*limit - least, Dimension::pressure};
            }
        }
        if (outcome == Outcome::pass) {
            verdict->message =
                least == 0.0
                    ? fmt::format("the housing of {} drains freely to a reservoir", machine.path)
                    : fmt::format(
                          "the housing of {} drains to a reservoir over {}, which "
                          "it bears",
                          machine.path, opening);
        } else if (path_known && !limit) {
            verdict->missing = {fmt::format("{}.case-pressure", machine.path)};
            verdict->message = fmt::format(
                "the drain of {} needs {} to open its way; what the housing bears is not given",
                machine.path, opening);
        } else if (path_known) {
            verdict->message =
                fmt::format("the drain of {} holds {}, more than the {} that its housing bears",
                            machine.path, opening, format_quantity(*limit, Dimension::pressure));
        } else if (outcome == Outcome::inconclusive) {
            verdict->witness = drain_way(s, *guessed, port, node);
            verdict->missing = unknown_on(s, path_from(s, *guessed, node));
            verdict->message = fmt::format(
                "the drain of {} leads over a valve whose opening pressure is not given",
                machine.path);
        } else {
            verdict->witness = where_it_ends(s, port, node);
            const bool closable =
                std::any_of(verdict->witness.steps.begin(), verdict->witness.steps.end(),
                            [](const Step& step) { return step.text == "can be closed"; });
            verdict->message = fmt::format("the housing of {} has no way to a reservoir{}",
                                           machine.path, closable ? " that nobody can close" : "");
        }
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K19)", .place = "5.4.1"},
    {.work = "common practice, no source", .place = "housings bear 2 to 3 bar"}};

}  // namespace

extern constinit const Rule case_drain_path{
    .info = {.id = "case-drain-path",
             .family = "Case drain",
             .question = "Does every housing drain reach a reservoir in every state through "
                         "nothing that can close or hold more pressure than the housing bears?",
             .why = "A housing that cannot drain takes the pressure of what leaks into it: the "
                    "shaft seal blows out and hot oil sprays, or the housing bursts.",
             .decided = "Over all ways to a reservoir the least sum of opening pressures, past no "
                        "unlocked hand valve and in every position of operated valves; a cooler "
                        "or filter element lets the oil pass.",
             .data = "drain, case-pressure, opening-pressure, setting, locked, joins",
             .subject = "each machine drained outside",
             .states = "running",
             .level = Level::error,
             .remedy = "Lead the drain to the reservoir by a line of its own without a valve, or "
                       "lock the valve open; take out the check or relief that holds too much.",
             .sources = sources},
    .judge = judge};

}  // namespace loopwright
