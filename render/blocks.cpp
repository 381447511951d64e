#include <algorithm>
#include <map>
#include <utility>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/render/nesting.h>
#include <loopwright/render/place.h>

namespace loopwright {

namespace {

// What hangs between level lines by itself; larger groups follow the flow in a block of their own.
constexpr std::size_t most_in_slot = 4;

class BlockFinder {
  public:
    BlockFinder(const Sketch& sketch, const Roles& roles, const Structure& structure)
        : sketch_(sketch), roles_(roles), block_(sketch.parts.size(), -1) {
        blocks_.resize(structure.loops.size());
        for (std::size_t l = 0; l < blocks_.size(); ++l) blocks_[l].loop = static_cast<int>(l);
    }

    std::vector<Block> find() {
        place_machines();
        place_clusters();
        keep_assemblies_together();
        place_marks();
        gather_rest();
        for (int p = 0; p < count(); ++p)
            if (block(p) >= 0) blocks_[static_cast<std::size_t>(block(p))].parts.push_back(p);
        blocks_.erase(std::remove_if(blocks_.begin(), blocks_.end(),
                                     [](const Block& b) { return b.parts.empty(); }),
                      blocks_.end());
        return std::move(blocks_);
    }

  private:
    int count() const { return static_cast<int>(sketch_.parts.size()); }
    int& block(int p) { return block_[static_cast<std::size_t>(p)]; }
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }
    const SketchPart& part(int p) const { return sketch_.parts[static_cast<std::size_t>(p)]; }

    template <typename Visit>
    void each_net(int p, Visit visit) const {
        for (std::size_t a = 0; a < part(p).shape.ports.size(); ++a)
            if (const int n = sketch_.net_at(p, a); n >= 0) visit(n);
    }

    void place_machines() {
        for (int p = 0; p < count(); ++p) block(p) = roles_.loop[static_cast<std::size_t>(p)];
        // What turns with a loop's machine and is no open part stands in the loop's block.
        for (const Train& train : roles_.trains) place_train(train);
        if (blocks_.empty()) return;
        for (int p = 0; p < count(); ++p)
            if (role(p) == PartRole::charge_pump && block(p) < 0) {
                block(p) = 0;
                for (const TrainPart& one : roles_.train_of(p))
                    if (block(one.part) < 0 && (role(one.part) == PartRole::prime_mover ||
                                                role(one.part) == PartRole::on_shaft))
                        block(one.part) = 0;
            }
    }

    void place_train(const Train& train) {
        int loop = -1;
        for (const TrainPart& one : train)
            if (const int b = block(one.part); b >= 0) loop = loop < 0 ? b : std::min(loop, b);
        if (loop < 0) return;
        for (const TrainPart& one : train) {
            if (block(one.part) >= 0) continue;
            if (role(one.part) == PartRole::prime_mover || role(one.part) == PartRole::charge_pump)
                block(one.part) = loop;
            else if (role(one.part) == PartRole::on_shaft || role(one.part) == PartRole::load)
                block(one.part) = block_beside(train, one, loop);
        }
    }

    /// The block of a machine on the shaft that a part leads to, or is on; else the train's.
    int block_beside(const Train& train, const TrainPart& part, int otherwise) {
        for (const TrainPart& one : train)
            if ((role(one.part) == PartRole::loop_pump ||
                 role(one.part) == PartRole::loop_actuator) &&
                block(one.part) >= 0 && one.shaft == part.shaft)
                return block(one.part);
        return otherwise;
    }

    bool is_hub(int n) const {
        switch (roles_.net[static_cast<std::size_t>(n)].role) {
            case NetRole::side_a:
            case NetRole::side_b:
            case NetRole::charge:
            case NetRole::housing:
                return true;
            default:
                return false;
        }
    }

    /// The loop that a group of parts hangs on; -1 where it hangs on none.
    int loop_beside(const std::vector<int>& parts) const {
        int loop = -1;
        const auto take = [&loop](int l) {
            if (l >= 0) loop = loop < 0 ? l : std::min(loop, l);
        };
        for (const int p : parts) each_net(p, [&](int n) { take(net_loop(n)); });
        if (loop >= 0) return loop;
        for (const int p : parts)
            each_net(p, [&](int n) {
                for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                    take(block_[static_cast<std::size_t>(end.part)]);
            });
        return loop;
    }
    int net_loop(int n) const { return roles_.net[static_cast<std::size_t>(n)].loop; }

    void place_clusters() {
        DisjointSets sets(sketch_.parts.size());
        for (std::size_t n = 0; n < sketch_.nets.size(); ++n) {
            if (is_hub(static_cast<int>(n))) continue;
            int first = -1;
            for (const SketchEnd& end : sketch_.nets[n].ends) {
                if (block(end.part) >= 0 || part(end.part).is_mark()) continue;
                if (first >= 0) sets.join(static_cast<Index>(first), static_cast<Index>(end.part));
                first = end.part;
            }
        }
        std::vector<std::vector<int>> clusters(sketch_.parts.size());
        for (int p = 0; p < count(); ++p)
            if (block(p) < 0 && !part(p).is_mark())
                clusters[sets.find(static_cast<Index>(p))].push_back(p);
        // Those that touch a side first: others may hang on what they place.
        for (int round = 0; round < 3; ++round)
            for (const auto& cluster : clusters) {
                if (cluster.empty() || block(cluster.front()) >= 0 || !is_simple(cluster)) continue;
                const int loop = loop_beside(cluster);
                for (const int p : cluster) block(p) = loop;
            }
    }

    bool is_simple(const std::vector<int>& cluster) const {
        if (cluster.size() > most_in_slot) return false;
        return std::none_of(cluster.begin(), cluster.end(),
                            [&](int p) { return !part(p).shape.shafts.empty(); });
    }

    /// What no loop has taken of an assembly of which a loop has taken something.
    void keep_assemblies_together() {
        std::map<Index, int> loop;
        for (int p = 0; p < count(); ++p)
            if (home(p) != none && block(p) >= 0) loop.try_emplace(home(p), block(p));
        for (int p = 0; p < count(); ++p)
            if (const auto there = loop.find(home(p)); block(p) < 0 && there != loop.end())
                block(p) = there->second;
    }

    /// The outermost assembly that holds a part.
    Index home(int p) const {
        return part(p).is_mark()
                   ? none
                   : next_inside(sketch_.circuit(), sketch_.component(p).assembly, none);
    }

    /// A mark that several ends share stands in the block of the first of them.
    void place_marks() {
        for (int p = 0; p < count(); ++p) {
            if (!part(p).is_mark() || is_hung(p)) continue;
            const int n = sketch_.net_at(p, 0);
            if (n < 0) continue;
            for (const SketchEnd& end : sketch_.nets[static_cast<std::size_t>(n)].ends)
                if (block(p) < 0) block(p) = block(end.part);
        }
    }

    /// The open parts: what is connected by nets or shafts stands in one block, but each assembly
    /// in one of its own.
    void gather_rest() {
        DisjointSets sets(sketch_.parts.size());
        const Circuit& circuit = sketch_.circuit();
        for (const SketchNet& net : sketch_.nets) {
            int first = -1;
            for (const SketchEnd& end : net.ends) {
                if (block(end.part) >= 0) continue;
                if (first >= 0) sets.join(static_cast<Index>(first), static_cast<Index>(end.part));
                first = end.part;
            }
        }
        for (const Shaft& shaft : circuit.shafts) {
            int first = -1;
            for (const Index c : circuit.components_of(shaft)) {
                const int p = sketch_.part_of(c);
                if (p < 0 || block(p) >= 0) continue;
                if (first >= 0) sets.join(static_cast<Index>(first), static_cast<Index>(p));
                first = p;
            }
        }
        std::map<std::pair<Index, Index>, int> made;
        for (int p = 0; p < count(); ++p) {
            if (block(p) >= 0 || is_hung(p)) continue;
            const auto [at, is_new] = made.try_emplace(
                {sets.find(static_cast<Index>(p)), home_with(p)}, static_cast<int>(blocks_.size()));
            if (is_new) blocks_.emplace_back();
            block(p) = at->second;
        }
    }

    /// The assembly whose block a part stands in: its own, or that of what it is next to on a
    /// shaft, or as a mark on a line.
    Index home_with(int p) const {
        if (home(p) != none) return home(p);
        if (part(p).is_mark()) {
            const int n = sketch_.net_at(p, 0);
            return n < 0 ? none : home(sketch_.nets[static_cast<std::size_t>(n)].ends.front().part);
        }
        if (role(p) == PartRole::prime_mover || role(p) == PartRole::load ||
            role(p) == PartRole::on_shaft)
            for (const TrainPart& one : roles_.train_of(p))
                if (block_[static_cast<std::size_t>(one.part)] < 0 && home(one.part) != none)
                    return home(one.part);
        return none;
    }

    /// A mark that hangs on one port only goes with that port's part.
    bool is_hung(int p) const {
        if (!part(p).is_mark()) return false;
        const int n = sketch_.net_at(p, 0);
        return n >= 0 && sketch_.nets[static_cast<std::size_t>(n)].ends.size() == 2 &&
               !both_marks(n);
    }
    bool both_marks(int n) const {
        const auto& ends = sketch_.nets[static_cast<std::size_t>(n)].ends;
        return std::all_of(ends.begin(), ends.end(),
                           [&](const SketchEnd& end) { return part(end.part).is_mark(); });
    }

    const Sketch& sketch_;
    const Roles& roles_;
    std::vector<int> block_;
    std::vector<Block> blocks_;
};

}  // namespace

std::vector<Block> blocks_of(const Sketch& sketch, const Roles& roles, const Structure& structure) {
    return BlockFinder(sketch, roles, structure).find();
}

}  // namespace loopwright
