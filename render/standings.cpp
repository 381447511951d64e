#include <loopwright/render/standings.h>

#include <algorithm>
#include <set>

#include <loopwright/render/loop_ranks.h>
#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

// Actuators that stand on one another are the last.
constexpr int last_batch = 1 << 20;

class StandingFinder {
  public:
    StandingFinder(const Sketch& sketch, const Roles& roles, const Block& block)
        : sketch_(sketch), roles_(roles), block_(block) {}

    /// The outermost assemblies of actuators that do not stand on others.
    std::set<Index> apart() const {
        std::set<Index> homes;
        for (const int p : block_.parts)
            if (role(p) == PartRole::loop_actuator) homes.insert(home(p));
        if (homes.size() < 2) return {};
        homes.erase(none);
        std::set<Index> apart;
        for (const int p : block_.parts)
            if (!sketch_.parts[static_cast<std::size_t>(p)].is_mark() && !stands_on_shaft(p) &&
                homes.count(home(p)) != 0)
                apart.insert(home(p));
        return apart;
    }

    Index home(int p) const {
        return next_inside(sketch_.circuit(), sketch_.component(p).assembly, none);
    }
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }

    /// In the block.
    bool has(const Train& train, PartRole wanted) const {
        return std::any_of(train.begin(), train.end(), [&](const TrainPart& one) {
            return role(one.part) == wanted && std::find(block_.parts.begin(), block_.parts.end(),
                                                         one.part) != block_.parts.end();
        });
    }

  private:
    bool stands_on_shaft(int p) const {
        return role(p) == PartRole::loop_actuator || role(p) == PartRole::load ||
               role(p) == PartRole::on_shaft || role(p) == PartRole::prime_mover;
    }

    const Sketch& sketch_;
    const Roles& roles_;
    const Block& block_;
};

}  // namespace

Standings::Standings(const Sketch& sketch, const Roles& roles, const Block& block) {
    const StandingFinder finder(sketch, roles, block);
    const std::set<Index> apart = finder.apart();
    for (const int p : block.parts)
        if (finder.role(p) == PartRole::loop_actuator)
            place_[p] = {rank_actuator, apart.count(finder.home(p)) == 0
                                            ? last_batch
                                            : static_cast<int>(finder.home(p)) + 1};
    for (const Train& train : roles.trains)
        for (const TrainPart& one : train) {
            const auto actuator = place_.find(one.part);
            if (actuator == place_.end() || finder.role(one.part) != PartRole::loop_actuator ||
                actuator->second.batch == last_batch)
                continue;
            for (const TrainPart& other : train) place_.insert({other.part, actuator->second});
        }
    // The train that drives the loop pump first.
    int driven = 0;
    for (const PartRole pump : {PartRole::loop_pump, PartRole::charge_pump})
        for (const Train& train : roles.trains) {
            if (!finder.has(train, PartRole::prime_mover) || !finder.has(train, pump) ||
                (pump == PartRole::charge_pump && finder.has(train, PartRole::loop_pump)))
                continue;
            if (driven++ == 0) continue;
            const int rank = pump == PartRole::loop_pump ? rank_pump : rank_charge_pump;
            for (const TrainPart& one : train) {
                place_.insert({one.part, {rank, driven}});
                axis_[one.part] = driven - 1;
            }
        }
}

Standing Standings::of(int part, int rank) const {
    const auto place = place_.find(part);
    return place == place_.end() ? Standing{rank, 0, rank}
                                 : Standing{place->second.rank, place->second.batch, rank};
}

}  // namespace loopwright
