#include <loopwright/rules/suction_ways.h>

namespace loopwright {

Index suction_port_of(const FlowGraph& graph, Index component) {
    if (graph.part(component) != Part::pump) return none;
    const Circuit& circuit = graph.circuit();
    const Component& pump = circuit.components[component];
    for (Index port = pump.ports.begin; port < pump.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::suction) return port;
    return none;
}

bool draws_over(const Region& region, const FlowArc& arc) {
    const Edge& edge = region.edges[arc.edge];
    if (arc.backward != 0 && !edge.both_ways) return false;
    switch (edge.passage_class) {
        case PassageClass::element:
        case PassageClass::one_way:
        case PassageClass::metering:
            return true;
        case PassageClass::switched:
            return edge.shift == Shift::hand || edge.shift == Shift::position;
        case PassageClass::joined:
        case PassageClass::pressure_opened:
        case PassageClass::reduced:
        case PassageClass::divider:
        case PassageClass::displacement:
        case PassageClass::leakage:
            break;
    }
    return false;
}

}  // namespace loopwright
