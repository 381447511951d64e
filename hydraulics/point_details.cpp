#include <loopwright/hydraulics/point_details.h>

#include <loopwright/hydraulics/link_flows.h>

namespace loopwright::hydraulics {

namespace {

void read_passages(const Circuit& circuit, const Model& model, const SteadyState& state,
                   OperatingPoint& point) {
    const auto add = [&](Index p, double flow) {
        const Passage& passage = circuit.passages[p];
        point.passages.push_back(
            {.passage = p,
             .flow = flow,
             .drop = point.pressures[passage.from] - point.pressures[passage.to]});
    };
    for (std::size_t b = 0; b < model.branches.size(); ++b)
        if (model.branches[b].passage != none) add(model.branches[b].passage, state.flows[b]);
    const auto through = link_flows(circuit, model, state);
    for (std::size_t i = 0; i < model.links.size(); ++i)
        if (model.links[i].passage != none && through[i]) add(model.links[i].passage, *through[i]);
}

/// Machines stand before cylinders in a point, each as in the model.
void read_ports(const Model& model, const SteadyState& state, OperatingPoint& point) {
    const auto set = [](MachinePoint& one, const MachineOwner& owner, const auto& law) {
        one.port_a = owner.a;
        one.port_b = owner.b;
        one.out_at_a = law.flow_a.value;
        one.out_at_b = law.flow_b.value;
    };
    const std::size_t machines = model.machines.size();
    for (std::size_t i = 0; i < machines; ++i)
        set(point.machines[i], model.machines[i],
            law_of(model.network.machines[i], state.machines[i]));
    for (std::size_t i = 0; i < model.cylinders.size(); ++i) {
        MachinePoint& one = point.machines[machines + i];
        set(one, model.cylinders[i],
            cylinder_law(model.network.cylinders[i].cylinder, {.pressure_a = one.pressure_a,
                                                               .pressure_b = one.pressure_b,
                                                               .rod_velocity = one.speed}));
    }
}

}  // namespace

void read_details(const Circuit& circuit, const Model& model, const SteadyState& state,
                  OperatingPoint& point) {
    for (const Index node : model.node_of_port) point.pressures.push_back(state.pressures[node]);
    read_passages(circuit, model, state, point);
    read_ports(model, state, point);
    for (Index s = 0; s < circuit.shafts.size(); ++s) {
        std::vector<Index>& joins = point.shafts[model.shaft_of_shaft[s]].joins;
        const auto more = circuit.components_of(circuit.shafts[s]);
        joins.insert(joins.end(), more.begin(), more.end());
    }
}

}  // namespace loopwright::hydraulics
