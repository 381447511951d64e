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

/// Makes rows out of (from, to) pairs. `undirected` enters each pair at both ends.
Rows make_rows(Index vertex_count, std::span<const std::pair<Index, Index>> pairs,
               bool undirected);

/// For each vertex the number of its strong component (directed rows). Numbers from 0.
std::vector<Index> strong_parts(const Rows& rows);

/// For each pair the number of its biconnected part (the same pairs, undirected). The graph must
/// be simple: Boost.Graph leaves parallel edges without a part of their own, so callers split
/// every edge by a vertex first.
std::vector<Index> biconnected_parts(Index vertex_count,
                                     std::span<const std::pair<Index, Index>> pairs);

}  // namespace loopwright
