#pragma once

#include <unordered_map>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/situation.h>

namespace loopwright {

/// Passed by oil on its way to or from a relief; nothing that somebody can close.
bool secured(const Situation& s, const FlowArc& arc);

/// Parts of a charge line that oil gets through both ways, and what is reached from each, worked
/// out once for all its nodes. The maps are never iterated.
class LineParts {
  public:
    explicit LineParts(const Situation& s);

    /// Make-up paths from this node of the charge line.
    const Search& checked_from(Index node);
    /// By secured ways.
    const Search& secured_from(Index node);

  private:
    const Situation& s_;
    DisjointSets sets_ = {};
    std::unordered_map<Index, Search> checked_from_ = {};
    std::unordered_map<Index, Search> secured_from_ = {};
};

}  // namespace loopwright
