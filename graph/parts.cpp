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

struct RowEdgeIterator
    : boost::iterator_facade<RowEdgeIterator, RowEdge, std::forward_iterator_tag, RowEdge> {
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

/// A property map over a vector indexed by vertex.
template <typename Value>
auto map_over(std::vector<Value>& values) {
    return boost::make_iterator_property_map(values.begin(), boost::identity_property_map());
}

void PartFinder::make_rows(Index vertex_count, Pairs pairs, bool undirected) {
    rows_.offsets.assign(vertex_count + 1, 0);
    for (const auto& [from, to] : pairs) {
        ++rows_.offsets[from + 1];
        if (undirected) ++rows_.offsets[to + 1];
    }
    for (Index v = 0; v < vertex_count; ++v) rows_.offsets[v + 1] += rows_.offsets[v];
    rows_.targets.resize(rows_.offsets.back());
    if (undirected) edge_of_slot_.resize(rows_.targets.size());
    cursor_.assign(rows_.offsets.begin(), rows_.offsets.end() - 1);
    for (Index e = 0; e < pairs.size(); ++e) {
        const auto& [from, to] = pairs[e];
        const Index there = cursor_[from]++;
        rows_.targets[there] = to;
        if (!undirected) continue;
        const Index back = cursor_[to]++;
        rows_.targets[back] = from;
        edge_of_slot_[there] = edge_of_slot_[back] = e;
    }
}

const std::vector<Index>& PartFinder::strong(Index vertex_count, Pairs arcs) {
    make_rows(vertex_count, arcs, false);
    part_.assign(vertex_count, 0);
    if (vertex_count == 0) return part_;
    root_.resize(vertex_count);
    discovery_.resize(vertex_count);
    colour_.resize(vertex_count);
    boost::strong_components(RowGraph{&rows_}, map_over(part_),
                             boost::root_map(map_over(root_))
                                 .discover_time_map(map_over(discovery_))
                                 .color_map(map_over(colour_))
                                 .vertex_index_map(boost::identity_property_map()));
    return part_;
}

const std::vector<Index>& PartFinder::biconnected(Index vertex_count, Pairs edges) {
    part_.assign(edges.size(), none);
    if (edges.empty()) return part_;
    make_rows(vertex_count, edges, true);
    UndirectedRowGraph graph;
    graph.rows = &rows_;
    discovery_.assign(vertex_count, 0);
    root_.resize(vertex_count);
    low_.resize(vertex_count);
    boost::biconnected_components(graph, PartOfEdge{&edge_of_slot_, &part_},
                                  boost::discover_time_map(map_over(discovery_))
                                      .lowpoint_map(map_over(low_))
                                      .predecessor_map(map_over(root_))
                                      .vertex_index_map(boost::identity_property_map()));
    return part_;
}

}  // namespace loopwright
