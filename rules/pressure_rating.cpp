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

/// The ceilings with the missing settings taken for infinite and for nothing.
struct Found {
    Ceilings most;
    std::optional<Ceilings> other;  ///< by the second reading; nothing where no setting is missing

    const Ceilings& least() const { return other ? *other : most; }
};

/// What is asked, with the highest that any of its places sees by both readings.
struct Asked {
    Rated part = {};  ///< without its places
    std::optional<double> rating = {};
    RatedPlace place = {};  ///< where it sees the most, by the reading that decides; none: nowhere
    double most = 0.0;
    double least = 0.0;
};

RatedPlace highest(std::span<const RatedPlace> places, const Ceilings& ceilings) {
    RatedPlace found;
    for (const RatedPlace& place : places)
        if (found.node == none || ceilings.ceiling[place.node] > ceilings.ceiling[found.node])
            found = place;
    return found;
}

Outcome judge_one(const Asked& asked) {
    if (asked.least == unlimited) return Outcome::fail;
    if (asked.most == 0.0) return Outcome::pass;
    if (!asked.rating) return Outcome::inconclusive;
    if (asked.most <= *asked.rating) return Outcome::pass;
    return asked.least > *asked.rating ? Outcome::fail : Outcome::inconclusive;
}

/// All that is asked in a region.
std::vector<Asked> all_asked(const Situation& s, const Found& found) {
    std::vector<Asked> all;
    all.reserve(s.region.lines.size() + s.region.components.size() + s.region.guests.size());
    for_each_rated(s, [&](const Rated& rated) {
        Asked& asked = all.emplace_back();
        asked.part = {.type = rated.type, .index = rated.index};
        asked.rating = rating_of(s.circuit(), rated);
        if (rated.places.empty()) return;
        const RatedPlace least = highest(rated.places, found.least());
        asked.place = highest(rated.places, found.most);
        asked.most = found.most.ceiling[asked.place.node];
        asked.least = found.least().ceiling[least.node];
        if (judge_one(asked) == Outcome::fail) asked.place = least;
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

/// What limits the pressure; where nothing does, the way by which something drives it there.
Witness witness_of(const Situation& s, Docket& docket, const Asked& asked,
                   const Ceilings& ceilings) {
    std::vector<Step>& steps = s.searches.steps();
    const auto [port, node] = asked.place;
    if (node != none && std::isinf(ceilings.limit[node]) && ceilings.drive.reached(node)) {
        std::vector<FlowArc>& arcs = s.searches.path();
        ceilings.drive.add_path_to(s.region, node, arcs);
        const Index start = arcs.empty() ? node : tail(s.region, arcs.front());
        add_walk(s.graph, s.region, arcs,
                 {.from = port_on(s.graph, s.region, start, none), .to = port}, steps);
        return docket.witness(WitnessShape::path, steps);
    }
    steps.push_back({asked.part.type, asked.part.index, none, none, "is asked"});
    const Index relief = node == none ? none : ceilings.limited_by[node];
    if (relief != none)
        steps.push_back({ElementType::component, s.region.edges[relief].component, none, none,
                         "limits its pressure"});
    return docket.witness(WitnessShape::set, steps);
}

void fill_in(const Situation& s, Docket& docket, Verdict& verdict, const Asked& asked,
             const Ceilings& ceilings) {
    const std::string_view path = path_of(s.circuit(), asked.part);
    const auto say = [&](double pressure) { return docket.told(pressure, Dimension::pressure); };
    verdict.witness = witness_of(s, docket, asked, ceilings);
    if (asked.least < unlimited && asked.most < unlimited) {
        const double told = verdict.outcome == Outcome::fail ? asked.least : asked.most;
        Figures figures{.measured = {told, Dimension::pressure}};
        if (asked.rating) {
            figures.required = Measure{*asked.rating, Dimension::pressure};
            figures.margin = Measure{*asked.rating - told, Dimension::pressure};
        }
        verdict.figures = docket.figures(figures);
    }
    if (verdict.outcome == Outcome::pass) {
        verdict.message = asked.most == 0.0 ? docket.text("nothing puts ", path, " under pressure")
                                            : docket.text(path, " sees ", say(asked.most),
                                                          " at most, which it bears");
    } else if (asked.least == unlimited) {
        verdict.message = docket.text("nothing limits the pressure in ", path);
    } else if (verdict.outcome == Outcome::fail) {
        verdict.message = docket.text(path, " can see ", say(asked.least), ", more than the ",
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
            const Found& found) {
    const Outcome outcome = judge_one(asked);
    Verdict* verdict = docket.record(s, asked.part.type, asked.part.index, states, outcome,
                                     Level::error, asked.most);
    if (verdict != nullptr)
        fill_in(s, docket, *verdict, asked, outcome == Outcome::fail ? found.least() : found.most);
}

bool any_unknown(const Situation& s) {
    return std::any_of(s.region.edges.begin(), s.region.edges.end(),
                       [&](const Edge& edge) { return has_unknown_setting(s.circuit(), edge); });
}

/// Whether a two-way pump delivers past all loops with sides: situations are not told apart by its
/// direction.
bool direction_matters(const Situation& s) {
    return std::any_of(s.region.machines.begin(), s.region.machines.end(), [&](Index e) {
        const Edge& edge = s.region.edges[e];
        const Index loop = s.loops.loop_of[e];
        return edge.part == Part::pump && edge.both_ways &&
               (loop == none || s.loops.loops[loop].shorted);
    });
}

/// What bounds all situations is borne.
bool judge_alike(const Situation& s, Docket& docket) {
    if (any_unknown(s) || direction_matters(s)) return false;
    const Found found{.most = find_ceilings(s, any_of_alike(s)), .other = {}};
    const std::vector<Asked> all = all_asked(s, found);
    if (!std::all_of(all.begin(), all.end(),
                     [](const Asked& asked) { return judge_one(asked) == Outcome::pass; }))
        return false;
    for (const Asked& asked : all) record(s, docket, asked, s.alike.states, found);
    return true;
}

Found find(const Situation& s, Direction direction) {
    Found found{.most = find_ceilings(s, case_of(s, UnknownSetting::limits_nothing, direction)),
                .other = {}};
    if (any_unknown(s)) found.other = find_ceilings(s, case_of(s, UnknownSetting::zero, direction));
    return found;
}

void record_all(const Situation& s, Docket& docket, const Found& found, StateSet states) {
    for (const Asked& asked : all_asked(s, found)) record(s, docket, asked, states, found);
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
