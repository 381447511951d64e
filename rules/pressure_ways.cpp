#include <loopwright/rules/pressure_ways.h>

#include <algorithm>

#include <loopwright/graph/witness.h>

namespace loopwright {

bool lets_oil_on(const Edge& edge) {
    switch (edge.passage_class) {
        case PassageClass::element:
        case PassageClass::one_way:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::reduced:
        case PassageClass::switched:
            return true;
        default:
            return false;
    }
}

bool shows_pressure(const Circuit& circuit, const Component& component) {
    if (!component.kind->shows_pressure) return false;
    const std::string_view measured = circuit.choice(component, "measures");
    return measured.empty() || measured == "pressure";
}

namespace {

/// A two-way pump without a signal, or without a direction of flow, stands at no stroke.
bool delivers(const Situation& s, Index e) {
    const Edge& edge = s.region.edges[e];
    if (edge.part != Part::pump || s.looped[e] != 0) return false;
    const Drives& drives = s.graph.drives();
    return edge.both_ways ? s.turning.signal && s.direction() != Direction::none &&
                                s.turning.turns(drives, edge.component)
                          : s.turning.turns_ahead(drives, edge.component);
}

void begin_at(const Situation& s, Search& search, Index node) {
    if (s.region.is_reservoir[node] == 0) search.begin_at(node);
}

/// The port by which a giver is shown to put a node under pressure.
Index giver_at(const Situation& s, Index node) {
    const Circuit& circuit = s.circuit();
    Index shown = none;
    for (const Index port : s.graph.ports_of(s.region.joints[node])) {
        const Index c = circuit.ports[port].component;
        const Part part = s.graph.part(c);
        if (part == Part::pump || part == Part::hand_pump || part == Part::accumulator) return port;
        if (part == Part::actuator && shown == none) shown = port;
    }
    return shown != none ? shown : port_on(s.graph, s.region, node, none);
}

std::string_view giving_text(Part part) {
    switch (part) {
        case Part::accumulator:
            return "stays charged";
        case Part::actuator:
            return "under the pressure of the loop";
        default:
            return "delivers";
    }
}

bool vents(const Situation& s, const FlowArc& arc) {
    const Edge& edge = s.region.edges[arc.edge];
    return (open_way(edge) ||
            (edge.passage_class == PassageClass::one_way && edge.opening == 0.0)) &&
           stands_open(s.standing, arc);
}

}  // namespace

void begin_at_pumps(const Situation& s, Search& search) {
    for (const Index e : s.region.machines) {
        if (!delivers(s, e)) continue;
        const Edge& edge = s.region.edges[e];
        const bool out_at_to = (displacement_ways(edge, s.direction()) & open_forward) != 0;
        begin_at(s, search, out_at_to ? edge.to : edge.from);
    }
}

void begin_at_hand_pumps(const Situation& s, Search& search) {
    for (const Index e : s.region.machines) {
        const Edge& edge = s.region.edges[e];
        if (edge.part == Part::hand_pump) begin_at(s, search, edge.to);
    }
}

void begin_at_sides(const Situation& s, Search& search, bool intermediate_too) {
    for (const LoopSide& side : s.loops.sides) {
        if (side.role != SideRole::main &&
            !(intermediate_too && side.role == SideRole::intermediate))
            continue;
        for (const Index node : s.loops.nodes_of(side)) search.begin_at(node);
    }
}

void begin_at_accumulators(const Situation& s, Search& search) {
    for (const Index port : s.region.guests)
        if (s.graph.part(s.circuit().ports[port].component) == Part::accumulator)
            search.begin_at(s.graph.node_of(port));
}

void spread(const Situation& s, const Standing& standing, Search& search) {
    s.graph.work += search.run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return lets_oil_on(s.region.edges[arc.edge]) && stands_open(standing, arc) &&
               s.region.is_reservoir[arc.to] == 0;
    });
}

Witness way_to(const Situation& s, Docket& docket, const Search& search, Index port) {
    const Index node = s.graph.node_of(port);
    std::vector<FlowArc>& arcs = s.searches.path();
    search.add_path_to(s.region, node, arcs);
    const Index from = giver_at(s, arcs.empty() ? node : tail(s.region, arcs.front()));
    const Index giver = s.circuit().ports[from].component;
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, giver, none, from, giving_text(s.graph.part(giver))});
    add_walk(s.graph, s.region, arcs, {.from = from, .to = port}, steps);
    return docket.witness(WitnessShape::path, steps);
}

Witness way_to_tank(const Situation& s, Docket& docket, Index port) {
    std::vector<FlowArc>& arcs = s.searches.path();
    s.feeds.to_tank.add_way_from(s.region, s.graph.node_of(port), arcs);
    std::vector<Step>& steps = s.searches.steps();
    add_walk(s.graph, s.region, arcs, {.from = port}, steps);
    return docket.witness(WitnessShape::path, steps);
}

Witness kept_from_tank(const Situation& s, Docket& docket, Index port) {
    const auto search = s.searches.take(s.region.node_count);
    search->begin_at(s.graph.node_of(port));
    s.graph.work +=
        search->run(s.region, [&](Index /*node*/, const FlowArc& arc) { return vents(s, arc); });
    std::vector<Step>& steps = s.searches.steps();
    const Index c = s.circuit().ports[port].component;
    steps.push_back({ElementType::component, c, port, none, {}});
    add_frontier(s.graph, s.region, s.standing, *search, true, steps);
    return docket.witness(WitnessShape::frontier, steps);
}

}  // namespace loopwright
