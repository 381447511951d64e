#pragma once

#include <numeric>
#include <utility>
#include <vector>

#include <loopwright/base/finding.h>

namespace loopwright {

/// Union-find over 0..n-1 with path halving. The smaller member leads, so that results do not
/// hang on the order of joining.
class DisjointSets {
  public:
    DisjointSets() = default;
    explicit DisjointSets(std::size_t size) { reset(size); }

    void reset(std::size_t size) {
        leader_.resize(size);
        std::iota(leader_.begin(), leader_.end(), Index{0});
    }
    Index find(Index member) {
        while (leader_[member] != member) {
            leader_[member] = leader_[leader_[member]];
            member = leader_[member];
        }
        return member;
    }
    void join(Index a, Index b) {
        a = find(a);
        b = find(b);
        if (a == b) return;
        if (b < a) std::swap(a, b);
        leader_[b] = a;
    }

    /// Makes a member a set of its own. All members of its set have to be singled out together.
    void single_out(Index member) { leader_[member] = member; }

  private:
    std::vector<Index> leader_;
};

}  // namespace loopwright
