// For each line and each component with a place for a rating: the highest pressure that it can see.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include <loopwright/graph/ceilings.h>
#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr double unlimited = std::numeric_limits<double>::infinity();

/// What is asked, with the node where it sees the most.
struct Rated {
    ElementType type = ElementType::component;
    Index index = none;
    Index port = none;  ///< none: nothing joins it
    Index node = none;
    std::optional<double> rating = {};
};

/// What a node sees with the missing settings taken for infinite and for nothing.
struct Seen {
    double most = 0.0;
    double least = 0.0;
};

/// Whether a component's `max-pressure` is what it bears; that of a valve that reduces is what it
/// hands on.
bool has_rating(const Circuit& circuit, const Component& component) {
    if (component.kind->part == Part::plumbing || component.kind->part == Part::instrument) {
        const auto passages = circuit.passages_of(component);
        if (std::any_of(passages.begin(), passages.end(), [](const Passage& passage) {
                return passage.passage == PassageClass::reduced;
            }))
            return false;
    }
    const auto& attributes = component.kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(),
                       [](const AttributeSpec& spec) { return spec.name == "max-pressure"; });
}

/// The first port of a component that a line joins in some region.
Index first_joined(const FlowGraph& graph, const Component& component) {
    for (Index port = component.ports.begin; port < component.ports.end; ++port)
        if (!graph.lines_of(port).empty() && graph.node_of(port) != none) return port;
    return none;
}

/// All that is asked in a region. `ceiling`: of the nodes.
std::vector<Rated> all_rated(const Situation& s, const std::vector<double>& ceiling) {
    const Circuit& circuit = s.circuit();
    std::vector<Rated> all;
    all.reserve(s.region.lines.size() + s.region.components.size() + s.region.guests.size());
    for (const auto& [line, port, node] : s.region.lines) {
        const auto& rating = circuit.lines[line].rating;
        all.push_back({.type = ElementType::line,
                       .index = line,
                       .port = port,
                       .node = node,
                       .rating = rating ? std::optional(rating->si()) : std::nullopt});
    }
    const auto figure = [&](Index c) {
        return circuit.figure(circuit.components[c], "max-pressure");
    };
    for (const Index c : s.region.components) {
        const Component& component = circuit.components[c];
        if (!has_rating(circuit, component)) continue;
        Index highest = none;
        for (Index port = component.ports.begin; port < component.ports.end; ++port) {
            if (circuit.ports[port].use == PortUse::drain || s.graph.lines_of(port).empty())
                continue;
            const Index node = s.graph.node_of(port);
            if (highest == none || ceiling[node] > ceiling[s.graph.node_of(highest)])
                highest = port;
        }
        all.push_back({.index = c,
                       .port = highest,
                       .node = highest == none ? none : s.graph.node_of(highest),
                       .rating = figure(c)});
    }
    // A coupling that is apart may stand in two regions: one port decides.
    for (const Index port : s.region.guests) {
        const Index c = circuit.ports[port].component;
        if (has_rating(circuit, circuit.components[c]) &&
            first_joined(s.graph, circuit.components[c]) == port)
            all.push_back(
                {.index = c, .port = port, .node = s.graph.node_of(port), .rating = figure(c)});
    }
    return all;
}

std::string_view path_of(const Situation& s, const Rated& rated) {
    return rated.type == ElementType::line ? s.circuit().lines[rated.index].path
                                           : s.circuit().components[rated.index].path;
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

Seen seen_at(const Rated& rated, const Ceilings& most, const Ceilings& least) {
    if (rated.node == none) return {};
    return {.most = most.ceiling[rated.node], .least = least.ceiling[rated.node]};
}

Outcome judge_one(const Rated& rated, const Seen& seen) {
    if (seen.least == unlimited) return Outcome::fail;
    if (seen.most == 0.0) return Outcome::pass;
    if (!rated.rating) return Outcome::inconclusive;
    if (seen.most <= *rated.rating) return Outcome::pass;
    return seen.least > *rated.rating ? Outcome::fail : Outcome::inconclusive;
}

/// What limits the pressure; where nothing does, the way by which something drives it there.
Witness witness_of(const Situation& s, Docket& docket, const Rated& rated,
                   const Ceilings& ceilings) {
    std::vector<Step>& steps = s.searches.steps();
    if (rated.node != none && std::isinf(ceilings.limit[rated.node]) &&
        ceilings.drive.reached(rated.node)) {
        std::vector<FlowArc>& arcs = s.searches.path();
        ceilings.drive.add_path_to(s.region, rated.node, arcs);
        const Index start = arcs.empty() ? rated.node : tail(s.region, arcs.front());
        add_walk(s.graph, s.region, arcs,
                 {.from = port_on(s.graph, s.region, start, none), .to = rated.port}, steps);
        return docket.witness(WitnessShape::path, steps);
    }
    steps.push_back({rated.type, rated.index, none, none, "is asked"});
    const Index relief = rated.node == none ? none : ceilings.limited_by[rated.node];
    if (relief != none)
        steps.push_back({ElementType::component, s.region.edges[relief].component, none, none,
                         "limits its pressure"});
    return docket.witness(WitnessShape::set, steps);
}

void fill_in(const Situation& s, Docket& docket, Verdict& verdict, const Rated& rated,
             const Seen& seen, const Ceilings& ceilings) {
    const std::string_view path = path_of(s, rated);
    const auto say = [&](double pressure) { return docket.told(pressure, Dimension::pressure); };
    verdict.witness = witness_of(s, docket, rated, ceilings);
    if (seen.least < unlimited && seen.most < unlimited) {
        const double told = verdict.outcome == Outcome::fail ? seen.least : seen.most;
        Figures figures{.measured = {told, Dimension::pressure}};
        if (rated.rating) {
            figures.required = Measure{*rated.rating, Dimension::pressure};
            figures.margin = Measure{*rated.rating - told, Dimension::pressure};
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
                                      say(*rated.rating), " that it is rated for");
    } else if (!rated.rating) {
        const std::string_view datum[] = {
            docket.text(path, rated.type == ElementType::line ? ".rating" : ".max-pressure")};
        verdict.missing = docket.missing(datum);
        verdict.message = docket.text("what ", path, " is rated for is not given");
    } else {
        verdict.missing = unknown_settings(s, docket);
        verdict.message = docket.text("what ", path, " sees hangs on settings that are not given");
    }
}

void record(const Situation& s, Docket& docket, const Rated& rated, StateSet states,
            const Seen& seen, const Ceilings& ceilings) {
    Verdict* verdict = docket.record(s, rated.type, rated.index, states, judge_one(rated, seen),
                                     Level::error, seen.most);
    if (verdict != nullptr) fill_in(s, docket, *verdict, rated, seen, ceilings);
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
    const auto seen = [&](const Rated& rated) { return seen_at(rated, bound, bound); };
    const std::vector<Rated> all = all_rated(s, bound.ceiling);
    if (!std::all_of(all.begin(), all.end(), [&](const Rated& rated) {
            return judge_one(rated, seen(rated)) == Outcome::pass;
        }))
        return false;
    for (const Rated& rated : all) record(s, docket, rated, s.alike.states, seen(rated), bound);
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
    for (const Rated& rated : all_rated(s, found.most.ceiling))
        record(s, docket, rated, states, seen_at(rated, found.most, found.least), found.most);
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
                                        "charge-supply", "blocked-pump"};

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
