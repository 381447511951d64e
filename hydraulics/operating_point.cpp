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

/// Of what the oil is taken to be where neither point nor heat balance says.
constexpr double usual_oil = 323.15;  // K

/// Fills in what a solution means for the circuit.
class Reader {
  public:
    Reader(const FlowGraph& graph, const Model& model, const SteadyState& state,
           OperatingPoint& out)
        : graph_(graph), circuit_(graph.circuit()), model_(model), state_(state), out_(out) {}

    void read() {
        read_lines();
        read_machines();
        read_cylinders();
        read_shafts();
        read_limits();
        read_details(circuit_, model_, state_, out_);
        out_.charge = charge_balances(circuit_, model_, state_);
        out_.losses = losses(circuit_, model_, state_);
        out_.mass_residual = mass_residual(model_, state_);
        out_.energy_residual = energy_residual(model_, state_);
    }

  private:
    double pressure_at(Index port) const { return state_.pressures[model_.node_of_port[port]]; }

    void read_lines() {
        std::vector<std::optional<double>> flow(circuit_.lines.size());
        const std::vector<std::optional<double>> through = link_flows(circuit_, model_, state_);
        for (std::size_t i = 0; i < model_.links.size(); ++i) {
            const Link& link = model_.links[i];
            if (link.line == none) continue;
            // The first link of a line is that to its second port.
            const auto ports = circuit_.ports_of(circuit_.lines[link.line]);
            if (link.to == ports[1] && link.from == ports[0]) flow[link.line] = through[i];
        }
        for (std::size_t i = 0; i < model_.branches.size(); ++i)
            if (model_.branches[i].line != none) flow[model_.branches[i].line] = state_.flows[i];
        for (Index l = 0; l < circuit_.lines.size(); ++l) {
            const Line& line = circuit_.lines[l];
            const auto ports = circuit_.ports_of(line);
            if (ports.empty()) continue;
            LinePoint one{.line = l, .pressure = pressure_at(ports[0]), .flow = flow[l]};
            if (ports.size() > 1) one.drop = pressure_at(ports[0]) - pressure_at(ports[1]);
            if (line.bore && flow[l]) {
                const Pipe pipe{
                    .bore = *line.bore, .length = Length(0.0), .roughness = Length(0.0)};
                one.velocity = std::abs(velocity(pipe, Flow(*flow[l])).si());
                one.reynolds = reynolds_number(pipe, Flow(*flow[l]), model_.network.oil.viscosity);
            }
            out_.lines.push_back(one);
        }
    }

    void read_machines() {
        for (std::size_t i = 0; i < model_.machines.size(); ++i) {
            const NetworkMachine& one = model_.network.machines[i];
            const MachineState& state = state_.machines[i];
            const MachineLaw law = machine_law(one.machine, state);
            MachinePoint point{.component = model_.machines[i].component,
                               .speed = state.shaft_speed,
                               .stroke = std::abs(state.relative_displacement),
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
        for (Index s = 0; s < model_.network.shafts.size(); ++s) {
            ShaftPoint shaft{.name = model_.shaft_names[s],
                             .speed = state_.speeds[s],
                             .torque = torques[s],
                             .driven = model_.network.shafts[s].speed.has_value(),
                             .straight = model_.network.shafts[s].straight};
            shaft.power = shaft.torque * shaft.speed;
            out_.shafts.push_back(shaft);
        }
    }

    void limit(std::string_view subject, std::string_view quantity, Dimension dimension,
               double value, std::optional<double> most) {
        if (!most) return;
        out_.limits.push_back(
            {std::string(subject), quantity, dimension, value, *most, *most - value});
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

FluidFigures fluid_figures(const Circuit& circuit) {
    FluidFigures figures;
    if (!circuit.fluid) return figures;
    for (const AttributeValue& one : circuit.figures_of(*circuit.fluid)) {
        const std::string_view of = one.spec->name;
        if (of == "grade") figures.grade = one.text;
        if (of == "viscosity-index") figures.viscosity_index = one.si;
        if (of == "viscosity-40") figures.at_40 = KinematicViscosity(one.si);
        if (of == "viscosity-100") figures.at_100 = KinematicViscosity(one.si);
        if (of == "density") figures.density = Density(one.si);
        if (of == "specific-heat") figures.specific_heat = SpecificHeat(one.si);
        if (of == "bulk-modulus") figures.bulk_modulus = BulkModulus(one.si);
    }
    return figures;
}

/// Which balance does not close, in the circuit's words.
std::string trouble_of(const Circuit& circuit, const Model& model, const BalanceOf& worst) {
    const auto branch_name = [&](Index b) {
        const BranchOwner& owner = model.branches[b];
        return owner.line != none
                   ? circuit.lines[owner.line].path
                   : circuit.components[circuit.passages[owner.passage].component].path;
    };
    switch (worst.balance) {
        case Balance::flow:
            return fmt::format("the flows at {} do not balance", model.node_names[worst.index]);
        case Balance::law:
            return fmt::format("{} finds no flow that fits its pressures",
                               branch_name(worst.index));
        case Balance::torque:
            return fmt::format("the torques on {} do not balance", model.shaft_names[worst.index]);
        case Balance::gear:
            return fmt::format("the speeds on both sides of {} do not fit",
                               circuit.components[model.gears[worst.index]].path);
        case Balance::stroke:
            return fmt::format("{} finds no displacement at its pressure limit",
                               circuit.components[model.machines[worst.index].component].path);
    }
    return {};
}

/// A point at one temperature of its oil.
struct Solved {
    Model model = {};
    std::optional<SteadyState> state = {};
    std::string problem = {};
};

/// Works points out; the temperature of the oil is the point's, or that at which heat balances.
class Worker {
  public:
    Worker(const FlowGraph& graph, const PointFigures& point, std::span<const std::uint8_t> open,
           const Fluid& fluid)
        : graph_(graph), point_(point), open_(open), fluid_(fluid) {}

    Solved solve(double temperature) const {
        Solved solved;
        const Answer<Oil> oil = fluid_.at(Temperature(temperature));
        if (!oil) {
            solved.problem = oil.reason();
            return solved;
        }
        solved.model = model_of(graph_, point_, open_, *oil);
        if (!solved.model.missing.empty()) {
            solved.problem = fmt::format("not given: {}", fmt::join(solved.model.missing, ", "));
            return solved;
        }
        SteadyStateSolver solver(solved.model.network);
        solved.state = solver.solve();
        if (!solved.state)
            solved.problem = "no steady state is found: " +
                             trouble_of(graph_.circuit(), solved.model, solver.trouble().worst);
        return solved;
    }

    /// Heat that stays in the oil; nothing where there is no steady state.
    std::optional<double> left(double temperature, double ambient) const {
        const Solved solved = solve(temperature);
        if (!solved.state) return std::nullopt;
        return heat_balance(graph_.circuit(), solved.model, *solved.state, fluid_, temperature,
                            ambient)
            .left();
    }

    /// The temperature at which none stays, by the false position (Illinois); nothing outside the
    /// range that is looked at.
    std::optional<double> balance(double ambient) const {
        double low = ambient;
        double high = hottest;
        std::optional<double> at_low = left(low, ambient);
        // Oil too thick to be computed at the ambient temperature is looked at where it is warmer.
        while (!at_low && low < high - 20.0) at_low = left(low += 10.0, ambient);
        std::optional<double> at_high = left(high, ambient);
        if (!at_low || !at_high || *at_low < 0.0 || *at_high > 0.0) return std::nullopt;
        int side = 0;
        for (int i = 0; i < most_rounds && high - low > finest; ++i) {
            const double next = (low * *at_high - high * *at_low) / (*at_high - *at_low);
            const std::optional<double> there = left(next, ambient);
            if (!there) return std::nullopt;
            if (std::abs(*there) < close_enough) return next;
            if (*there > 0.0) {
                low = next;
                at_low = there;
                if (side == 1) *at_high /= 2.0;
                side = 1;
            } else {
                high = next;
                at_high = there;
                if (side == -1) *at_low /= 2.0;
                side = -1;
            }
        }
        return low;
    }

  private:
    static constexpr double hottest = 423.15;     // K; no mineral oil is worked hotter
    static constexpr double finest = 1e-6;        // K
    static constexpr double close_enough = 1e-6;  // W
    static constexpr int most_rounds = 60;

    const FlowGraph& graph_;
    const PointFigures& point_;
    std::span<const std::uint8_t> open_;
    const Fluid& fluid_;
};

}  // namespace

OperatingPoint work_out(const FlowGraph& graph, const PointFigures& point,
                        std::span<const std::uint8_t> open, bool working) {
    const Circuit& circuit = graph.circuit();
    OperatingPoint out{.id = point.id(), .state = point.state()};
    const Answer<Fluid> fluid = Fluid::of(fluid_figures(circuit));
    if (!fluid) {
        out.problem = fmt::format("the oil is not known: {}", fluid.reason());
        out.missing.emplace_back("fluid.grade");
        return out;
    }
    const Worker worker(graph, point, open, *fluid);
    const std::optional<double> ambient = ambient_of(point);
    out.oil = point.figure("oil");
    if (!out.oil && ambient && can_balance_heat(circuit)) {
        out.oil = worker.balance(*ambient);
        out.balanced = out.oil.has_value();
    }
    if (!out.oil) {
        out.oil = usual_oil;
        out.assumptions.push_back({"oil", format_quantity(usual_oil, Dimension::temperature),
                                   "neither the point nor a heat balance gives a temperature; "
                                   "common practice, no source"});
    }
    Solved solved = worker.solve(*out.oil);
    for (const Fluid::Assumption& one : fluid->assumptions())
        if (one.of == "density")
            out.assumptions.push_back({fmt::format("fluid.{}", one.of),
                                       format_quantity(one.si, Dimension::density),
                                       std::string(one.source)});
    out.assumptions.insert(out.assumptions.end(), solved.model.assumptions.begin(),
                           solved.model.assumptions.end());
    out.problem = solved.problem;
    out.missing = std::move(solved.model.missing);
    if (!solved.state) return out;
    out.solved = true;
    out.steps = solved.state->steps;
    Reader(graph, solved.model, *solved.state, out).read();
    if (ambient)
        out.heat = heat_balance(circuit, solved.model, *solved.state, *fluid, *out.oil, *ambient);
    if (working) out.working = working_of(circuit, solved.model, *solved.state);
    return out;
}

std::vector<OperatingPoint> operating_points(const Circuit& circuit, std::string_view only,
                                             bool working) {
    const FlowGraph graph(circuit);
    std::vector<PointFigures> points;
    if (circuit.points.empty()) points.emplace_back(circuit, none);
    for (Index i = 0; i < circuit.points.size(); ++i)
        if (only.empty() || circuit.points[i].id == only) points.emplace_back(circuit, i);
    const auto open = standings(graph, points);
    std::vector<OperatingPoint> worked_out;
    for (std::size_t i = 0; i < points.size(); ++i)
        worked_out.push_back(work_out(graph, points[i], open[i], working));
    return worked_out;
}

}  // namespace loopwright::hydraulics
