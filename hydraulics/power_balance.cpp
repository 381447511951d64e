#include <loopwright/hydraulics/power_balance.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

#include <loopwright/hydraulics/load_law.h>

namespace loopwright::hydraulics {

CylinderLaw law_of(const NetworkCylinder& one, const SteadyState& state) {
    return cylinder_law(one.cylinder, {.pressure_a = state.pressures[one.a],
                                       .pressure_b = one.b == none ? 0.0 : state.pressures[one.b],
                                       .rod_velocity = state.speeds[one.shaft]});
}

double torque_of(const Network& network, const NetworkLoad& load, const SteadyState& state) {
    return load_law(load, network.shafts[load.shaft].straight, state.speeds[load.shaft],
                    load.brake_node == none ? 0.0 : state.pressures[load.brake_node])
        .value;
}

namespace {

/// What flows into each node from all that stands on it.
std::vector<double> gathered(const Model& model, const SteadyState& state) {
    const Network& network = model.network;
    std::vector<double> into(network.nodes.size(), 0.0);
    for (std::size_t i = 0; i < network.branches.size(); ++i) {
        into[network.branches[i].from] -= state.flows[i];
        into[network.branches[i].to] += state.flows[i];
    }
    for (std::size_t i = 0; i < network.machines.size(); ++i) {
        const NetworkMachine& one = network.machines[i];
        const MachineLaw law = law_of(one, state.machines[i]);
        into[one.a] += law.flow_a.value;
        into[one.b] += law.flow_b.value;
        into[one.housing] += law.flow_case.value;
    }
    for (const NetworkCylinder& one : network.cylinders) {
        const CylinderLaw law = law_of(one, state);
        into[one.a] += law.flow_a.value;
        if (one.b != none) into[one.b] += law.flow_b.value;
    }
    return into;
}

}  // namespace

double lost_in_branch(const Model& model, const SteadyState& state, std::size_t i) {
    const Branch& branch = model.network.branches[i];
    return state.flows[i] * (state.pressures[branch.from] - state.pressures[branch.to]);
}

double lost_in_machine(const Model& model, const SteadyState& state, std::size_t i) {
    const NetworkMachine& one = model.network.machines[i];
    const MachineLaw law = law_of(one, state.machines[i]);
    return law.torque.value * state.speeds[one.shaft] - law.flow_a.value * state.pressures[one.a] -
           law.flow_b.value * state.pressures[one.b] -
           law.flow_case.value * state.pressures[one.housing];
}

double lost_in_cylinder(const NetworkCylinder& one, const SteadyState& state) {
    const CylinderLaw law = law_of(one, state);
    return -law.force.value * state.speeds[one.shaft] - law.flow_a.value * state.pressures[one.a] -
           (one.b == none ? 0.0 : law.flow_b.value * state.pressures[one.b]);
}

double lost_in_gear(const Model& model, const SteadyState& state, std::size_t i) {
    const NetworkGear& gear = model.network.gears[i];
    const double torque = state.gear_torques[i];
    const double given =
        torque_out(gear.gear, {.torque_in = torque, .speed_in = state.speeds[gear.in]}).value;
    return torque * state.speeds[gear.in] - given * state.speeds[gear.out];
}

double lost_in_oil(const Model& model, const SteadyState& state) {
    double lost = 0.0;
    for (std::size_t i = 0; i < model.branches.size(); ++i) lost += lost_in_branch(model, state, i);
    for (std::size_t i = 0; i < model.machines.size(); ++i)
        lost += lost_in_machine(model, state, i);
    for (const NetworkCylinder& one : model.network.cylinders) lost += lost_in_cylinder(one, state);
    return lost;
}

double lost_in_gears(const Model& model, const SteadyState& state) {
    double lost = 0.0;
    for (std::size_t i = 0; i < model.gears.size(); ++i) lost += lost_in_gear(model, state, i);
    return lost;
}

std::vector<double> shaft_torques(const Model& model, const SteadyState& state) {
    const Network& network = model.network;
    std::vector<double> taken(network.shafts.size(), 0.0);  // by loads
    std::vector<double> asked(network.shafts.size(), 0.0);  // by all
    for (const NetworkLoad& load : network.loads) {
        taken[load.shaft] += torque_of(network, load, state);
        asked[load.shaft] += torque_of(network, load, state);
    }
    for (std::size_t i = 0; i < network.machines.size(); ++i)
        asked[network.machines[i].shaft] +=
            law_of(network.machines[i], state.machines[i]).torque.value;
    for (const NetworkCylinder& one : network.cylinders)
        asked[one.shaft] -= law_of(one, state).force.value;
    for (std::size_t i = 0; i < network.gears.size(); ++i) {
        const NetworkGear& gear = network.gears[i];
        asked[gear.in] += state.gear_torques[i];
        asked[gear.out] -= torque_out(gear.gear, {.torque_in = state.gear_torques[i],
                                                  .speed_in = state.speeds[gear.in]})
                               .value;
    }
    for (std::size_t s = 0; s < taken.size(); ++s)
        if (network.shafts[s].is_driven()) taken[s] = asked[s];
    return taken;
}

std::vector<double> carried_torques(const Model& model, const SteadyState& state,
                                    std::vector<double> torques) {
    const Network& network = model.network;
    std::vector<double> carried = std::move(torques);
    std::vector<double> of_machines(carried.size(), 0.0);
    std::vector<std::uint8_t> has_machines(carried.size(), 0);
    for (std::size_t i = 0; i < network.gears.size(); ++i) {
        const NetworkGear& gear = network.gears[i];
        if (!network.shafts[gear.in].is_driven()) carried[gear.in] += state.gear_torques[i];
    }
    for (std::size_t i = 0; i < network.machines.size(); ++i) {
        const Index s = network.machines[i].shaft;
        of_machines[s] -= law_of(network.machines[i], state.machines[i]).torque.value;
        has_machines[s] = 1;
    }
    for (const NetworkCylinder& one : network.cylinders) {
        of_machines[one.shaft] += law_of(one, state).force.value;
        has_machines[one.shaft] = 1;
    }
    for (std::size_t s = 0; s < carried.size(); ++s)
        if (!network.shafts[s].is_driven() && has_machines[s] != 0) carried[s] = of_machines[s];
    return carried;
}

std::vector<Loss> losses(const Circuit& circuit, const Model& model, const SteadyState& state) {
    std::vector<Loss> lost;
    std::vector<double> of_component(circuit.components.size(), 0.0);
    std::vector<double> of_line(circuit.lines.size(), 0.0);
    for (std::size_t i = 0; i < model.branches.size(); ++i) {
        const BranchOwner& owner = model.branches[i];
        double& sum = owner.line != none ? of_line[owner.line]
                                         : of_component[circuit.passages[owner.passage].component];
        sum += lost_in_branch(model, state, i);
    }
    for (std::size_t i = 0; i < model.machines.size(); ++i)
        of_component[model.machines[i].component] += lost_in_machine(model, state, i);
    for (std::size_t i = 0; i < model.cylinders.size(); ++i)
        of_component[model.cylinders[i].component] +=
            lost_in_cylinder(model.network.cylinders[i], state);
    for (std::size_t i = 0; i < model.gears.size(); ++i)
        of_component[model.gears[i]] += lost_in_gear(model, state, i);
    constexpr double told_from = 1e-3;  // W
    for (Index c = 0; c < of_component.size(); ++c)
        if (std::abs(of_component[c]) >= told_from)
            lost.push_back({std::string(circuit.components[c].path), of_component[c]});
    for (Index l = 0; l < of_line.size(); ++l)
        if (std::abs(of_line[l]) >= told_from)
            lost.push_back({std::string(circuit.lines[l].path), of_line[l]});
    return lost;
}

double mass_residual(const Model& model, const SteadyState& state) {
    const std::vector<double> into = gathered(model, state);
    double open = 0.0;
    double largest = 0.0;
    for (std::size_t i = 0; i < into.size(); ++i)
        if (!model.network.nodes[i].pressure) open = std::max(open, std::abs(into[i]));
    for (const double flow : state.flows) largest = std::max(largest, std::abs(flow));
    for (std::size_t i = 0; i < model.network.machines.size(); ++i) {
        const MachineLaw law = law_of(model.network.machines[i], state.machines[i]);
        largest = std::max({largest, std::abs(law.flow_a.value), std::abs(law.flow_b.value)});
    }
    return largest > 0.0 ? open / largest : 0.0;
}

double energy_residual(const Model& model, const SteadyState& state) {
    const Network& network = model.network;
    double balance = 0.0;
    double largest = 0.0;
    const auto add = [&](double power) {
        balance += power;
        largest = std::max(largest, std::abs(power));
    };
    const std::vector<double> torques = shaft_torques(model, state);
    for (std::size_t s = 0; s < torques.size(); ++s)
        if (network.shafts[s].is_driven()) add(torques[s] * state.speeds[s]);
    for (const NetworkLoad& load : network.loads)
        add(-torque_of(network, load, state) * state.speeds[load.shaft]);
    for (std::size_t i = 0; i < network.branches.size(); ++i) add(-lost_in_branch(model, state, i));
    for (std::size_t i = 0; i < network.machines.size(); ++i)
        add(-lost_in_machine(model, state, i));
    for (const NetworkCylinder& one : network.cylinders) add(-lost_in_cylinder(one, state));
    for (std::size_t i = 0; i < network.gears.size(); ++i) add(-lost_in_gear(model, state, i));
    const std::vector<double> into = gathered(model, state);
    for (std::size_t i = 0; i < into.size(); ++i)
        if (network.nodes[i].pressure) add(-into[i] * state.pressures[i]);
    return largest > 0.0 ? std::abs(balance) / largest : 0.0;
}

}  // namespace loopwright::hydraulics
