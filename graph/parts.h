#pragma once

#include <span>
#include <utility>
#include <vector>

#include <loopwright/base/finding.h>

/// Strong and biconnected parts of plain graphs by Boost.Graph, kept behind a header free of it.
namespace loopwright {

/// A graph in compressed rows: the targets of vertex v are targets[offsets[v] .. offsets[v + 1]).
struct Rows {
    std::vector<Index> offsets = {};
    std::vector<Index> targets = {};

    Index vertex_count() const { return static_cast<Index>(offsets.size() - 1); }
};

/// Keeps its scratch from call to call: circuits have many small regions. A result holds until the
/// next call.
class PartFinder {
  public:
    using Pairs = std::span<const std::pair<Index, Index>>;

    /// For each vertex the number of its strong component over directed pairs. Numbers from 0.
    const std::vector<Index>& strong(Index vertex_count, Pairs arcs);

    /// For each pair the number of its biconnected part, pairs taken undirected. The graph must be
    /// simple: Boost.Graph leaves parallel edges without a part of their own, so callers split
    /// every edge by a vertex first.
    const std::vector<Index>& biconnected(Index vertex_count, Pairs edges);

  private:
    void make_rows(Index vertex_count, Pairs pairs, bool undirected);

    Rows rows_;
    std::vector<Index> part_;
    std::vector<Index> cursor_;
    std::vector<Index> root_;
    std::vector<Index> discovery_;
    std::vector<Index> edge_of_slot_;
    std::vector<Index> low_;
    std::vector<int> colour_;
};

}  // namespace loopwright
