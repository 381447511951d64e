#include <loopwright/hydraulics/point_worker.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/beyond_tables.h>

namespace loopwright::hydraulics {

namespace {

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
            return fmt::format("{} finds no displacement that its controls allow",
                               circuit.components[model.machines[worst.index].component].path);
        case Balance::mover:
        case Balance::share:
            return fmt::format("{} finds no speed at which it gives what it is asked",
                               circuit.components[model.movers[worst.index]].path);
    }
    return {};
}

/// A pressure below vacuum is the equations' own, not a machine's. Where there is one, or nothing.
std::string torn(const Model& model, const SteadyState& state) {
    const auto lowest = std::min_element(state.pressures.begin(), state.pressures.end());
    if (lowest == state.pressures.end() || *lowest >= vacuum) return {};
    return fmt::format(
        "the oil at {} would stand at {}, below vacuum: more is drawn from there than comes, and "
        "no machine works so",
        model.node_names[static_cast<std::size_t>(lowest - state.pressures.begin())],
        format_quantity(*lowest, Dimension::pressure));
}

/// What prime movers cannot do that a state asks of them; nothing where all can.
std::string overwhelmed(const Circuit& circuit, const Model& model, const SteadyState& state) {
    constexpr double rounding = 1e-6;
    for (std::size_t i = 0; i < model.movers.size(); ++i) {
        const NetworkMover& one = model.network.movers[i];
        if (one.mover.droop <= 0.0) continue;
        const Component& component = circuit.components[model.movers[i]];
        const double turns = state.speeds[one.shaft];
        const double given = state.mover_torques[i];
        const std::string torque = format_quantity(std::abs(given), Dimension::torque);
        const bool all_given = given >= full_load_torque(one.mover, turns).value * (1.0 - rounding);
        if (all_given && turns < stalling_speed(one.mover).si() * (1.0 - rounding))
            return fmt::format("{} stalls: it is asked for more than {}, which is all it gives",
                               component.path, torque);
        if (one.mover.braking_torque &&
            given <= -one.mover.braking_torque->si() * (1.0 - rounding) &&
            turns > circuit.figure(component, "max-speed").value_or(0.0))
            return fmt::format(
                "{} is driven to {}: its load asks for more braking than {}, which is all it gives",
                component.path, format_quantity(turns, Dimension::speed), torque);
    }
    return {};
}

/// Data of prime movers that their loads drive, without which it is not known what they do then.
std::vector<std::string> missing_when_driven(const Circuit& circuit, const Model& model,
                                             const SteadyState& state) {
    std::vector<std::string> missing;
    for (std::size_t i = 0; i < model.movers.size(); ++i) {
        const PrimeMover& mover = model.network.movers[i].mover;
        constexpr double nothing = 1e-9;  // of rated torque
        const bool driven = state.mover_torques[i] < -nothing * mover.rated_torque.si();
        if (driven && mover.droop > 0.0 && !mover.braking_torque)
            missing.push_back(
                fmt::format("{}.braking-torque", circuit.components[model.movers[i]].path));
    }
    return missing;
}

}  // namespace

bool is_workable(const Circuit& circuit, const Model& model, const SteadyState& state) {
    return missing_when_driven(circuit, model, state).empty() && torn(model, state).empty() &&
           beyond_tables(circuit, model, state).empty() &&
           overwhelmed(circuit, model, state).empty();
}

Answer<Fluid> fluid_of(const Circuit& circuit) { return Fluid::of(fluid_figures(circuit)); }

Solved PointWorker::solve(double temperature) const {
    Solved solved;
    if (standing_.open.empty() && !graph_.circuit().passages.empty()) {
        solved.problem = fmt::format(
            "how the valves stand in {} is not known: no situation has that state with their "
            "positions, or there are too many",
            name(point_.state()));
        return solved;
    }
    const Answer<Oil> oil = fluid_.at(Temperature(temperature));
    if (!oil) {
        solved.problem = oil.reason();
        return solved;
    }
    solved.model = model_of(graph_, point_, standing_.open, *oil);
    if (!solved.model.contradiction.empty()) {
        solved.problem = solved.model.contradiction;
        return solved;
    }
    if (!solved.model.missing.empty()) {
        solved.problem = fmt::format("not given: {}", fmt::join(solved.model.missing, ", "));
        return solved;
    }
    SteadyStateSolver solver(solved.model.network);
    solved.state = solver.solve();
    if (!solved.state) {
        solved.problem = "no steady state is found: " +
                         trouble_of(graph_.circuit(), solved.model, solver.trouble().worst);
        return solved;
    }
    solved.model.missing = missing_when_driven(graph_.circuit(), solved.model, *solved.state);
    if (!solved.model.missing.empty()) {
        solved.state.reset();
        solved.problem = fmt::format("the load drives the prime mover, and not given: {}",
                                     fmt::join(solved.model.missing, ", "));
        return solved;
    }
    solved.problem = beyond_tables(graph_.circuit(), solved.model, *solved.state);
    if (!solved.problem.empty()) {
        solved.state.reset();
        return solved;
    }
    solved.problem = torn(solved.model, *solved.state);
    if (solved.problem.empty())
        solved.problem = overwhelmed(graph_.circuit(), solved.model, *solved.state);
    return solved;
}

std::optional<HeatBalance> PointWorker::heat(double temperature, double ambient) const {
    const Solved solved = solve(temperature);
    if (!solved.problem.empty()) return std::nullopt;
    return heat_balance(graph_.circuit(), solved.model, *solved.state, fluid_, temperature,
                        ambient);
}

OperatingPoint work_out(const FlowGraph& graph, const PointFigures& point,
                        const PointStanding& standing, bool working) {
    const Circuit& circuit = graph.circuit();
    OperatingPoint out{.id = point.id(), .state = point.state()};
    if (point.is_parted())
        for (const PointLoop& loop : standing.loops)
            out.loop_states.push_back({loop.first_pump, point.state(loop.first_pump)});
    const Answer<Fluid> fluid = fluid_of(circuit);
    if (!fluid) {
        out.problem = fmt::format("the oil is not known: {}", fluid.reason());
        out.missing.emplace_back("fluid.grade");
        return out;
    }
    const PointWorker worker(graph, point, standing, *fluid);
    const std::optional<double> ambient = ambient_of(point);
    out.oil = point.figure("oil");
    if (!out.oil && ambient && can_balance_heat(circuit)) {
        out.oil = temperature_of_balance(
            [&](double oil) -> std::optional<double> {
                const auto heat = worker.heat(oil, *ambient);
                return heat ? std::optional(heat->left()) : std::nullopt;
            },
            *ambient);
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
    read_solution(graph, solved.model, *solved.state, out);
    out.loops = loop_heats(solved.model, *solved.state, *fluid, standing.loops, *out.oil);
    if (ambient)
        out.heat = heat_balance(circuit, solved.model, *solved.state, *fluid, *out.oil, *ambient);
    if (working) {
        out.working = working_of(circuit, solved.model, *solved.state);
        const auto heat = heat_working_of(circuit, solved.model, *solved.state,
                                          {.fluid = *fluid,
                                           .loops = standing.loops,
                                           .oil = *out.oil,
                                           .ambient = ambient,
                                           .balanced = out.balanced});
        out.working.insert(out.working.end(), heat.begin(), heat.end());
    }
    return out;
}

}  // namespace loopwright::hydraulics
