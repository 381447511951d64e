// For each pump that turns outside the loops: does its oil find a way out, or a relief valve? One
// search against the oil, from the reservoirs and back over reliefs too, answers for most pumps:
// where such a way crosses reliefs, the first of them whose outlet the pump does not reach without
// it limits the pump.
#include <algorithm>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

struct Driven {
    Index edge = none;
    Index inlet = none;   ///< node
    Index outlet = none;  ///< node
    StateSet states = 0;
};
using DrivenPumps = boost::container::small_vector<Driven, 8>;

/// Pumps that turn and are in no loop here.
DrivenPumps driven_pumps(const Situation& s, StateSet states) {
    DrivenPumps pumps;
    for (const Index e : s.region.machines) {
        if (s.region.edges[e].part != Part::pump || s.loops.loop_of[e] != none) continue;
        const PumpFlow flow = flow_of(s, e, s.direction());
        if (flow.outlet != none)
            pumps.push_back({e, flow.inlet, flow.outlet, flow_states(s.region.edges[e], states)});
    }
    return pumps;
}

/// Its control takes the displacement back against a closed outlet.
bool gives_way(const Situation& s, const Driven& pump) {
    const Circuit& circuit = s.circuit();
    const std::string_view control =
        circuit.choice(circuit.components[s.region.edges[pump.edge].component], "control");
    return control == "pressure-compensated" || control == "load-sensing";
}

/// Against the oil from all reservoirs, over what nobody can close and over reliefs.
SearchPool::Lease let_out(const Situation& s, const Standing& standing) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : s.region.reservoirs) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        return (hands_on(edge) || is_relief(edge)) && stands_open_back(standing, arc);
    });
    return search;
}

/// With the oil from one pump, reliefs left out.
SearchPool::Lease delivered(const Situation& s, const Driven& pump) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    search->begin_at(pump.outlet);
    s.graph.work += search->run(s.region, [&](Index node, const FlowArc& arc) {
        return s.region.is_reservoir[node] == 0 && hands_on(s.region.edges[arc.edge]) &&
               stands_open(s.standing, arc);
    });
    return search;
}

/// The slot of a relief out of what a pump reaches to where it does not get; `none` if there is
/// none.
Index relief_out_of(const Situation& s, const Search& reached) {
    for (const Index node : reached.order)
        for (Index slot = s.region.arc_offsets[node]; slot < s.region.arc_offsets[node + 1];
             ++slot) {
            const FlowArc& arc = s.region.arcs[slot];
            if (is_relief(s.region.edges[arc.edge]) && arc.backward == 0 &&
                stands_open(s.standing, arc) && !reached.reached(arc.to))
                return slot;
        }
    return none;
}

std::string_view path_of(const Situation& s, const Driven& pump) {
    return s.circuit().components[s.region.edges[pump.edge].component].path;
}

std::vector<Step>& steps_from(const Situation& s, const Driven& pump) {
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, s.region.edges[pump.edge].component, none,
                     port_at(s, pump.edge, pump.outlet), "delivers"});
    return steps;
}

Verdict* record(const Situation& s, Docket& docket, const Driven& pump, Outcome outcome) {
    return docket.record(s, ElementType::component, s.region.edges[pump.edge].component,
                         pump.states, outcome);
}

void pass_controlled(const Situation& s, Docket& docket, const Driven& pump) {
    Verdict* verdict = record(s, docket, pump, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text("the control of ", path_of(s, pump),
                                   " takes the displacement back against a closed outlet");
    const Step step{ElementType::component, s.region.edges[pump.edge].component, none, none,
                    "takes its displacement back"};
    verdict->witness = docket.witness(WitnessShape::set, {&step, 1});
}

void pass_over(const Situation& s, Docket& docket, const Driven& pump,
               std::span<const FlowArc> way) {
    Verdict* verdict = record(s, docket, pump, Outcome::pass);
    if (verdict == nullptr) return;
    const auto relief = std::find_if(way.begin(), way.end(), [&](const FlowArc& arc) {
        return is_relief(s.region.edges[arc.edge]);
    });
    std::vector<Step>& steps = steps_from(s, pump);
    add_walk(s.graph, s.region, way, {.from = port_at(s, pump.edge, pump.outlet)}, steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
    verdict->message =
        relief == way.end()
            ? docket.text("the oil of ", path_of(s, pump), " always has a way to a reservoir")
            : docket.text(s.circuit().components[s.region.edges[relief->edge].component].path,
                          " lets the oil of ", path_of(s, pump), " out");
}

void pass_let_out(const Situation& s, Docket& docket, const Driven& pump, const Search& out) {
    std::vector<FlowArc>& way = s.searches.path();
    out.add_way_from(s.region, pump.outlet, way);
    pass_over(s, docket, pump, way);
}

/// Past nothing that can close, its oil comes back to its inlet.
void pass_round(const Situation& s, Docket& docket, const Driven& pump, const Search& reached) {
    Verdict* verdict = record(s, docket, pump, Outcome::pass);
    if (verdict == nullptr) return;
    std::vector<FlowArc>& way = s.searches.path();
    reached.add_path_to(s.region, pump.inlet, way);
    std::vector<Step>& steps = steps_from(s, pump);
    add_walk(s.graph, s.region, way,
             {.from = port_at(s, pump.edge, pump.outlet), .to = port_at(s, pump.edge, pump.inlet)},
             steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
    verdict->message = docket.text("the oil of ", path_of(s, pump), " goes round to its inlet");
}

void judge_by_itself(const Situation& s, Docket& docket, const Driven& pump) {
    const auto reached = delivered(s, pump);
    if (reached->reached(pump.inlet)) {
        pass_round(s, docket, pump, *reached);
        return;
    }
    const Index relief = relief_out_of(s, *reached);
    if (relief != none) {
        std::vector<FlowArc>& way = s.searches.path();
        reached->add_path_to(s.region, tail(s.region, s.region.arcs[relief]), way);
        way.push_back(s.region.arcs[relief]);
        pass_over(s, docket, pump, way);
        return;
    }
    Verdict* verdict = record(s, docket, pump, Outcome::fail);
    if (verdict == nullptr) return;
    std::vector<Step>& steps = steps_from(s, pump);
    add_frontier(s.graph, s.region, s.standing, *reached, true, steps);
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
    verdict->message = docket.text(path_of(s, pump),
                                   " can be driven against a closed outlet, with no relief valve "
                                   "that is always open to it");
}

/// What lets the oil out while all that pressure shifts is shut does so always.
bool judge_alike(const Situation& s, Docket& docket) {
    const DrivenPumps pumps = driven_pumps(s, s.alike.states);
    if (pumps.empty()) return true;
    const auto out = let_out(s, *s.alike.shut);
    if (!std::all_of(pumps.begin(), pumps.end(), [&](const Driven& pump) {
            return gives_way(s, pump) || out->reached(pump.outlet);
        }))
        return false;
    for (const Driven& pump : pumps) {
        if (gives_way(s, pump))
            pass_controlled(s, docket, pump);
        else
            pass_let_out(s, docket, pump, *out);
    }
    return true;
}

void judge(const Situation& s, Docket& docket) {
    const DrivenPumps pumps = driven_pumps(s, s.states);
    if (pumps.empty()) return;
    const auto out = let_out(s, s.standing);
    for (const Driven& pump : pumps) {
        if (gives_way(s, pump))
            pass_controlled(s, docket, pump);
        else if (out->reached(pump.outlet))
            pass_let_out(s, docket, pump, *out);
        else
            judge_by_itself(s, docket, pump);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K01, K02)", .place = "5.2.2"}};
constexpr std::string_view follows[] = {"charge-relief", "crossport-relief"};

}  // namespace

extern constinit const Rule blocked_pump{
    .info = {.id = "blocked-pump",
             .family = "High-pressure protection",
             .question = "Can any pump be driven against a closed outlet with no relief, in any "
                         "state?",
             .why = "A pump that cannot deliver drives the pressure up within a fraction of a turn "
                    "until a line, its housing or its shaft breaks; parts and oil under pressure "
                    "hit who stands by.",
             .decided = "From the outlet of each pump that turns and is in no loop, past nothing "
                        "that can close, a reservoir or its own inlet is reached, or a relief "
                        "valve that leads where the pump's oil does not get otherwise. A pump "
                        "whose control takes its displacement back passes.",
             .data = "joins, shafts, valve positions, locked, control",
             .subject = "each pump that turns and is in no loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Put a relief valve at the pump's outlet, before anything that can close.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
