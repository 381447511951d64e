#include <loopwright/graph/parts.h>

#include <boost/graph/biconnected_components.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>
#include <boost/iterator/counting_iterator.hpp>
#include <boost/property_map/property_map.hpp>

namespace loopwright {

namespace {

struct RowEdge {
    Index source = none;
    Index slot = none;
    friend bool operator==(const RowEdge&, const RowEdge&) = default;
};

struct RowEdgeIterator : boost::iterator_facade<RowEdgeIterator, RowEdge,
                                                std::forward_iterator_tag, RowEdge> {
    RowEdgeIterator() = default;
    RowEdgeIterator(Index source, Index slot) : edge{source, slot} {}
    RowEdge dereference() const { return edge; }
    bool equal(const RowEdgeIterator& other) const { return edge.slot == other.edge.slot; }
    void increment() { ++edge.slot; }
    RowEdge edge = {};
};

struct RowTraversal : virtual boost::vertex_list_graph_tag, virtual boost::incidence_graph_tag {};

/// Rows as Boost.Graph sees them: an edge is (source, place in `targets`), so that an edge has an
/// index without being stored twice.
struct RowGraph {
    using vertex_descriptor = Index;
    using edge_descriptor = RowEdge;
    using directed_category = boost::directed_tag;
    using edge_parallel_category = boost::allow_parallel_edge_tag;
    using traversal_category = RowTraversal;
    using vertex_iterator = boost::counting_iterator<Index>;
    using out_edge_iterator = RowEdgeIterator;
    using vertices_size_type = Index;
    using edges_size_type = Index;
    using degree_size_type = Index;
    static vertex_descriptor null_vertex() { return none; }

    const Rows* rows = nullptr;
};
struct UndirectedRowGraph : RowGraph {
    using directed_category = boost::undirected_tag;
};

auto vertices(const RowGraph& g) {
    return std::pair{boost::counting_iterator<Index>(0),
                     boost::counting_iterator<Index>(g.rows->vertex_count())};
}
Index num_vertices(const RowGraph& g) { return g.rows->vertex_count(); }
auto out_edges(Index v, const RowGraph& g) {
    return std::pair{RowEdgeIterator(v, g.rows->offsets[v]),
                     RowEdgeIterator(v, g.rows->offsets[v + 1])};
}
Index out_degree(Index v, const RowGraph& g) { return g.rows->offsets[v + 1] - g.rows->offsets[v]; }
Index source(const RowEdge& e, const RowGraph& /*g*/) { return e.source; }
Index target(const RowEdge& e, const RowGraph& g) { return g.rows->targets[e.slot]; }

/// Writes the part of an edge whichever of its two slots is given.
struct PartOfEdge {
    using key_type = RowEdge;
    using value_type = Index;
    using reference = Index;
    using category = boost::writable_property_map_tag;
    const std::vector<Index>* edge_of_slot = nullptr;
    std::vector<Index>* part = nullptr;
};
void put(const PartOfEdge& map, const RowEdge& e, std::size_t part) {
    (*map.part)[(*map.edge_of_slot)[e.slot]] = static_cast<Index>(part);
}

}  // namespace

Rows make_rows(Index vertex_count, std::span<const std::pair<Index, Index>> pairs,
               bool undirected) {
    Rows rows;
    rows.offsets.assign(vertex_count + 1, 0);
    for (const auto& [from, to] : pairs) {
        ++rows.offsets[from + 1];
        if (undirected) ++rows.offsets[to + 1];
    }
    for (Index v = 0; v < vertex_count; ++v) rows.offsets[v + 1] += rows.offsets[v];
    rows.targets.resize(rows.offsets.back());
    std::vector<Index> cursor(rows.offsets.begin(), rows.offsets.end() - 1);
    for (const auto& [from, to] : pairs) {
        rows.targets[cursor[from]++] = to;
        if (undirected) rows.targets[cursor[to]++] = from;
    }
    return rows;
}

std::vector<Index> strong_parts(const Rows& rows) {
    const Index count = rows.vertex_count();
    std::vector<Index> part(count, 0);
    if (count == 0) return part;
    std::vector<Index> root(count);
    std::vector<Index> discovery(count);
    std::vector<boost::default_color_type> colour(count);
    const auto identity = boost::identity_property_map();
    const auto map = [&](auto& values) {
        return boost::make_iterator_property_map(values.begin(), identity);
    };
    boost::strong_components(RowGraph{&rows}, map(part),
                             boost::root_map(map(root))
                                 .discover_time_map(map(discovery))
                                 .color_map(map(colour))
                                 .vertex_index_map(identity));
    return part;
}

std::vector<Index> biconnected_parts(Index vertex_count,
                                     std::span<const std::pair<Index, Index>> pairs) {
    std::vector<Index> part(pairs.size(), none);
    if (pairs.empty()) return part;
    const Rows rows = make_rows(vertex_count, pairs, true);
    std::vector<Index> edge_of_slot(rows.targets.size());
    std::vector<Index> cursor(rows.offsets.begin(), rows.offsets.end() - 1);
    for (Index e = 0; e < pairs.size(); ++e) {
        edge_of_slot[cursor[pairs[e].first]++] = e;
        edge_of_slot[cursor[pairs[e].second]++] = e;
    }
    UndirectedRowGraph graph;
    graph.rows = &rows;
    std::vector<std::size_t> discovery(vertex_count);
    std::vector<std::size_t> low(vertex_count);
    std::vector<Index> predecessor(vertex_count);
    const auto identity = boost::identity_property_map();
    const auto map = [&](auto& values) {
        return boost::make_iterator_property_map(values.begin(), identity);
    };
    boost::biconnected_components(graph, PartOfEdge{&edge_of_slot, &part},
                                  boost::discover_time_map(map(discovery))
                                      .lowpoint_map(map(low))
                                      .predecessor_map(map(predecessor))
                                      .vertex_index_map(identity));
    return part;
}

}  // namespace loopwright
