#include <loopwright/hydraulics/working.h>

#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/friction.h>
#include <loopwright/hydraulics/power_balance.h>
#include <loopwright/hydraulics/working_drive.h>

namespace loopwright::hydraulics {

namespace {

std::string flow(double si) { return format_quantity(si, Dimension::flow); }
std::string pressure(double si) { return format_quantity(si, Dimension::pressure); }
std::string speed(double si) { return format_quantity(si, Dimension::speed); }
std::string torque(double si) { return format_quantity(si, Dimension::torque); }

class Worker {
  public:
    Worker(const Circuit& circuit, const Model& model, const SteadyState& state)
        : circuit_(circuit), model_(model), state_(state) {}

    std::vector<WorkedEquation> work() {
        work_strokes(circuit_, model_, state_, worked_);
        for (std::size_t i = 0; i < model_.machines.size(); ++i) machine(i);
        for (std::size_t i = 0; i < model_.cylinders.size(); ++i) cylinder(i);
        for (std::size_t i = 0; i < model_.branches.size(); ++i) branch(i);
        nodes();
        shafts();
        work_trains(circuit_, model_, state_, worked_);
        return std::move(worked_);
    }

  private:
    void put(std::string_view of, std::string_view what, std::string_view equation,
             std::string figures, std::string result) {
        worked_.push_back({std::string(of), std::string(what), std::string(equation),
                           std::move(figures), std::move(result)});
    }

    std::string_view path(Index component) const { return circuit_.components[component].path; }

    void machine(std::size_t i) {
        const Machine& one = model_.network.machines[i].machine;
        const MachineState& at = state_.machines[i];
        const MachineLaw law = law_of(model_.network.machines[i], at);
        const std::string_view of = path(model_.machines[i].component);
        if (model_.network.machines[i].measured) {
            measured_machine(of, at, law);
            return;
        }
        const double volume = one.displacement.si();
        const double viscosity = at.dynamic_viscosity;
        const std::string size = format_quantity(volume, Dimension::displacement);
        const double geometric = volume * at.shaft_speed * at.relative_displacement;
        put(of, "geometric flow from B to A", "qg = V n s",
            fmt::format("{} x {} x {:.4g}", size, speed(at.shaft_speed), at.relative_displacement),
            flow(geometric));
        const double conductance = one.losses.slip * volume / viscosity + one.leakage.si();
        if (conductance > 0.0) {
            if (one.losses.slip > 0.0)
                put(of, "leakage for each unit of pressure", "G = Cs V/(2 pi eta)",
                    fmt::format("{:.4g} x {} / (2 pi x {})", one.losses.slip, size,
                                format_quantity(viscosity, Dimension::dynamic_viscosity)),
                    format_quantity(conductance, Dimension::leakage));
            const double outer = conductance * one.case_share;
            if (outer > 0.0)
                put(of, "leakage to its housing", "ql = share G ((pA - pL) + (pB - pL))",
                    fmt::format("{:.3g} x {} x ({} + {})", one.case_share,
                                format_quantity(conductance, Dimension::leakage),
                                pressure(at.pressure_a - at.pressure_case),
                                pressure(at.pressure_b - at.pressure_case)),
                    flow(law.flow_case.value));
            if (one.case_share < 1.0)
                put(of, "leakage across its ports", "qx = (1 - share) G (pA - pB)",
                    fmt::format("{:.3g} x {} x {}", 1.0 - one.case_share,
                                format_quantity(conductance, Dimension::leakage),
                                pressure(at.pressure_a - at.pressure_b)),
                    flow((conductance - outer) * (at.pressure_a - at.pressure_b)));
        }
        put(of, "flow out at A", "qA = qg - leakage from A",
            fmt::format("{} - {}", flow(geometric), flow(geometric - law.flow_a.value)),
            flow(law.flow_a.value));
        put(of, "torque of the pressures", "Tp = V s (pA - pB)/(2 pi)",
            fmt::format("{} x {:.4g} x {} / (2 pi)", size, at.relative_displacement,
                        pressure(at.pressure_a - at.pressure_b)),
            torque(volume * at.relative_displacement * (at.pressure_a - at.pressure_b)));
        if (one.losses.drag > 0.0)
            put(of, "viscous drag", "Tv = Cv V eta n/(2 pi)",
                fmt::format("{:.4g} x {} x {} x {} / (2 pi)", one.losses.drag, size,
                            format_quantity(viscosity, Dimension::dynamic_viscosity),
                            speed(at.shaft_speed)),
                torque(one.losses.drag * volume * viscosity * at.shaft_speed));
        if (one.losses.friction > 0.0)
            put(of, "friction", "Tf = Cf V |pA - pB|/(2 pi), against the motion",
                fmt::format("{:.4g} x {} x {} / (2 pi)", one.losses.friction, size,
                            pressure(std::abs(at.pressure_a - at.pressure_b))),
                torque(one.losses.friction * volume * std::abs(at.pressure_a - at.pressure_b)));
        put(of, "torque of its shaft", "T = Tp + Tv + Tf", "", torque(law.torque.value));
    }

    void measured_machine(std::string_view of, const MachineState& at, const MachineLaw& law) {
        const std::string where = fmt::format("{} over its ports, {}, stroke {:.4g}",
                                              pressure(at.pressure_a - at.pressure_b),
                                              speed(at.shaft_speed), at.relative_displacement);
        put(of, "flow out at A", "as in its table", where, flow(law.flow_a.value));
        put(of, "torque of its shaft", "as in its table", where, torque(law.torque.value));
    }

    void cylinder(std::size_t i) {
        const NetworkCylinder& one = model_.network.cylinders[i];
        const std::string_view of = path(model_.cylinders[i].component);
        const double p_a = state_.pressures[one.a];
        const double p_b = one.b == none ? 0.0 : state_.pressures[one.b];
        const double v = state_.speeds[one.shaft];
        const CylinderLaw law =
            cylinder_law(one.cylinder, {.pressure_a = p_a, .pressure_b = p_b, .rod_velocity = v});
        put(of, "flow in at A", "qA = A v",
            fmt::format("{} x {}", format_quantity(one.cylinder.cap.si(), Dimension::area),
                        format_quantity(v, Dimension::velocity)),
            flow(-law.flow_a.value));
        put(of, "force of its rod", "F = pA A - pB Ar",
            fmt::format("{} x {} - {} x {}", pressure(p_a),
                        format_quantity(one.cylinder.cap.si(), Dimension::area), pressure(p_b),
                        format_quantity(one.cylinder.rod_side.si(), Dimension::area)),
            format_quantity(law.force.value, Dimension::force));
    }

    std::string_view branch_name(std::size_t i) const {
        const BranchOwner& owner = model_.branches[i];
        return owner.line != none ? circuit_.lines[owner.line].path
                                  : path(circuit_.passages[owner.passage].component);
    }

    void branch(std::size_t i) {
        const Branch& one = model_.network.branches[i];
        const double q = state_.flows[i];
        constexpr double nothing = 1e-10;
        if (std::abs(q) < nothing) return;
        const double drop = state_.pressures[one.from] - state_.pressures[one.to];
        if (one.kind == Branch::Kind::resistance && one.resistance.law == Resistance::Law::pipe)
            pipe(branch_name(i), one.resistance.pipe, q, drop);
        else if (one.kind == Branch::Kind::resistance &&
                 one.resistance.law == Resistance::Law::element)
            put(branch_name(i), "drop of its element", "dp = dp0 (q/q0) (nu/nu0)",
                fmt::format("{} x ({} / {}) x ({} / {})",
                            pressure(one.resistance.element.drop.si()), flow(q),
                            flow(one.resistance.element.flow.si()), viscosity(),
                            format_quantity(one.resistance.element.viscosity.si(),
                                            Dimension::kinematic_viscosity)),
                pressure(drop));
        else if (one.kind == Branch::Kind::resistance &&
                 one.resistance.law == Resistance::Law::measured)
            put(branch_name(i), "drop", "as in its table",
                fmt::format("{}, {}", flow(q), viscosity()), pressure(drop));
        else if (one.kind == Branch::Kind::resistance)
            put(branch_name(i), "drop of its hole", "dp = rho/2 (q/(Cd A))^2",
                fmt::format("{} / 2 x ({} / ({:.3g} x {}))^2", density(), flow(q),
                            one.resistance.orifice.discharge_coefficient,
                            format_quantity(one.resistance.orifice.area.si(), Dimension::area)),
                pressure(drop));
        else if (one.kind == Branch::Kind::control)
            put(branch_name(i), "flow that it keeps", "q = q0 from its least drop on",
                fmt::format("{} of {}", pressure(drop), pressure(one.control.least_drop.si())),
                flow(q));
        else if (one.kind == Branch::Kind::leg)
            put(branch_name(i), "its leg's flow", "q = share of the divider's flow",
                fmt::format("{:.4g} x {}", one.leg.share, flow(q / one.leg.share)), flow(q));
        else if (one.kind == Branch::Kind::spring)
            put(branch_name(i), "open, it holds", "p in - p out",
                fmt::format("{} - {}", pressure(state_.pressures[one.from]),
                            pressure(state_.pressures[one.to])),
                pressure(drop));
    }

    std::string density() const {
        return format_quantity(model_.network.oil.density.si(), Dimension::density);
    }
    std::string viscosity() const {
        return format_quantity(model_.network.oil.viscosity.si(), Dimension::kinematic_viscosity);
    }

    void pipe(std::string_view of, const Pipe& pipe, double q, double drop) {
        const double v = std::abs(velocity(pipe, Flow(q)).si());
        const std::string bore = format_quantity(pipe.bore.si(), Dimension::length);
        const double reynolds = reynolds_number(pipe, Flow(q), model_.network.oil.viscosity);
        put(of, "velocity", "v = 4 q/(pi d^2)",
            fmt::format("4 x {} / (pi x ({})^2)", flow(std::abs(q)), bore),
            format_quantity(v, Dimension::velocity));
        put(of, "Reynolds number", "Re = v d/nu",
            fmt::format("{} x {} / {}", format_quantity(v, Dimension::velocity), bore, viscosity()),
            fmt::format("{:.0f}", reynolds));
        const double f = friction_factor(reynolds, pipe.roughness.si() / pipe.bore.si()).value;
        put(of, "friction factor",
            reynolds <= laminar_until    ? "f = 64/Re"
            : reynolds >= turbulent_from ? "f by Colebrook and White"
                                         : "f between 64/Re and that by Colebrook and White",
            fmt::format("Re {:.0f}", reynolds), fmt::format("{:.4g}", f));
        put(of, "drop", "dp = rho v^2/2 (f L/d + K)",
            fmt::format("{} x ({})^2 / 2 x ({:.4g} x {} / {} + {:.3g})", density(),
                        format_quantity(v, Dimension::velocity), f,
                        format_quantity(pipe.length.si(), Dimension::length), bore,
                        pipe.minor_losses),
            pressure(drop));
    }

    /// What flows in at each node, term by term.
    void nodes() {
        std::vector<std::string> terms(model_.network.nodes.size());
        std::vector<double> sums(terms.size(), 0.0);
        const auto add = [&](Index node, std::string_view of, double q) {
            constexpr double nothing = 1e-10;
            sums[node] += q;
            if (std::abs(q) < nothing) return;
            std::string& text = terms[node];
            if (!text.empty()) text += q < 0.0 ? " - " : " + ";
            text +=
                fmt::format("{}{} ({})", text.empty() && q < 0.0 ? "-" : "", flow(std::abs(q)), of);
        };
        for (std::size_t i = 0; i < model_.machines.size(); ++i) {
            const NetworkMachine& one = model_.network.machines[i];
            const MachineLaw law = law_of(one, state_.machines[i]);
            const std::string_view of = path(model_.machines[i].component);
            add(one.a, of, law.flow_a.value);
            add(one.b, of, law.flow_b.value);
            add(one.housing, of, law.flow_case.value);
        }
        for (std::size_t i = 0; i < model_.cylinders.size(); ++i) {
            const NetworkCylinder& one = model_.network.cylinders[i];
            const CylinderLaw law = cylinder_law(
                one.cylinder, {.pressure_a = state_.pressures[one.a],
                               .pressure_b = one.b == none ? 0.0 : state_.pressures[one.b],
                               .rod_velocity = state_.speeds[one.shaft]});
            add(one.a, path(model_.cylinders[i].component), law.flow_a.value);
            if (one.b != none) add(one.b, path(model_.cylinders[i].component), law.flow_b.value);
        }
        for (std::size_t i = 0; i < model_.branches.size(); ++i) {
            add(model_.network.branches[i].from, branch_name(i), -state_.flows[i]);
            add(model_.network.branches[i].to, branch_name(i), state_.flows[i]);
        }
        constexpr double nothing = 1e-10;
        for (std::size_t n = 0; n < terms.size(); ++n)
            if (!terms[n].empty() && !model_.network.nodes[n].pressure)
                put(model_.node_names[n], "what flows in", "sum of q = 0", terms[n],
                    flow(std::abs(sums[n]) < nothing ? 0.0 : sums[n]));
    }

    void shafts() {
        const std::vector<double> given =
            carried_torques(model_, state_, shaft_torques(model_, state_));
        for (std::size_t s = 0; s < model_.network.shafts.size(); ++s) {
            if (model_.network.shafts[s].straight) continue;
            std::string terms;
            for (std::size_t i = 0; i < model_.machines.size(); ++i) {
                if (model_.network.machines[i].shaft != s) continue;
                const double taken =
                    law_of(model_.network.machines[i], state_.machines[i]).torque.value;
                if (!terms.empty()) terms += taken < 0.0 ? " - " : " + ";
                terms += fmt::format("{}{} ({})", terms.empty() && taken < 0.0 ? "-" : "",
                                     torque(std::abs(taken)), path(model_.machines[i].component));
            }
            if (terms.empty()) continue;
            const bool driven = model_.network.shafts[s].is_driven();
            put(model_.shaft_names[s],
                driven ? "torque asked of its prime mover" : "torque that it passes on",
                driven ? "T = sum of T" : "T = - sum of T", terms, torque(given[s]));
        }
    }

    const Circuit& circuit_;
    const Model& model_;
    const SteadyState& state_;
    std::vector<WorkedEquation> worked_;
};

}  // namespace

std::vector<WorkedEquation> working_of(const Circuit& circuit, const Model& model,
                                       const SteadyState& state) {
    return Worker(circuit, model, state).work();
}

}  // namespace loopwright::hydraulics
