// For each housing drained outside: the way to a reservoir that takes the least pressure, past
// nothing that can close. One search against the oil from all reservoirs serves all housings.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <queue>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr double unreachable = std::numeric_limits<double>::infinity();

/// Pressure that a drain's oil needs to get over the arc; `unreachable` where it cannot, or where
/// somebody can close it.
double resistance(const Situation& s, const Standing& standing, const FlowArc& flow,
                  bool guess_unknown) {
    const Edge& edge = s.region.edges[flow.edge];
    if (!stands_open(standing, flow)) return unreachable;
    switch (edge.passage_class) {
        case PassageClass::element:
        case PassageClass::metering:
        case PassageClass::divider:
            return 0.0;
        case PassageClass::switched:
            return edge.shift == Shift::hand && !edge.locked ? unreachable : 0.0;
        case PassageClass::one_way:
        case PassageClass::pressure_opened:
            if (edge.bypass) return unreachable;  // its element is open anyway
            if (std::isnan(edge.opening)) return guess_unknown ? 0.0 : unreachable;
            return edge.opening;
        case PassageClass::joined:
        case PassageClass::reduced:
        case PassageClass::displacement:
        case PassageClass::leakage:
            break;
    }
    return unreachable;
}

struct Ways {
    std::vector<double> pressure = {};  ///< for each node, to the nearest reservoir
    std::vector<Index> next = {};       ///< slot of the arc it is left by, as in Search::way
};

/// Against the oil from all reservoirs by what takes no pressure at all: enough for most housings.
SearchPool::Lease free_ways(const Situation& s, const Standing& standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : s.region.reservoirs) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return resistance(s, standing, turned_round(s.region, arc), false) == 0.0;
    });
    return search;
}

/// Dijkstra's method against the oil, from all reservoirs at once. Hardly a passage takes pressure,
/// so what lies on the same pressure is gone through first, and the heap holds the rest.
Ways ways_to_reservoirs(const Situation& s, bool guess_unknown) {
    Ways ways;
    ways.pressure.assign(s.region.node_count, unreachable);
    ways.next.assign(s.region.node_count, none);
    using Entry = std::pair<double, Index>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> higher;
    std::vector<Index> level(s.region.reservoirs.begin(), s.region.reservoirs.end());
    for (const Index node : level) {
        ways.pressure[node] = 0.0;
        ways.next[node] = Search::start;
    }
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
                const double sum = pressure + resistance(s, s.standing, turned_round(s.region, arc),
                                                         guess_unknown);
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

const std::vector<FlowArc>& path_from(const Situation& s, std::span<const Index> next, Index node) {
    std::vector<FlowArc>& path = s.searches.path();
    while (next[node] != Search::start) {
        const FlowArc flow = turned_round(s.region, s.region.arcs[next[node]]);
        path.push_back(flow);
        node = flow.to;
    }
    return path;
}

std::vector<Step>& steps_from_housing(const Situation& s, Index port) {
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back(
        {ElementType::component, s.circuit().ports[port].component, none, port, "housing"});
    return steps;
}

Witness drain_way(const Situation& s, Docket& docket, std::span<const Index> next, Index port,
                  Index node) {
    std::vector<Step>& steps = steps_from_housing(s, port);
    add_walk(s.graph, s.region, path_from(s, next, node), {.from = port}, steps);
    return docket.witness(WitnessShape::path, steps);
}

/// Where the drain's oil gets to when nobody closes anything, and what stops it there.
Witness where_it_ends(const Situation& s, Docket& docket, Index port, Index node) {
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    search.begin_at(node);
    search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return resistance(s, s.standing, arc, true) < unreachable;
    });
    std::vector<Step>& steps = steps_from_housing(s, port);
    add_frontier(s.graph, s.region, s.standing, search, true, steps);
    return docket.witness(WitnessShape::frontier, steps);
}

/// The settings that a path needs and the file does not give.
std::span<const std::string_view> unknown_on(const Situation& s, Docket& docket,
                                             const std::vector<FlowArc>& path) {
    std::vector<std::string_view> missing;
    for (const FlowArc& arc : path) {
        const Edge& edge = s.region.edges[arc.edge];
        if (std::isnan(edge.opening))
            missing.push_back(docket.text(s.circuit().components[edge.component].path, ".setting"));
    }
    return docket.missing(missing);
}

Index housing_port(const Circuit& circuit, const Component& machine) {
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::drain) return port;
    return none;
}

/// The ways from all housings of a situation, found as they are asked for.
class Drains {
  public:
    explicit Drains(const Situation& s) : s_(s), free_(free_ways(s, s.standing)) {}

    /// To a reservoir; `unreachable` where what is known leads to none.
    double least(Index node) { return free_->reached(node) ? 0.0 : known().pressure[node]; }
    std::span<const Index> next(Index node) {
        return free_->reached(node) ? free_->way : known().next;
    }

    /// With all openings that are not given taken for nothing.
    const Ways& guessed() {
        if (guessed_.pressure.empty()) guessed_ = ways_to_reservoirs(s_, true);
        return guessed_;
    }

  private:
    const Ways& known() {
        if (known_.pressure.empty()) known_ = ways_to_reservoirs(s_, false);
        return known_;
    }

    const Situation& s_;
    SearchPool::Lease free_;
    Ways known_;
    Ways guessed_;
};

void pass_free(const Situation& s, Docket& docket, StateSet states, Index c, Index port,
               std::span<const Index> next) {
    Verdict* verdict = docket.record(s, ElementType::component, c, states, Outcome::pass);
    if (verdict == nullptr) return;
    const Component& machine = s.circuit().components[c];
    Figures figures{.measured = {0.0, Dimension::pressure}};
    if (const std::optional<double> limit = s.circuit().figure(machine, "case-pressure"))
        figures.required = figures.margin = Measure{*limit, Dimension::pressure};
    verdict->figures = docket.figures(figures);
    verdict->witness = drain_way(s, docket, next, port, s.graph.node_of(port));
    verdict->message =
        docket.text("the housing of ", machine.path, " drains freely to a reservoir");
}

void judge_one(const Situation& s, Docket& docket, Drains& drains, Index c, Index port) {
    const Component& machine = s.circuit().components[c];
    const Index node = s.graph.node_of(port);
    const double least = drains.least(node);
    if (least == 0.0) {
        pass_free(s, docket, s.states, c, port, drains.next(node));
        return;
    }
    const bool path_known = least < unreachable;
    const std::optional<double> limit = s.circuit().figure(machine, "case-pressure");
    Outcome outcome = Outcome::fail;
    if (path_known && limit && least <= *limit)
        outcome = Outcome::pass;
    else if (path_known && !limit)
        outcome = Outcome::inconclusive;
    else if (!path_known && drains.guessed().pressure[node] < unreachable)
        outcome = Outcome::inconclusive;
    Verdict* verdict = docket.record(s, ElementType::component, c, s.states, outcome);
    if (verdict == nullptr) return;
    const std::string_view opening = path_known ? docket.told(least, Dimension::pressure) : "";
    if (path_known) {
        verdict->witness = drain_way(s, docket, drains.next(node), port, node);
        Figures figures{.measured = {least, Dimension::pressure}};
        if (limit) {
            figures.required = Measure{*limit, Dimension::pressure};
            figures.margin = Measure{*limit - least, Dimension::pressure};
        }
        verdict->figures = docket.figures(figures);
    }
    if (outcome == Outcome::pass) {
        verdict->message = docket.text("the housing of ", machine.path,
                                       " drains to a reservoir over ", opening, ", which it bears");
    } else if (path_known && !limit) {
        const std::string_view datum = docket.text(machine.path, ".case-pressure");
        verdict->missing = docket.missing({&datum, 1});
        verdict->message = docket.text("the drain of ", machine.path, " needs ", opening,
                                       " to open its way; what the housing bears is not given");
    } else if (path_known) {
        verdict->message =
            docket.text("the drain of ", machine.path, " holds ", opening, ", more than the ",
                        docket.told(*limit, Dimension::pressure), " that its housing bears");
    } else if (outcome == Outcome::inconclusive) {
        const Ways& guessed = drains.guessed();
        verdict->witness = drain_way(s, docket, guessed.next, port, node);
        verdict->missing = unknown_on(s, docket, path_from(s, guessed.next, node));
        verdict->message = docket.text("the drain of ", machine.path,
                                       " leads over a valve whose opening pressure is not given");
    } else {
        verdict->witness = where_it_ends(s, docket, port, node);
        const bool closable =
            std::any_of(verdict->witness.steps.begin(), verdict->witness.steps.end(),
                        [](const Step& step) { return step.text == "can be closed"; });
        verdict->message =
            docket.text("the housing of ", machine.path, " has no way to a reservoir",
                        closable ? " that nobody can close" : "");
    }
}

/// Every machine of the region that is drained outside, with one of its case ports.
template <typename Visit>
void for_each_housing(const Situation& s, Visit visit) {
    for (const Index c : s.region.components) {
        const Component& machine = s.circuit().components[c];
        const Part part = s.graph.part(c);
        if (part != Part::pump && part != Part::actuator) continue;
        const Index port = housing_port(s.circuit(), machine);
        if (port != none) visit(c, port);
    }
}

/// A way that is free while every flushing valve is shut stays so.
bool judge_alike(const Situation& s, Docket& docket) {
    boost::container::small_vector<std::pair<Index, Index>, 8> housings;
    for_each_housing(s, [&](Index c, Index port) { housings.emplace_back(c, port); });
    if (housings.empty()) return true;
    const SearchPool::Lease free = free_ways(s, *s.alike.shut);
    if (!std::all_of(housings.begin(), housings.end(),
                     [&](const auto& one) { return free->reached(s.graph.node_of(one.second)); }))
        return false;
    for (const auto& [c, port] : housings) pass_free(s, docket, s.alike.states, c, port, free->way);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    std::optional<Drains> drains;
    for_each_housing(s, [&](Index c, Index port) {
        if (!drains) drains.emplace(s);
        judge_one(s, docket, *drains, c, port);
    });
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K19)", .place = "5.4.1"},
    {.work = "common practice, no source", .place = "housings bear 2 to 3 bar"}};
constexpr std::string_view follows[] = {"missing-drain-port"};

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
             .states = "running and towing",
             .level = Level::error,
             .remedy = "Lead the drain to the reservoir by a line of its own without a valve, or "
                       "lock the valve open; take out the check or relief that holds too much.",
             .sources = sources,
             .follows = follows},
    .asked = running_states | bit(State::towing),
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
