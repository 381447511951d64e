// For each loop: can the pressure be told on both sides, on the charge line and in a housing?
#include <algorithm>
#include <optional>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/pressure_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool tells(const Circuit& circuit, Index port) {
    return shows_pressure(circuit, circuit.components[circuit.ports[port].component]);
}

/// For each node the port of an instrument there, else none.
std::vector<Index> instruments(const Situation& s) {
    std::vector<Index> at(s.region.node_count, none);
    for (const Index port : s.region.guests) {
        Index& there = at[s.graph.node_of(port)];
        if (there == none && tells(s.circuit(), port)) there = port;
    }
    return at;
}

/// What a loop has at a place: an instrument's port, none, or nothing to have one on.
struct Place {
    bool there = true;
    Index instrument = none;

    bool lacking() const { return there && instrument == none; }
};

Place on_side(const Situation& s, const std::vector<Index>& at, const Loop& loop, High letter) {
    for (const LoopSide& side : s.loops.sides_of(loop)) {
        if (side.role != SideRole::main || side.letter != letter) continue;
        for (const Index node : s.loops.nodes_of(side))
            if (at[node] != none) return {.instrument = at[node]};
    }
    return {};
}

/// On the line that a source delivers into, up to what holds pressure.
Index on_line_of(const Situation& s, const std::vector<Index>& at, const ChargePump& source) {
    const auto line = s.searches.take(s.region.node_count);
    line->begin_at(source.outlet);
    s.graph.work += line->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        return (edge.passage_class == PassageClass::element || edge.shift == Shift::hand) &&
               stands_open(s.standing, arc) && s.feeds.vented[arc.to] == 0 &&
               s.loops.sides_at(arc.to).empty();
    });
    const auto found = std::find_if(line->order.begin(), line->order.end(),
                                    [&](Index node) { return at[node] != none; });
    return found == line->order.end() ? none : at[*found];
}

/// None is asked for where nothing feeds the loop, or what does delivers straight onto a side.
Place on_charge_line(const Situation& s, const std::vector<Index>& at, Index loop) {
    Place place{.there = false};
    for (const ChargePump& source : s.feeds.pumps) {
        const auto fed = s.feeds.feeds(source);
        if (std::find(fed.begin(), fed.end(), loop) == fed.end() ||
            !s.loops.sides_at(source.outlet).empty())
            continue;
        place.there = true;
        place.instrument = on_line_of(s, at, source);
        if (place.instrument != none) break;
    }
    return place;
}

/// Over lines and what joins them, ending at reservoirs.
Index in_pipe_of(const Situation& s, Index port) {
    const Circuit& circuit = s.circuit();
    boost::container::small_vector<Index, 16> pipe{port};
    const auto add = [&](Index next) {
        if (std::find(pipe.begin(), pipe.end(), next) == pipe.end()) pipe.push_back(next);
    };
    for (std::size_t i = 0; i < pipe.size(); ++i) {
        if (tells(circuit, pipe[i])) return pipe[i];
        for (const Index line : s.graph.lines_of(pipe[i]))
            for (const Index next : circuit.ports_of(circuit.lines[line])) add(next);
        const Component& component = circuit.components[circuit.ports[pipe[i]].component];
        if (component.kind->part == Part::reservoir) continue;
        for (const Passage& passage : circuit.passages_of(component)) {
            if (passage.passage != PassageClass::joined) continue;
            if (passage.from == pipe[i]) add(passage.to);
            if (passage.to == pipe[i]) add(passage.from);
        }
    }
    return none;
}

Place at_a_housing(const Situation& s, const std::vector<Index>& at, const Loop& loop) {
    const Circuit& circuit = s.circuit();
    Place place{.there = false};
    for (const auto& machines : {s.loops.pumps_of(loop), s.loops.actuators_of(loop)})
        for (const Index c : machines) {
            const Range ports = circuit.components[c].ports;
            for (Index port = ports.begin; port < ports.end; ++port) {
                if (circuit.ports[port].use != PortUse::drain) continue;
                place.there = true;
                const Index node = s.graph.node_of(port);
                place.instrument =
                    s.region.is_reservoir[node] != 0 ? in_pipe_of(s, port) : at[node];
                if (place.instrument != none) return place;
            }
        }
    return place;
}

void judge_loop(const Situation& s, Docket& docket, const std::vector<Index>& at, Index i,
                StateSet states) {
    const Loop& loop = s.loops.loops[i];
    const std::pair<std::string_view, Place> places[] = {
        {"side A", on_side(s, at, loop, High::a)},
        {"side B", on_side(s, at, loop, High::b)},
        {"the charge line", on_charge_line(s, at, i)},
        {"a housing", at_a_housing(s, at, loop)}};
    const bool sound = std::none_of(std::begin(places), std::end(places),
                                    [](const auto& one) { return one.second.lacking(); });
    Verdict* verdict = docket.record(s, ElementType::loop, loop.first_pump, states,
                                     sound ? Outcome::pass : Outcome::fail, Level::note);
    if (verdict == nullptr) return;
    std::string lacking;
    std::vector<Step>& steps = s.searches.steps();
    for (const auto& [where, place] : places) {
        if (place.instrument != none)
            steps.push_back({ElementType::component, s.circuit().ports[place.instrument].component,
                             none, none, where});
        else if (place.there)
            lacking += (lacking.empty() ? "" : ", ") + std::string(where);
    }
    if (steps.empty())
        steps.push_back({ElementType::component, loop.first_pump, none, none, "not measured"});
    verdict->witness = docket.witness(WitnessShape::set, steps);
    verdict->message = sound ? std::string_view(
                                   "the pressure can be told on both sides, on the charge line and "
                                   "in a housing")
                             : docket.text("the pressure cannot be told on: ", lacking);
}

bool judge_all(const Situation& s, Docket& docket, std::span<const StateSet> states) {
    std::optional<std::vector<Index>> at;
    for (Index i = 0; i < s.loops.loops.size(); ++i) {
        const Loop& loop = s.loops.loops[i];
        if (!s.judges(loop.first_pump) || loop.shorted || states[i] == 0) continue;
        if (!at) at = instruments(s);
        judge_loop(s, docket, *at, i, states[i]);
    }
    return true;
}

/// Sides and sources are the same wherever the feeds are, and so are the lines of the sources:
/// hand valves and elements do not shift.
bool judge_alike(const Situation& s, Docket& docket) {
    return s.alike.same_feeds && judge_all(s, docket, s.alike.loop_states);
}

void judge(const Situation& s, Docket& docket) { judge_all(s, docket, s.loop_states); }

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K38)", .place = "5.4.8"}};

}  // namespace

extern constinit const Rule test_points{
    .info = {.id = "test-points",
             .family = "Control and stopping",
             .question = "Can the pressure be told on each side, the charge line and a housing?",
             .why = "Without a measuring point a fault is searched for by loosening fittings under "
                    "pressure, or not at all.",
             .decided = "On each main side, on the line of a pump that feeds the loop and at a "
                        "case port of one of its machines stands a measuring point, a gauge or a "
                        "pressure sensor.",
             .data = "joins, what sensors measure",
             .subject = "each loop",
             .states = "running",
             .level = Level::note,
             .remedy = "Fit a measuring point where it is missing.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
