#include <loopwright/hydraulics/operating_point.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/charge_balance.h>
#include <loopwright/hydraulics/efficiency.h>
#include <loopwright/hydraulics/link_flows.h>
#include <loopwright/hydraulics/point_details.h>
#include <loopwright/hydraulics/point_worker.h>
#include <loopwright/hydraulics/power_balance.h>

namespace loopwright::hydraulics {

std::string_view name(MachineMode mode) {
    switch (mode) {
        case MachineMode::pump:
            return "pump";
        case MachineMode::motor:
            return "motor";
        case MachineMode::idle:
            break;
    }
    return "idle";
}

namespace {

/// Fills in what a solution means for the circuit.
class Reader {
  public:
    Reader(const FlowGraph& graph, const Model& model, const SteadyState& state,
           OperatingPoint& out)
        : graph_(graph), circuit_(graph.circuit()), model_(model), state_(state), out_(out) {}

    void read_drive() {
        read_machines();
        read_cylinders();
        read_shafts();
    }
    void read() {
        read_lines();
        read_drive();
        read_prime_movers();
        read_loads();
        read_limits();
        read_details(circuit_, model_, state_, out_);
        out_.charge = charge_balances(circuit_, model_, state_);
        out_.losses = losses(circuit_, model_, state_);
        out_.mass_residual = mass_residual(model_, state_);
        out_.energy_residual = energy_residual(model_, state_);
    }

  private:
    double pressure_at(Index port) const { return state_.pressures[model_.node_of_port[port]]; }

    /// Of each line what it gives at each of its ports: all but the first hang on that.
    std::vector<std::vector<std::optional<double>>> given_by_lines() const {
        std::vector<std::vector<std::optional<double>>> given(circuit_.lines.size());
        for (Index l = 0; l < circuit_.lines.size(); ++l)
            given[l].resize(circuit_.ports_of(circuit_.lines[l]).size());
        const auto give = [&](Index line, Index to, const std::optional<double>& flow) {
            const auto ports = circuit_.ports_of(circuit_.lines[line]);
            for (std::size_t k = 1; k < ports.size(); ++k)
                if (ports[k] == to) given[line][k] = flow;
        };
        const std::vector<std::optional<double>> through = link_flows(circuit_, model_, state_);
        for (std::size_t i = 0; i < model_.links.size(); ++i)
            if (model_.links[i].line != none)
                give(model_.links[i].line, model_.links[i].to, through[i]);
        for (std::size_t i = 0; i < model_.branches.size(); ++i)
            if (model_.branches[i].line != none)
                give(model_.branches[i].line, model_.branches[i].to, state_.flows[i]);
        for (auto& of_line : given) {
            if (of_line.empty()) continue;
            of_line.front() = 0.0;
            for (std::size_t k = 1; k < of_line.size(); ++k)
                of_line.front() = of_line.front() && of_line[k]
                                      ? std::optional(*of_line.front() - *of_line[k])
                                      : std::nullopt;
        }
        return given;
    }

    void read_lines() {
        const std::vector<std::vector<std::optional<double>>> given = given_by_lines();
        for (Index l = 0; l < circuit_.lines.size(); ++l) {
            const Line& line = circuit_.lines[l];
            const auto ports = circuit_.ports_of(line);
            if (ports.empty()) continue;
            LinePoint one{.line = l, .pressure = pressure_at(ports[0]), .given = given[l]};
            if (ports.size() > 1) one.flow = given[l][1];
            if (ports.size() > 1) one.drop = pressure_at(ports[0]) - pressure_at(ports[1]);
            if (line.bore && one.flow) {
                const Pipe pipe{
                    .bore = *line.bore, .length = Length(0.0), .roughness = Length(0.0)};
                one.velocity = std::abs(velocity(pipe, Flow(*one.flow)).si());
                one.reynolds = reynolds_number(pipe, Flow(*one.flow), model_.network.oil.viscosity);
            }
            out_.lines.push_back(one);
        }
    }

    void read_machines() {
        for (std::size_t i = 0; i < model_.machines.size(); ++i) {
            const NetworkMachine& one = model_.network.machines[i];
            const MachineState& state = state_.machines[i];
            const MachineLaw law = law_of(one, state);
            MachinePoint point{.component = model_.machines[i].component,
                               .speed = state.shaft_speed,
                               .stroke = std::abs(state.relative_displacement),
                               .set_stroke = std::abs(one.stroke),
                               .hold = hold_of(one, state, law.torque.value),
                               .pressure_a = state.pressure_a,
                               .pressure_b = state.pressure_b};
            point.displacement = point.stroke * one.machine.displacement.si();
            const bool a_high = state.pressure_a >= state.pressure_b;
            const double out_of_high = a_high ? law.flow_a.value : law.flow_b.value;
            const double difference = std::abs(state.pressure_a - state.pressure_b);
            // What only creeps so that its shaft's friction holds it stands.
            const bool turns = std::abs(state.shaft_speed) > standstill.si();
            if (const auto found = efficiencies(one.machine, state, law); found && turns) {
                point.mode = found->work == Work::pump ? MachineMode::pump : MachineMode::motor;
                point.volumetric_efficiency = found->volumetric;
                point.mechanical_efficiency = found->hydro_mechanical;
            }
            // One that stands is told as what it is there for.
            const bool motor = point.mode == MachineMode::idle
                                   ? graph_.part(point.component) == Part::actuator
                                   : point.mode == MachineMode::motor;
            const double sense = motor ? -1.0 : 1.0;
            const double turning = state.shaft_speed < 0.0 ? -1.0 : 1.0;
            point.torque = sense * turning * law.torque.value;
            point.flow = sense * out_of_high;
            point.shaft_power = sense * law.torque.value * state.shaft_speed;
            point.hydraulic_power = point.flow * difference;
            if (model_.machines[i].housing != model_.machines[i].b)
                point.case_flow = law.flow_case.value;
            out_.machines.push_back(point);
        }
    }

    StrokeHold hold_of(const NetworkMachine& one, const MachineState& at, double torque) const {
        if (!one.control.acts()) return StrokeHold::none;
        return stroke_hold(
            one.control, one.stroke,
            {.relative_displacement = at.relative_displacement,
             .pressure_a = at.pressure_a,
             .pressure_b = at.pressure_b,
             .shaft_speed = at.shaft_speed,
             .pressure_sensed = one.sensed == none ? 0.0 : state_.pressures[one.sensed],
             .share_left = one.mover == none ? 1.0 : state_.shares_left[one.mover]},
            torque);
    }

    void read_cylinders() {
        for (std::size_t i = 0; i < model_.cylinders.size(); ++i) {
            const NetworkCylinder& one = model_.network.cylinders[i];
            MachinePoint point{.component = model_.cylinders[i].component,
                               .mode = MachineMode::motor,
                               .speed = state_.speeds[one.shaft],
                               .pressure_a = state_.pressures[one.a],
                               .pressure_b = one.b == none ? 0.0 : state_.pressures[one.b],
                               .straight = true};
            const CylinderLaw law = cylinder_law(one.cylinder, {.pressure_a = point.pressure_a,
                                                                .pressure_b = point.pressure_b,
                                                                .rod_velocity = point.speed});
            const bool out = point.speed >= 0.0;
            point.torque = out ? law.force.value : -law.force.value;
            point.flow = out ? -law.flow_a.value : -law.flow_b.value;
            point.shaft_power = law.force.value * point.speed;
            point.hydraulic_power =
                -law.flow_a.value * point.pressure_a - law.flow_b.value * point.pressure_b;
            out_.machines.push_back(point);
        }
    }

    void read_shafts() {
        const std::vector<double> torques = shaft_torques(model_, state_);
        const std::vector<double> carried = carried_torques(model_, state_, torques);
        for (Index s = 0; s < model_.network.shafts.size(); ++s) {
            ShaftPoint shaft{.name = model_.shaft_names[s],
                             .speed = state_.speeds[s],
                             .torque = torques[s],
                             .carried = carried[s],
                             .driven = model_.network.shafts[s].is_driven(),
                             .straight = model_.network.shafts[s].straight};
            shaft.power = shaft.torque * shaft.speed;
            out_.shafts.push_back(shaft);
        }
    }

    void read_prime_movers() {
        std::vector<Index> of_shaft(out_.shafts.size(), none);
        std::vector<int> count(out_.shafts.size(), 0);
        for (Index c = 0; c < circuit_.components.size(); ++c) {
            const Component& component = circuit_.components[c];
            if (component.kind->part != Part::prime_mover || component.shaft == none) continue;
            const Index shaft = model_.shaft_of_shaft[component.shaft];
            of_shaft[shaft] = c;
            ++count[shaft];
        }
        for (std::size_t s = 0; s < of_shaft.size(); ++s)
            if (count[s] == 1)
                out_.on_shafts.push_back({.component = of_shaft[s],
                                          .speed = out_.shafts[s].speed,
                                          .torque = out_.shafts[s].torque,
                                          .power = out_.shafts[s].power});
    }

    void read_loads() {
        for (std::size_t i = 0; i < model_.loads.size(); ++i) {
            const NetworkLoad& load = model_.network.loads[i];
            OnShaftPoint point{.component = model_.loads[i],
                               .speed = state_.speeds[load.shaft],
                               .straight = model_.network.shafts[load.shaft].straight};
            const double torque = torque_of(model_.network, load, state_);
            point.torque = point.speed < 0.0 ? -torque : torque;
            point.power = torque * point.speed;
            if (load.kind == NetworkLoad::Kind::brake)
                point.holding = holding_torque(load.brake, state_.pressures[load.brake_node]).value;
            out_.on_shafts.push_back(point);
        }
    }

    void limit(std::string_view subject, std::string_view quantity, Dimension dimension,
               double value, std::optional<double> most) {
        if (!most) return;
        // What a control keeps at its limit is not above it by what rounding leaves.
        const double margin = *most - value;
        const bool at_limit = std::abs(margin) <= 1e-9 * std::abs(*most);
        out_.limits.push_back(
            {std::string(subject), quantity, dimension, value, *most, at_limit ? 0.0 : margin});
    }

    void read_limits() {
        for (const MachinePoint& machine : out_.machines) {
            const Component& component = circuit_.components[machine.component];
            const auto figure = [&](std::string_view name) {
                return circuit_.figure(component, name);
            };
            if (!machine.straight)
                limit(component.path, "speed", Dimension::speed, std::abs(machine.speed),
                      figure("max-speed"));
            else
                limit(component.path, "velocity", Dimension::velocity, std::abs(machine.speed),
                      figure("max-velocity"));
            limit(component.path, "pressure", Dimension::pressure,
                  std::max(machine.pressure_a, machine.pressure_b), figure("max-pressure"));
            limit(component.path, "torque", Dimension::torque, std::abs(machine.torque),
                  figure("max-torque"));
        }
        for (const MachineOwner& owner : model_.machines)
            if (owner.housing != owner.b)
                limit(circuit_.components[owner.component].path, "case pressure",
                      Dimension::pressure, pressure_at(owner.housing),
                      circuit_.figure(circuit_.components[owner.component], "case-pressure"));
        for (const LinePoint& point : out_.lines) {
            const Line& line = circuit_.lines[point.line];
            if (line.rating)
                limit(line.path, "pressure", Dimension::pressure,
                      std::max(point.pressure, point.pressure - point.drop), line.rating->si());
        }
        for (const Component& component : circuit_.components) {
            if (component.kind->part != Part::prime_mover || component.shaft == none) continue;
            const ShaftPoint& shaft = out_.shafts[model_.shaft_of_shaft[component.shaft]];
            limit(component.path, "power", Dimension::power, shaft.power,
                  circuit_.figure(component, "power"));
            limit(component.path, "torque", Dimension::torque, shaft.torque,
                  circuit_.figure(component, "max-torque"));
        }
    }

    const FlowGraph& graph_;
    const Circuit& circuit_;
    const Model& model_;
    const SteadyState& state_;
    OperatingPoint& out_;
};

}  // namespace

void read_solution(const FlowGraph& graph, const Model& model, const SteadyState& state,
                   OperatingPoint& out) {
    Reader(graph, model, state, out).read();
}

void read_drive(const FlowGraph& graph, const Model& model, const SteadyState& state,
                OperatingPoint& out) {
    Reader(graph, model, state, out).read_drive();
}

std::vector<OperatingPoint> operating_points(const Circuit& circuit, std::string_view only,
                                             bool working) {
    const FlowGraph graph(circuit);
    std::vector<PointFigures> points;
    if (circuit.points.empty()) points.emplace_back(circuit, none);
    for (Index i = 0; i < circuit.points.size(); ++i)
        if (only.empty() || circuit.points[i].id == only) points.emplace_back(circuit, i);
    part_motions(graph, points);
    const auto standing = standings(graph, points);
    std::vector<OperatingPoint> worked_out;
    for (std::size_t i = 0; i < points.size(); ++i)
        worked_out.push_back(work_out(graph, points[i], standing[i], working));
    return worked_out;
}

}  // namespace loopwright::hydraulics
