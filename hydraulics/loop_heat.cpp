#include <loopwright/hydraulics/loop_heat.h>

#include <algorithm>
#include <cmath>

#include <loopwright/hydraulics/heat.h>
#include <loopwright/hydraulics/power_balance.h>

namespace loopwright::hydraulics {

namespace {

/// Oil that loops share, and what becomes of it.
class Body {
  public:
    /// `terms`: what each part has of it, unless null.
    Body(const Model& model, const SteadyState& state, std::vector<std::uint8_t> inside,
         LoopTerms* terms = nullptr)
        : network_(model.network), state_(state), inside_(std::move(inside)), terms_(terms) {
        for (std::size_t i = 0; i < network_.branches.size(); ++i) add_branch(model, i);
        for (std::size_t i = 0; i < network_.machines.size(); ++i) add_machine(model, i);
        for (std::size_t i = 0; i < network_.cylinders.size(); ++i) add_cylinder(model, i);
    }

    double heat() const { return heat_; }
    double exchange() const { return in_; }

  private:
    bool has(Index node) const { return node != none && inside_[node] != 0; }

    void warm(LoopTerm by, double power) {
        heat_ += power;
        by.value = power;
        if (terms_ != nullptr && power != 0.0) terms_->heat.push_back(by);
    }
    void take_in(LoopTerm by, double flow) {
        in_ += flow;
        by.value = flow;
        if (terms_ != nullptr && flow != 0.0) terms_->exchange.push_back(by);
    }

    /// Oil that a machine puts out at a node, and takes in at another of the body, or the other
    /// way.
    void cross(const LoopTerm& by, Index node, double out) {
        if (node != none && !has(node)) take_in(by, std::max(-out, 0.0));
    }

    void add_branch(const Model& model, std::size_t i) {
        const Branch& branch = network_.branches[i];
        const LoopTerm by{.line = model.branches[i].line, .passage = model.branches[i].passage};
        const bool from = has(branch.from);
        const bool to = has(branch.to);
        const bool enters = from != to && (to ? state_.flows[i] : -state_.flows[i]) > 0.0;
        if (enters) take_in(by, std::abs(state_.flows[i]));
        if (enters || (from && to)) warm(by, lost_in_branch(model, state_, i));
    }

    void add_machine(const Model& model, std::size_t i) {
        const NetworkMachine& one = network_.machines[i];
        if (!has(one.a) && !has(one.b)) return;
        const LoopTerm by{.machine = model.machines[i].component};
        const MachineLaw law = law_of(one, state_.machines[i]);
        cross(by, one.a, law.flow_a.value);
        cross(by, one.b, law.flow_b.value);
        cross(by, one.housing, law.flow_case.value);
        double lost = lost_in_machine(model, state_, i);
        if (!has(one.housing)) lost -= heat_into_housing(one.machine, state_.machines[i]);
        warm(by, lost);
    }

    void add_cylinder(const Model& model, std::size_t i) {
        const NetworkCylinder& one = network_.cylinders[i];
        if (!has(one.a) && !has(one.b)) return;
        const LoopTerm by{.machine = model.cylinders[i].component};
        const CylinderLaw law = law_of(one, state_);
        cross(by, one.a, law.flow_a.value);
        if (one.b != none) cross(by, one.b, law.flow_b.value);
        warm(by, lost_in_cylinder(one, state_));
    }

    const Network& network_;
    const SteadyState& state_;
    std::vector<std::uint8_t> inside_;
    LoopTerms* terms_;
    double heat_ = 0.0;
    double in_ = 0.0;
};

/// The nodes of loops that share some, by loop: those of its body.
std::vector<std::vector<std::uint8_t>> bodies(const Model& model,
                                              std::span<const PointLoop> loops) {
    const std::size_t count = model.network.nodes.size();
    std::vector<std::vector<std::uint8_t>> inside;
    for (const PointLoop& loop : loops) {
        std::vector<std::uint8_t> here(count, 0);
        for (const Index port : loop.ports) {
            const Index node = model.node_of_port[port];
            if (node != none && !model.network.nodes[node].pressure) here[node] = 1;
        }
        inside.push_back(std::move(here));
    }
    const auto share = [&](std::size_t a, std::size_t b) {
        for (std::size_t n = 0; n < count; ++n)
            if (inside[a][n] != 0 && inside[b][n] != 0) return true;
        return false;
    };
    for (std::size_t a = 0; a < inside.size(); ++a)
        for (std::size_t b = 0; b < inside.size(); ++b) {
            if (a == b || inside[a] == inside[b] || !share(a, b)) continue;
            for (std::size_t n = 0; n < count; ++n)
                inside[a][n] = inside[b][n] = inside[a][n] | inside[b][n];
        }
    return inside;
}

}  // namespace

LoopTerms loop_terms(const Model& model, const SteadyState& state, std::span<const PointLoop> loops,
                     std::size_t loop) {
    LoopTerms terms;
    const Body body(model, state, bodies(model, loops)[loop], &terms);
    return terms;
}

std::vector<LoopHeat> loop_heats(const Model& model, const SteadyState& state, const Fluid& fluid,
                                 std::span<const PointLoop> loops, double oil) {
    constexpr double told_from = 1e-9;  // m3/s; less is rounding, or a valve that is shut
    std::vector<LoopHeat> heats;
    const auto inside = bodies(model, loops);
    const auto specific = fluid.specific_heat(Temperature(oil));
    for (std::size_t i = 0; i < loops.size(); ++i) {
        if (loops[i].ports.empty()) continue;  // short-circuited: it has no sides
        const Body body(model, state, inside[i]);
        LoopHeat& loop = heats.emplace_back();
        loop.first_pump = loops[i].first_pump;
        loop.heat = body.heat();
        loop.exchange = body.exchange();
        if (loop.exchange > told_from && specific)
            loop.temperature =
                balance_temperature(
                    Power(loop.heat),
                    stream_conductance(Flow(loop.exchange), model.network.oil.density, *specific),
                    Temperature(oil))
                    .si();
    }
    return heats;
}

}  // namespace loopwright::hydraulics
