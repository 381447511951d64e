#include <loopwright/hydraulics/charge_balance.h>

#include <algorithm>
#include <string_view>

namespace loopwright::hydraulics {

namespace {

/// Less is rounding, or a valve that is shut.
constexpr double told_from = 1e-9;  // m3/s

/// The nodes that hang together with a charge line: over pipes, elements, restrictions, checks and
/// the machines of loops, and not past reservoirs and housings.
class Fed {
  public:
    Fed(const Circuit& circuit, const Model& model)
        : circuit_(circuit), model_(model), ends_(model.network.nodes.size(), 0) {
        for (std::size_t i = 0; i < ends_.size(); ++i)
            if (model.network.nodes[i].pressure) ends_[i] = 1;
        for (std::size_t i = 0; i < model.machines.size(); ++i)
            if (model.machines[i].housing != model.machines[i].b)
                ends_[model.network.machines[i].housing] = 1;
    }

    /// Whether a loop's machine is among what was found.
    bool find(Index outlet, std::vector<std::uint8_t>& fed) const {
        fed.assign(model_.network.nodes.size(), 0);
        std::vector<Index> queue{outlet};
        fed[outlet] = 1;
        bool loop = false;
        const auto reach = [&](Index node) {
            if (fed[node] != 0 || ends_[node] != 0) return;
            fed[node] = 1;
            queue.push_back(node);
        };
        // NOLINTNEXTLINE(modernize-loop-convert): the queue grows on the way
        for (std::size_t i = 0; i < queue.size(); ++i) {
            for (std::size_t b = 0; b < model_.branches.size(); ++b) {
                const Branch& branch = model_.network.branches[b];
                if (!leads_on(b)) continue;
                if (branch.from == queue[i]) reach(branch.to);
                if (branch.to == queue[i]) reach(branch.from);
            }
            for (std::size_t m = 0; m < model_.machines.size(); ++m) {
                const NetworkMachine& machine = model_.network.machines[m];
                if (draws(m)) continue;
                if (machine.a != queue[i] && machine.b != queue[i]) continue;
                loop = true;
                reach(machine.a);
                reach(machine.b);
            }
        }
        return loop;
    }

    /// A pump with one direction, from an inlet.
    bool draws(std::size_t machine) const {
        return circuit_.ports[model_.machines[machine].b].use == PortUse::suction;
    }

  private:
    bool leads_on(std::size_t b) const {
        const BranchOwner& owner = model_.branches[b];
        if (owner.line != none) return true;
        const PassageClass passage = circuit_.passages[owner.passage].passage;
        return passage == PassageClass::element || passage == PassageClass::one_way ||
               passage == PassageClass::metering || passage == PassageClass::divider;
    }

    const Circuit& circuit_;
    const Model& model_;
    std::vector<std::uint8_t> ends_;
};

}  // namespace

std::vector<ChargeBalance> charge_balances(const Circuit& circuit, const Model& model,
                                           const SteadyState& state) {
    std::vector<ChargeBalance> balances;
    const Fed search(circuit, model);
    std::vector<std::uint8_t> fed;
    for (std::size_t m = 0; m < model.machines.size(); ++m) {
        const NetworkMachine& pump = model.network.machines[m];
        if (!search.draws(m) || !search.find(pump.a, fed)) continue;
        ChargeBalance balance{.source = model.machines[m].component};
        balance.given = law_of(pump, state.machines[m]).flow_a.value;
        const auto use = [&](std::string_view what, std::string_view where, double flow,
                             bool spilt = false) {
            if (flow > told_from || flow < -told_from)
                balance.uses.push_back({what, std::string(where), flow, spilt});
        };
        for (std::size_t i = 0; i < model.machines.size(); ++i) {
            const NetworkMachine& machine = model.network.machines[i];
            if (!search.draws(i) && fed[machine.a] != 0)
                balance.machines.push_back(model.machines[i].component);
            if (i == m || fed[machine.housing] != 0) continue;
            if (fed[machine.a] == 0 && fed[machine.b] == 0) continue;
            const std::string_view path = circuit.components[model.machines[i].component].path;
            const MachineLaw law = law_of(machine, state.machines[i]);
            if (search.draws(i))
                use("another pump gives", path, -law.flow_a.value);
            else
                use("leakage", path, law.flow_case.value);
        }
        for (std::size_t b = 0; b < model.branches.size(); ++b) {
            const Branch& branch = model.network.branches[b];
            if (fed[branch.from] == fed[branch.to]) continue;
            const double out = fed[branch.from] != 0 ? state.flows[b] : -state.flows[b];
            const BranchOwner& owner = model.branches[b];
            if (owner.line != none) {
                use("line", circuit.lines[owner.line].path, out);
                continue;
            }
            const Passage& passage = circuit.passages[owner.passage];
            use(passage.passage == PassageClass::pressure_opened ? "over its setting"
                : passage.passage == PassageClass::reduced       ? "reduced"
                                                                 : "through",
                circuit.components[passage.component].path, out,
                passage.passage == PassageClass::pressure_opened);
        }
        balances.push_back(std::move(balance));
    }
    return balances;
}

}  // namespace loopwright::hydraulics
