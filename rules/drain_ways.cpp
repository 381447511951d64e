#include <loopwright/rules/drain_ways.h>

#include <vector>

#include <loopwright/graph/witness.h>

namespace loopwright {

namespace {

bool carries_drain(PassageClass passage) {
    switch (passage) {
        case PassageClass::element:
        case PassageClass::switched:
        case PassageClass::one_way:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::pressure_opened:
            return true;
        case PassageClass::joined:
        case PassageClass::reduced:
        case PassageClass::displacement:
        case PassageClass::leakage:
            break;
    }
    return false;
}

/// The drains of one region after another.
class DrainReturns {
  public:
    DrainReturns(const FlowGraph& graph, const std::function<void(const DrainReturn&)>& visit)
        : graph_(graph), visit_(visit), seen_(graph.pipes().count(), 0) {}

    void find(const Region& region) {
        search_.clear(region.node_count);
        for (const Index c : region.components) {
            const Index port = case_port_of(graph_, c);
            if (port == none) continue;
            const Index node = graph_.node_of(port);
            if (region.is_reservoir[node] == 0)
                search_.begin_at(node);
            else
                visit_pipe({.region = &region, .search = &search_, .case_port = port}, port);
        }
        graph_.work += search_.run(region, [&](Index /*node*/, const FlowArc& arc) {
            return region.is_reservoir[arc.to] == 0 && drains_over(region, arc);
        });
        for (const Index node : search_.order)
            for (const FlowArc& arc : region.arcs_of(node))
                if (region.is_reservoir[arc.to] != 0 && drains_over(region, arc))
                    visit_pipe({.region = &region, .search = &search_, .last = arc},
                               exit_port(graph_, region, arc));
    }

  private:
    /// The reservoir ports on the pipe that a port stands on.
    void visit_pipe(DrainReturn found, Index on) {
        const Index pipe = graph_.pipes().of(on);
        if (seen_[pipe] != 0) return;
        seen_[pipe] = 1;
        const Circuit& circuit = graph_.circuit();
        for (const Index port : graph_.pipes().ports_of(pipe)) {
            if (circuit.components[circuit.ports[port].component].kind->part != Part::reservoir)
                continue;
            found.port = port;
            visit_(found);
        }
    }

    const FlowGraph& graph_;
    const std::function<void(const DrainReturn&)>& visit_;
    std::vector<std::uint8_t> seen_;  // by pipe
    Search search_;
};

}  // namespace

Index case_port_of(const FlowGraph& graph, Index component) {
    const Part part = graph.part(component);
    if (part != Part::pump && part != Part::actuator) return none;
    const Circuit& circuit = graph.circuit();
    const Component& machine = circuit.components[component];
    for (Index port = machine.ports.begin; port < machine.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::drain) return port;
    return none;
}

bool drains_over(const Region& region, const FlowArc& arc) {
    const Edge& edge = region.edges[arc.edge];
    return carries_drain(edge.passage_class) && (arc.backward == 0 || edge.both_ways);
}

void for_each_drain_return(const FlowGraph& graph,
                           const std::function<void(const DrainReturn&)>& visit) {
    DrainReturns returns(graph, visit);
    for (const Region& region : graph.regions()) returns.find(region);
}

}  // namespace loopwright
