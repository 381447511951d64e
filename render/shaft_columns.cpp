#include <loopwright/render/shaft_columns.h>

#include <algorithm>
#include <set>

#include <loopwright/render/loop_ranks.h>

namespace loopwright {

namespace {

/// The shafts of a train that a loop pump is on, or that lead to one; without such, a charge pump.
std::set<Index> shafts_to_pumps(const Sketch& sketch, const Roles& roles, const Train& train) {
    const auto is = [&](PartRole role) {
        return [&roles, role](const TrainPart& one) {
            return roles.part[static_cast<std::size_t>(one.part)] == role;
        };
    };
    const PartRole pump = std::any_of(train.begin(), train.end(), is(PartRole::loop_pump))
                              ? PartRole::loop_pump
                              : PartRole::charge_pump;
    std::set<Index> shafts;
    for (std::size_t i = train.size(); i-- > 0;) {
        const TrainPart& one = train[i];
        if (is(pump)(one)) shafts.insert(one.shaft);
        const Component& component = sketch.component(one.part);
        if (component.far_shaft != none && shafts.count(one.shaft) != 0)
            shafts.insert(one.backwards ? component.far_shaft : component.shaft);
    }
    return shafts;
}

int next_rank(int rank) { return (rank + 1) % 10 != 0 ? rank + 1 : rank; }

}  // namespace

std::map<int, std::vector<int>> shaft_columns(const Sketch& sketch, const Roles& roles,
                                              const Block& block) {
    std::map<int, std::vector<int>> columns;
    for (const Train& train : roles.trains) {
        const std::set<Index> to_pump = shafts_to_pumps(sketch, roles, train);
        int before_pump = rank_prime_mover + 1;
        int behind = rank_actuator + 1;
        for (const TrainPart& one : train) {
            const PartRole role = roles.part[static_cast<std::size_t>(one.part)];
            if (role == PartRole::prime_mover || role == PartRole::loop_pump ||
                role == PartRole::charge_pump)
                behind = rank_charge_pump + 1;
            if (role != PartRole::on_shaft) continue;
            int& rank = to_pump.count(one.shaft) != 0 ? before_pump : behind;
            if (std::find(block.parts.begin(), block.parts.end(), one.part) != block.parts.end())
                columns[rank].push_back(one.part);
            rank = next_rank(rank);
        }
    }
    return columns;
}

}  // namespace loopwright
