// For each line and each component with a place for a rating: the highest pressure that it can see.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include <loopwright/graph/ceilings.h>
#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/ratings.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr double unlimited = std::numeric_limits<double>::infinity();

/// What is asked, with the node where it sees the most.
struct Asked {
    Rated part = {};    ///< without its places
    Index port = none;  ///< none: nothing joins it
    Index node = none;
    std::optional<double> rating = {};
};

/// What a node sees with the missing settings taken for infinite and for nothing.
struct Seen {
    double most = 0.0;
    double least = 0.0;
};

/// All that is asked in a region. `ceiling`: of the nodes.
std::vector<Asked> all_asked(const Situation& s, const std::vector<double>& ceiling) {
    std::vector<Asked> all;
    all.reserve(s.region.lines.size() + s.region.components.size() + s.region.guests.size());
    for_each_rated(s, [&](const Rated& rated) {
        Asked& asked = all.emplace_back();
        asked.part = {.type = rated.type, .index = rated.index};
        asked.rating = rating_of(s.circuit(), rated);
        for (const RatedPlace& place : rated.places) {
            if (asked.port != none && ceiling[place.node] <= ceiling[asked.node]) continue;
            asked.port = place.port;
            asked.node = place.node;
        }
    });
    return all;
}

/// The settings that are missing in a region.
std::span<const std::string_view> unknown_settings(const Situation& s, Docket& docket) {
    std::vector<std::string_view> missing;
    Index last = none;
    for (const Edge& edge : s.region.edges) {
        if (edge.component == last || !has_unknown_setting(s.circuit(), edge)) continue;
        last = edge.component;
        const Component& component = s.circuit().components[edge.component];
        missing.push_back(docket.text(component.path, ".", setting_of(component)));
    }
    return docket.missing(missing);
}

Seen seen_at(const Asked& asked, const Ceilings& most, const Ceilings& least) {
    if (asked.node == none) return {};
    return {.most = most.ceiling[asked.node], .least = least.ceiling[asked.node]};
}

Outcome judge_one(const Asked& asked, const Seen& seen) {
    if (seen.least == unlimited) return Outcome::fail;
    if (seen.most == 0.0) return Outcome::pass;
    if (!asked.rating) return Outcome::inconclusive;
    if (seen.most <= *asked.rating) return Outcome::pass;
    return seen.least > *asked.rating ? Outcome::fail : Outcome::inconclusive;
}

/// What limits the pressure; where nothing does, the way by which something drives it there.
Witness witness_of(const Situation& s, Docket& docket, const Asked& asked,
                   const Ceilings& ceilings) {
    std::vector<Step>& steps = s.searches.steps();
    if (asked.node != none && std::isinf(ceilings.limit[asked.node]) &&
        ceilings.drive.reached(asked.node)) {
        std::vector<FlowArc>& arcs = s.searches.path();
        ceilings.drive.add_path_to(s.region, asked.node, arcs);
        const Index start = arcs.empty() ? asked.node : tail(s.region, arcs.front());
        add_walk(s.graph, s.region, arcs,
                 {.from = port_on(s.graph, s.region, start, none), .to = asked.port}, steps);
        return docket.witness(WitnessShape::path, steps);
    }
    steps.push_back({asked.part.type, asked.part.index, none, none, "is asked"});
    const Index relief = asked.node == none ? none : ceilings.limited_by[asked.node];
    if (relief != none)
        steps.push_back({ElementType::component, s.region.edges[relief].component, none, none,
                         "limits its pressure"});
    return docket.witness(WitnessShape::set, steps);
}

void fill_in(const Situation& s, Docket& docket, Verdict& verdict, const Asked& asked,
             const Seen& seen, const Ceilings& ceilings) {
    const std::string_view path = path_of(s.circuit(), asked.part);
    const auto say = [&](double pressure) { return docket.told(pressure, Dimension::pressure); };
    verdict.witness = witness_of(s, docket, asked, ceilings);
    if (seen.least < unlimited && seen.most < unlimited) {
        const double told = verdict.outcome == Outcome::fail ? seen.least : seen.most;
        Figures figures{.measured = {told, Dimension::pressure}};
        if (asked.rating) {
            figures.required = Measure{*asked.rating, Dimension::pressure};
            figures.margin = Measure{*asked.rating - told, Dimension::pressure};
        }
        verdict.figures = docket.figures(figures);
    }
    if (verdict.outcome == Outcome::pass) {
        verdict.message = seen.most == 0.0 ? docket.text("nothing puts ", path, " under pressure")
                                           : docket.text(path, " sees ", say(seen.most),
                                                         " at most, which it bears");
    } else if (seen.least == unlimited) {
        verdict.message = docket.text("nothing limits the pressure in ", path);
    } else if (verdict.outcome == Outcome::fail) {
        verdict.message = docket.text(path, " can see ", say(seen.least), ", more than the ",
                                      say(*asked.rating), " that it is rated for");
    } else if (!asked.rating) {
        const std::string_view datum[] = {docket.text(path, ".", rating_attribute(asked.part))};
        verdict.missing = docket.missing(datum);
        verdict.message = docket.text("what ", path, " is rated for is not given");
    } else {
        verdict.missing = unknown_settings(s, docket);
        verdict.message = docket.text("what ", path, " sees hangs on settings that are not given");
    }
}

void record(const Situation& s, Docket& docket, const Asked& asked, StateSet states,
            const Seen& seen, const Ceilings& ceilings) {
    Verdict* verdict = docket.record(s, asked.part.type, asked.part.index, states,
                                     judge_one(asked, seen), Level::error, seen.most);
    if (verdict != nullptr) fill_in(s, docket, *verdict, asked, seen, ceilings);
}

bool any_unknown(const Situation& s) {
    return std::any_of(s.region.edges.begin(), s.region.edges.end(),
                       [&](const Edge& edge) { return has_unknown_setting(s.circuit(), edge); });
}

/// Whether a two-way pump delivers past all loops: situations are not told apart by its direction.
bool direction_matters(const Situation& s) {
    return std::any_of(s.region.machines.begin(), s.region.machines.end(), [&](Index e) {
        const Edge& edge = s.region.edges[e];
        return edge.part == Part::pump && edge.both_ways && s.loops.loop_of[e] == none;
    });
}

/// What bounds all situations is borne.
bool judge_alike(const Situation& s, Docket& docket) {
    if (any_unknown(s) || direction_matters(s)) return false;
    const Ceilings bound = find_ceilings(s, any_of_alike(s));
    const auto seen = [&](const Asked& asked) { return seen_at(asked, bound, bound); };
    const std::vector<Asked> all = all_asked(s, bound.ceiling);
    if (!std::all_of(all.begin(), all.end(), [&](const Asked& asked) {
            return judge_one(asked, seen(asked)) == Outcome::pass;
        }))
        return false;
    for (const Asked& asked : all) record(s, docket, asked, s.alike.states, seen(asked), bound);
    return true;
}

struct Found {
    Ceilings most;
    Ceilings least;
};

Found find(const Situation& s, Direction direction) {
    Found found{.most = find_ceilings(s, case_of(s, UnknownSetting::limits_nothing, direction)),
                .least = {}};
    found.least =
        any_unknown(s) ? find_ceilings(s, case_of(s, UnknownSetting::zero, direction)) : found.most;
    return found;
}

void record_all(const Situation& s, Docket& docket, const Found& found, StateSet states) {
    for (const Asked& asked : all_asked(s, found.most.ceiling))
        record(s, docket, asked, states, seen_at(asked, found.most, found.least), found.most);
}

/// Whether a pump of a loop makes a pressure of its own, beside what its sides have.
bool pumps_matter(const Situation& s, const Found& found) {
    return std::isinf(found.most.charge) ||
           std::any_of(s.sides.begin(), s.sides.end(),
                       [](const JudgedSide& side) { return side.role == SideRole::intermediate; });
}

void judge(const Situation& s, Docket& docket) {
    const Found found = find(s, s.direction());
    if (!direction_matters(s) && !pumps_matter(s, found)) {
        record_all(s, docket, found, s.states);
        return;
    }
    // What stands alike need not flow alike.
    const StateSet forward = without(s.states & moving_states, reverse_states);
    const StateSet reverse = s.states & reverse_states;
    const StateSet rest = without(s.states, moving_states);
    if (forward != 0) record_all(s, docket, find(s, Direction::forward), forward);
    if (reverse != 0) record_all(s, docket, find(s, Direction::reverse), reverse);
    if (rest != 0) record_all(s, docket, find(s, Direction::none), rest);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K01, K06 and K07)", .place = "5.2.2"}};
constexpr std::string_view follows[] = {"crossport-relief", "charge-relief", "charge-vented",
                                        "charge-supply",    "blocked-pump",  "case-drain-path"};

}  // namespace

extern constinit const Rule pressure_rating{
    .info = {.id = "pressure-rating",
             .family = "High-pressure protection",
             .question = "Is every component, line and hose rated for the highest pressure that it "
                         "can see?",
             .why = "What is weaker than the pressure that its relief valve lets through bursts: "
                    "oil under pressure is injected through skin, hot oil sprays, the load goes.",
             .decided =
                 "For each node the least pressure at which oil gets away over what nobody can "
                 "shut: reliefs at their full flow (their setting where that is not given), over "
                 "what they discharge into; sides that are not high stand at the pressure of the "
                 "charge line. From pumps, loads and accumulators that is handed on by every "
                 "open way; reducing valves limit it.",
             .data = "rating, max-pressure, setting, full-flow-pressure, opening-pressure, joins",
             .subject = "each line and each component that has a rating",
             .states = "running",
             .level = Level::error,
             .remedy = "Set the relief valve lower, fit parts that bear more, or limit the "
                       "pressure where it is not limited.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
