// For each machine that is meant for a closed loop: is it in a sound one in any running state?
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Once round: out of the machine and back to its other port over the loop's own passages.
Witness round_trip(const Situation& s, Docket& docket, Index edge) {
    const Edge& machine = s.region.edges[edge];
    // Without a flow direction a two-way pump is followed the forward way, out at its port A.
    const Direction round = s.direction() == Direction::none ? Direction::forward : s.direction();
    const bool outlet_at_to = (displacement_ways(machine, round) & open_forward) != 0;
    const FlowArc out = arc_over(s.region, edge, !outlet_at_to);
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    search.begin_at(out.to);
    search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        if (arc.edge == edge || s.loops.loop_of[arc.edge] == none) return false;
        const Edge& passed = s.region.edges[arc.edge];
        return passed.passage_class == PassageClass::displacement || stands_open(s.standing, arc);
    });
    const Index inlet = outlet_at_to ? machine.from : machine.to;
    std::vector<FlowArc>& arcs = s.searches.path();
    arcs.push_back(out);
    if (search.reached(inlet)) search.add_path_to(s.region, inlet, arcs);
    std::vector<Step>& steps = s.searches.steps();
    add_walk(s.graph, s.region, arcs, {.to = entry_port(s.graph, s.region, out)}, steps);
    return docket.witness(WitnessShape::path, steps);
}

/// The way between the two ports of a shorted machine.
Witness short_circuit(const Situation& s, Docket& docket, const Edge& machine) {
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    search.begin_at(machine.from);
    search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return s.loops.loop_of[arc.edge] != none &&
               s.region.edges[arc.edge].passage_class != PassageClass::displacement;
    });
    const Passage& passage = s.circuit().passages[machine.passage];
    std::vector<FlowArc>& arcs = s.searches.path();
    if (search.reached(machine.to)) search.add_path_to(s.region, machine.to, arcs);
    std::vector<Step>& steps = s.searches.steps();
    add_walk(s.graph, s.region, arcs, {.from = passage.from, .to = passage.to}, steps);
    return docket.witness(WitnessShape::path, steps);
}

/// Where the way from the machine's ports ends: at a reservoir, or at what does not let it on.
Witness open_end(const Situation& s, Docket& docket, const Edge& machine, std::string_view& where) {
    std::vector<Step>& steps = s.searches.steps();
    const Passage& passage = s.circuit().passages[machine.passage];
    for (const bool at_from : {true, false}) {
        const Index node = at_from ? machine.from : machine.to;
        const Index port = at_from ? passage.from : passage.to;
        const auto lease = s.searches.take(s.region.node_count);
        Search& search = *lease;
        search.begin_at(node);
        search.run(s.region, [&](Index here, const FlowArc& arc) {
            return s.region.is_reservoir[here] == 0 && stands_open(s.standing, arc) &&
                   (open_way(s.region.edges[arc.edge]) ||
                    s.region.edges[arc.edge].passage_class == PassageClass::one_way);
        });
        const auto tank = std::find_if(search.order.begin(), search.order.end(),
                                       [&](Index n) { return s.region.is_reservoir[n] != 0; });
        if (tank == search.order.end() || s.feeds.vented[node] == 0) continue;
        where = docket.text("its port ", s.circuit().ports[port].letter, " is open to a reservoir");
        std::vector<FlowArc>& arcs = s.searches.path();
        search.add_path_to(s.region, *tank, arcs);
        steps.push_back({ElementType::component, machine.component, none, port, {}});
        add_walk(s.graph, s.region, arcs, {.from = port}, steps);
        return docket.witness(WitnessShape::path, steps);
    }
    const auto lease = s.searches.take(s.region.node_count);
    Search& search = *lease;
    search.begin_at(machine.to);
    search.begin_at(machine.from);
    search.run(s.region, [&](Index here, const FlowArc& arc) {
        return s.region.is_reservoir[here] == 0 && stands_open(s.standing, arc) &&
               open_way(s.region.edges[arc.edge]);
    });
    where = "no way leads from one of its ports through an actuator back to the other";
    add_frontier(s.graph, s.region, s.standing, search, true, steps);
    return docket.witness(WitnessShape::frontier, steps);
}

/// It hangs on the loops alone.
bool judge_alike(const Situation& s, Docket& docket) {
    for (const Index e : s.region.machines) {
        const Edge& edge = s.region.edges[e];
        if (!edge.meant_for_loop || !s.asks(e)) continue;
        const Index loop = s.loops.loop_of[e];
        const bool shorted = loop != none && s.loops.loops[loop].shorted;
        const bool sound = loop != none && !shorted;
        Verdict* verdict = docket.record(s, ElementType::component, edge.component, s.alike.states,
                                         sound ? Outcome::pass : Outcome::fail);
        if (verdict == nullptr) continue;
        const std::string_view path = s.circuit().components[edge.component].path;
        if (sound) {
            verdict->message = docket.text(path, " is in a closed loop");
            verdict->witness = round_trip(s, docket, e);
        } else if (shorted || edge.from == edge.to) {
            verdict->message =
                docket.text("both sides of ", path, " are joined: its loop is short-circuited");
            verdict->witness = short_circuit(s, docket, edge);
        } else {
            std::string_view where;
            verdict->witness = open_end(s, docket, edge, where);
            verdict->message = docket.text(path, " is in no closed loop: ", where);
        }
    }
    return true;
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    if (!docket.empty()) return;
    if (structure.loops.empty()) {
        Verdict& verdict = docket.conclude(ElementType::circuit, none, Outcome::fail, Level::note);
        verdict.message = "the circuit has no closed loop and no sign that one is meant";
        std::vector<Step> pumps;
        for (const Index c : graph.components_with(Part::pump))
            pumps.push_back({ElementType::component, c, none, none, {}});
        verdict.witness = docket.witness(WitnessShape::set, pumps);
        return;
    }
    docket.conclude(ElementType::circuit, none, Outcome::not_applicable).message =
        "no two-way pump and no machine declared closed-loop";
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule lost_loop{
    .info = {.id = "lost-loop",
             .family = "Charge supply",
             .question = "Is every two-way pump, and every machine declared closed-loop, in a "
                         "closed loop in some running state?",
             .why = "A side that is joined to a reservoir, or to the other side, carries no "
                    "pressure: the drive does not drive and, worse, does not brake. A machine on "
                    "a grade runs away.",
             .decided = "Loops are found from structure alone: a biconnected part of a strongly "
                        "connected part with a pump and an actuator, over the passages that carry "
                        "the full flow, reservoirs taken out. Short-circuited loops do not count.",
             .data = "joins, valve positions as drawn, flow-directions, closed-loop",
             .subject = "each two-way pump and each machine declared closed-loop",
             .states = "running, all of them",
             .level = Level::error,
             .remedy = "Lead both ports of the pump to the actuator and back, and take out what "
                       "joins a side to a reservoir or the two sides to each other.",
             .sources = sources},
    .judge_alike = judge_alike,
    .conclude = conclude,
    .best_state = true};

}  // namespace loopwright
