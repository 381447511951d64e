#include <loopwright/hydraulics/equations.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include <loopwright/hydraulics/complementarity.h>
#include <loopwright/hydraulics/equation_sinks.h>
#include <loopwright/hydraulics/flow_divider.h>
#include <loopwright/hydraulics/load_law.h>
#include <loopwright/hydraulics/scales.h>

namespace loopwright::hydraulics {

namespace {

/// An open valve loses so much (scaled pressure over m3/s, 1 mPa at 60 L/min) that two side by side
/// know how they share a flow.
constexpr double seat_loss = 1e-6;

}  // namespace

std::uint32_t Equations::add_unknown(double scale, double guess, double row_scale,
                                     BalanceOf balance) {
    const auto variable = static_cast<std::uint32_t>(rows_.size());
    rows_.push_back(balance);
    scale_.push_back(scale);
    guess_.push_back(guess / scale);
    row_scale_.push_back(row_scale);
    return variable;
}

std::uint32_t Equations::add_fixed(double value) {
    fixed_.push_back(value);
    // Behind the unknowns, whose number is not known yet: counted from the far end at first.
    return std::numeric_limits<std::uint32_t>::max() -
           static_cast<std::uint32_t>(fixed_.size() - 1);
}

Equations::Equations(const Network& network) : network_(network), legs_(network.dividers.size()) {
    atmosphere_ = add_fixed(0.0);
    whole_ = add_fixed(1.0);
    for (Index i = 0; i < network.nodes.size(); ++i) {
        const Node& node = network.nodes[i];
        node_variable_.push_back(node.pressure ? add_fixed(*node.pressure)
                                               : add_unknown(pressure_scale, node.guess,
                                                             1.0 / flow_scale, {Balance::flow, i}));
    }
    for (Index i = 0; i < network.shafts.size(); ++i) {
        const Shaft& shaft = network.shafts[i];
        shaft_variable_.push_back(
            shaft.speed ? add_fixed(*shaft.speed)
                        : add_unknown(shaft.straight ? velocity_scale : speed_scale, shaft.guess,
                                      1.0 / (shaft.straight ? force_scale : torque_scale),
                                      {Balance::torque, i}));
    }
    for (Index i = 0; i < network.branches.size(); ++i) {
        const Branch& branch = network.branches[i];
        double row_scale = 1.0;  // a spring's law has no dimension
        if (branch.kind == Branch::Kind::resistance) row_scale = 1.0 / pressure_scale;
        if (branch.kind == Branch::Kind::control) row_scale = 1.0 / flow_scale;
        if (branch.kind == Branch::Kind::leg) {
            std::vector<Index>& legs = legs_[branch.leg.divider];
            row_scale = legs.empty() ? 1.0 : 1.0 / flow_scale;
            legs.push_back(i);
        }
        branch_variable_.push_back(add_unknown(flow_scale, 0.0, row_scale, {Balance::law, i}));
    }
    for (Index i = 0; i < network.gears.size(); ++i)
        gear_variable_.push_back(
            add_unknown(torque_scale, 0.0, 1.0 / speed_scale, {Balance::gear, i}));
    for (Index i = 0; i < network.machines.size(); ++i) {
        const NetworkMachine& machine = network.machines[i];
        stroke_variable_.push_back(machine.control.acts()
                                       ? add_unknown(1.0, machine.stroke, 1.0, {Balance::stroke, i})
                                       : add_fixed(machine.stroke));
    }
    for (Index i = 0; i < network.movers.size(); ++i) {
        mover_variable_.push_back(add_unknown(torque_scale, 0.0, 1.0, {Balance::mover, i}));
        share_variable_.push_back(
            network.movers[i].spared ? add_unknown(1.0, 1.0, 1.0, {Balance::share, i}) : whole_);
    }

    const auto behind_unknowns = [&](std::uint32_t& variable) {
        if (variable >= size())
            variable = static_cast<std::uint32_t>(size()) +
                       (std::numeric_limits<std::uint32_t>::max() - variable);
    };
    for (auto* variables : {&node_variable_, &shaft_variable_, &branch_variable_, &gear_variable_,
                            &stroke_variable_, &share_variable_})
        std::for_each(variables->begin(), variables->end(), behind_unknowns);
    behind_unknowns(atmosphere_);
    behind_unknowns(whole_);
    figures_.assign(size() + fixed_.size(), 0.0);

    Collector collector;
    assemble(collector);
    for (const MatrixPlace& term : collector.terms)
        if (term.row < size() && term.column < size()) places_.push_back(term);
    std::sort(places_.begin(), places_.end());
    places_.erase(std::unique(places_.begin(), places_.end()), places_.end());
    slots_.reserve(collector.terms.size());
    for (const MatrixPlace& term : collector.terms) {
        const auto at = std::lower_bound(places_.begin(), places_.end(), term);
        slots_.push_back(static_cast<std::uint32_t>(
            at != places_.end() && *at == term ? at - places_.begin()
                                               : static_cast<std::ptrdiff_t>(places_.size())));
        slot_scales_.push_back(term.row < size() && term.column < size()
                                   ? row_scale_[term.row] * scale_[term.column]
                                   : 0.0);
    }
}

double Equations::figure(std::span<const double> unknowns, std::uint32_t variable) const {
    return variable < unknowns.size() ? unknowns[variable] * scale_[variable]
                                      : fixed_[variable - unknowns.size()];
}

void Equations::evaluate(std::span<const double> unknowns, const Smoothing& smoothing,
                         std::span<double> residuals, std::span<double> jacobian) {
    std::fill(residuals.begin(), residuals.end(), 0.0);
    std::fill(jacobian.begin(), jacobian.end(), 0.0);
    // What is fixed may have been changed since.
    for (Index i = 0; i < network_.nodes.size(); ++i)
        if (network_.nodes[i].pressure)
            fixed_[node_variable_[i] - size()] = *network_.nodes[i].pressure;
    for (Index i = 0; i < network_.shafts.size(); ++i)
        if (network_.shafts[i].speed)
            fixed_[shaft_variable_[i] - size()] = *network_.shafts[i].speed;
    for (Index i = 0; i < network_.machines.size(); ++i)
        if (!network_.machines[i].control.acts())
            fixed_[stroke_variable_[i] - size()] = network_.machines[i].stroke;
    for (std::size_t i = 0; i < size(); ++i) figures_[i] = unknowns[i] * scale_[i];
    std::copy(fixed_.begin(), fixed_.end(), figures_.begin() + static_cast<std::ptrdiff_t>(size()));
    Evaluator evaluator(*this, unknowns, smoothing, residuals, jacobian);
    assemble(evaluator);
}

template <class Sink>
void Equations::assemble(Sink& sink) const {
    for (Index i = 0; i < network_.nodes.size(); ++i) {
        const std::uint32_t own = node_variable_[i];
        const double leak = sink.smoothing().leak * flow_scale / pressure_scale;
        const double inertia = sink.smoothing().inertia;
        Dual<1> term(-sink.value(own) * leak - sink.moved(own) * inertia * flow_scale);
        term.slope[0] = -leak - inertia * flow_scale / pressure_scale;
        sink.add(own, term, Variables<1>{own});
    }
    for (Index i = 0; i < network_.shafts.size(); ++i) {
        const std::uint32_t own = shaft_variable_[i];
        const bool straight = network_.shafts[i].straight;
        const double inertia = sink.smoothing().inertia * (straight ? force_scale : torque_scale);
        Dual<1> term(sink.moved(own) * inertia);
        term.slope[0] = inertia / (straight ? velocity_scale : speed_scale);
        sink.add(own, term, Variables<1>{own});
    }
    for (Index i = 0; i < network_.branches.size(); ++i) assemble_branch(sink, i);
    for (Index i = 0; i < network_.dividers.size(); ++i) assemble_divider(sink, i);
    for (Index i = 0; i < network_.machines.size(); ++i) assemble_machine(sink, i);
    for (Index i = 0; i < network_.movers.size(); ++i) assemble_mover(sink, i);
    for (const NetworkCylinder& one : network_.cylinders) {
        const Variables<3> variables{node_variable_[one.a],
                                     one.b == none ? atmosphere_ : node_variable_[one.b],
                                     shaft_variable_[one.shaft]};
        const CylinderLaw law =
            cylinder_law(one.cylinder, {.pressure_a = sink.value(variables[0]),
                                        .pressure_b = sink.value(variables[1]),
                                        .rod_velocity = sink.value(variables[2])});
        sink.add(variables[0], law.flow_a, variables);
        sink.add(variables[1], law.flow_b, variables);
        sink.add(variables[2], -law.force, variables);
    }
    for (Index i = 0; i < network_.gears.size(); ++i) {
        const NetworkGear& gear = network_.gears[i];
        const Variables<2> state{gear_variable_[i], shaft_variable_[gear.in]};
        const double torque = sink.value(state[0]);
        const double speed = sink.value(state[1]);
        sink.add(state[1], Dual<1>::variable(0, torque), Variables<1>{state[0]});
        sink.add(shaft_variable_[gear.out],
                 -torque_out(gear.gear, {.torque_in = torque, .speed_in = speed}), state);
        const Variables<2> speeds{state[1], shaft_variable_[gear.out]};
        sink.add(gear_variable_[i],
                 Dual<2>::variable(0, speed) -
                     Dual<2>::variable(1, sink.value(speeds[1])) * gear.gear.ratio,
                 speeds);
    }
    for (const NetworkLoad& load : network_.loads) assemble_load(sink, load);
}

template <class Sink>
void Equations::assemble_branch(Sink& sink, Index i) const {
    const Branch& branch = network_.branches[i];
    const std::uint32_t own = branch_variable_[i];
    const std::uint32_t from = node_variable_[branch.from];
    const std::uint32_t to = node_variable_[branch.to];
    const double flow = sink.value(own);
    const double before = sink.value(from);
    const double behind = sink.value(to);
    sink.add(from, -Dual<1>::variable(0, flow), Variables<1>{own});
    sink.add(to, Dual<1>::variable(0, flow), Variables<1>{own});
    switch (branch.kind) {
        case Branch::Kind::resistance: {
            const Resistance& one = branch.resistance;
            ThroughFlow::Figure lost;
            if (one.law == Resistance::Law::pipe) lost = drop(one.pipe, flow, network_.oil);
            if (one.law == Resistance::Law::orifice) lost = drop(one.orifice, flow, network_.oil);
            if (one.law == Resistance::Law::element) lost = drop(one.element, flow, network_.oil);
            if (one.law == Resistance::Law::measured)
                lost = drop(*one.measured, flow, network_.oil);
            Dual<3> law(before - behind - lost.value);
            law.slope = {-lost.slope[ThroughFlow::flow], 1.0, -1.0};
            sink.add(own, law, Variables<3>{own, from, to});
            break;
        }
        case Branch::Kind::spring: {
            const Spring& one = branch.spring;
            const std::uint32_t chamber =
                one.chamber == none ? atmosphere_ : node_variable_[one.chamber];
            const std::uint32_t pilot = one.pilot == none ? atmosphere_ : node_variable_[one.pilot];
            const ValveState::Figure held =
                holding(one.valve, {.through = flow,
                                    .pressure_inlet = before,
                                    .pressure_outlet = behind,
                                    .pressure_chamber = sink.value(chamber),
                                    .pressure_pilot = sink.value(pilot)});
            // Flow and what holds it shut, scaled; seat and scales by the chain rule.
            constexpr double per_pressure = 1.0 / pressure_scale;
            constexpr double per_flow = 1.0 / flow_scale;
            const Dual<2> law =
                complementarity(Dual<2>::variable(0, flow * per_flow),
                                Dual<2>::variable(1, held.value * per_pressure + seat_loss * flow));
            ValveState::Figure term(law.value);
            for (std::size_t k = 0; k < term.slope.size(); ++k)
                term.slope[k] = law.slope[1] * per_pressure * held.slope[k];
            term.slope[ValveState::flow] += law.slope[0] * per_flow + law.slope[1] * seat_loss;
            sink.add(own, term, Variables<5>{own, from, to, chamber, pilot});
            break;
        }
        case Branch::Kind::control: {
            const Dual<1> kept = hydraulics::flow(branch.control, before - behind);
            Dual<3> law(flow - kept.value);
            law.slope = {1.0, -kept.slope[0], kept.slope[0]};
            sink.add(own, law, Variables<3>{own, from, to});
            break;
        }
        case Branch::Kind::leg:
            break;  // with its divider
    }
}

template <class Sink>
void Equations::assemble_divider(Sink& sink, Index d) const {
    const std::vector<Index>& legs = legs_[d];
    if (legs.empty()) return;
    const std::uint32_t first = branch_variable_[legs.front()];
    const std::uint32_t common = node_variable_[network_.dividers[d].node];
    const double first_share = network_.branches[legs.front()].leg.share;
    std::vector<double> pressures;
    std::vector<double> shares;
    for (const Index leg : legs) {
        pressures.push_back(sink.value(node_variable_[network_.branches[leg].to]));
        shares.push_back(network_.branches[leg].leg.share);
    }
    std::vector<double> slopes(legs.size());
    SpoolDivider law{.over_common = 1.0 / pressure_scale};
    if (network_.dividers[d].rotary) {
        law.law = rotary_divider(sink.value(common), shares, pressures, slopes) / pressure_scale;
        for (double& slope : slopes) slope /= pressure_scale;
    } else {
        law = spool_divider(sink.value(first), sink.value(common), pressures, slopes);
    }
    Dual<2> term(law.law);
    term.slope = {law.over_common, law.over_flow};
    sink.add(first, term, Variables<2>{common, first});
    for (std::size_t i = 0; i < legs.size(); ++i) {
        Dual<1> of_leg;
        of_leg.slope[0] = slopes[i];
        sink.add(first, of_leg, Variables<1>{node_variable_[network_.branches[legs[i]].to]});
        if (i == 0) continue;
        const std::uint32_t own = branch_variable_[legs[i]];
        sink.add(own,
                 Dual<2>::variable(0, sink.value(own)) * first_share -
                     Dual<2>::variable(1, sink.value(first)) * shares[i],
                 Variables<2>{own, first});
    }
}

template <class Sink>
void Equations::assemble_machine(Sink& sink, Index i) const {
    const NetworkMachine& one = network_.machines[i];
    const Variables<5> variables{node_variable_[one.a], node_variable_[one.b],
                                 node_variable_[one.housing], shaft_variable_[one.shaft],
                                 stroke_variable_[i]};
    const MachineLaw law =
        law_of(one, {.pressure_a = sink.value(variables[0]),
                     .pressure_b = sink.value(variables[1]),
                     .pressure_case = sink.value(variables[2]),
                     .shaft_speed = sink.value(variables[3]),
                     .relative_displacement = sink.value(variables[4]),
                     .dynamic_viscosity = network_.oil.dynamic_viscosity().si()});
    // The viscosity is no unknown.
    const auto term = [](const MachineLaw::Figure& figure) {
        Dual<5> kept(figure.value);
        std::copy_n(figure.slope.begin(), kept.slope.size(), kept.slope.begin());
        return kept;
    };
    sink.add(variables[0], term(law.flow_a), variables);
    sink.add(variables[1], term(law.flow_b), variables);
    sink.add(variables[2], term(law.flow_case), variables);
    sink.add(variables[3], term(law.torque), variables);
    if (one.control.acts()) assemble_stroke(sink, i, law);
}

template <class Sink>
void Equations::assemble_stroke(Sink& sink, Index i, const MachineLaw& law) const {
    const NetworkMachine& one = network_.machines[i];
    const Variables<StrokeState::count> variables{
        stroke_variable_[i],
        node_variable_[one.a],
        node_variable_[one.b],
        shaft_variable_[one.shaft],
        one.sensed == none ? atmosphere_ : node_variable_[one.sensed],
        one.mover == none ? whole_ : share_variable_[one.mover]};
    sink.add(variables[0],
             stroke_law(one.control, one.stroke,
                        {.relative_displacement = sink.value(variables[0]),
                         .pressure_a = sink.value(variables[1]),
                         .pressure_b = sink.value(variables[2]),
                         .shaft_speed = sink.value(variables[3]),
                         .pressure_sensed = sink.value(variables[4]),
                         .share_left = sink.value(variables[5])},
                        law.torque),
             variables);
}

/// The torque that it gives goes into its shaft's balance.
template <class Sink>
void Equations::assemble_mover(Sink& sink, Index i) const {
    const NetworkMover& one = network_.movers[i];
    const Variables<MoverState::count> variables{shaft_variable_[one.shaft], mover_variable_[i]};
    const MoverState state{.shaft_speed = sink.value(variables[0]),
                           .given_torque = sink.value(variables[1])};
    sink.add(variables[0], -Dual<1>::variable(0, state.given_torque), Variables<1>{variables[1]});
    sink.add(variables[1], mover_law(one.mover, one.setting, state), variables);
    if (!one.spared) return;
    const std::uint32_t share = share_variable_[i];
    const Dual<2> room = load_room(one.mover, one.setting, state);
    Dual<3> held(room.value);
    std::copy_n(room.slope.begin(), room.slope.size(), held.slope.begin());
    const Dual<3> left = Dual<3>::variable(2, sink.value(share));
    sink.add(share, between(left, Dual<3>(1.0) - left, held),
             Variables<3>{variables[0], variables[1], share});
}

template <class Sink>
void Equations::assemble_load(Sink& sink, const NetworkLoad& load) const {
    const Variables<2> variables{
        shaft_variable_[load.shaft],
        load.brake_node == none ? atmosphere_ : node_variable_[load.brake_node]};
    if (load.off_at_first && sink.smoothing().brakes_off) {
        sink.add(variables[0], Dual<2>(0.0), variables);
        return;
    }
    sink.add(variables[0],
             load_law(load, network_.shafts[load.shaft].straight, sink.value(variables[0]),
                      sink.value(variables[1])),
             variables);
}

}  // namespace loopwright::hydraulics
