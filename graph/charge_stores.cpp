// A store is a source where its oil gets to a loop. It has a charge line where it does so over a
// check: an accumulator that a side fills and empties through a valve is none of a charge line's.
#include <loopwright/graph/charge_stores.h>

#include <algorithm>

namespace loopwright {

namespace {

/// The stores of a region, and which of them are sources.
class StoreFinder {
  public:
    StoreFinder(const FlowGraph& graph, const Region& region, const LoopSet& loops,
                std::span<const std::uint8_t> looped, SearchPool& searches, Feeds& feeds)
        : graph_(graph),
          region_(region),
          loops_(loops),
          searches_(searches),
          feeds_(feeds),
          at_loop_(loops.on_main.begin(), loops.on_main.end()) {
        for (const Index e : region.machines)
            if (looped[e] != 0) at_loop_[region.edges[e].from] = at_loop_[region.edges[e].to] = 1;
    }

    void find(const FeedRule& would_feed, const FeedRule& feed) {
        for (const Index node : region_.reservoirs)
            if (graph_.gas_pressure(region_.joints[node]) > 0.0)
                see(node, reservoir_at(node), false, would_feed, feed);
        if (!graph_.has_accumulators()) return;
        for (const Index port : region_.guests) {
            const Index component = graph_.circuit().ports[port].component;
            if (graph_.part(component) == Part::accumulator)
                see(graph_.node_of(port), component, true, would_feed, feed);
        }
    }

  private:
    Index reservoir_at(Index node) const {
        const auto ports = graph_.ports_of(region_.joints[node]);
        const auto component = [&](Index port) { return graph_.circuit().ports[port].component; };
        return component(*std::find_if(ports.begin(), ports.end(), [&](Index port) {
            return graph_.part(component(port)) == Part::reservoir;
        }));
    }

    bool gets_to_a_loop(const Search& search) const {
        return std::any_of(search.order.begin(), search.order.end(),
                           [&](Index node) { return at_loop_[node] != 0; });
    }

    void see(Index node, Index component, bool finite, const FeedRule& would_feed,
             const FeedRule& feed) {
        const auto search = searches_.take(region_.node_count);
        search->begin_at(node);
        graph_.work += search->run(region_, would_feed);
        ChargeStore store{.component = component, .node = node, .finite = finite};
        store.loops = add_loops(loops_, *search, feeds_.loops_would_feed);
        if (store.loops.size() != 0) feeds_.stores.push_back(store);
        if (!is_source(node, component, finite, feed)) feeds_.any_idle_store = true;
    }

    bool is_source(Index node, Index component, bool finite, const FeedRule& feed) {
        if (feeds_.pressureless()[node] != 0) return false;
        const FeedRule outside = feed.up_to_sides();
        const auto search = searches_.take(region_.node_count);
        search->begin_at(node);
        graph_.work += search->run(region_, outside);
        if (!gets_to_a_loop(*search)) return false;
        const auto checked = searches_.take(region_.node_count);
        find_checked(graph_, region_, *search, outside, *checked);
        feeds_.sources.push_back(
            {.outlet = node,
             .has_line = loops_.sides_at(node).empty() && gets_to_a_loop(*checked),
             .store = component,
             .finite = finite});
        feeds_.any_finite = feeds_.any_finite || finite;
        return true;
    }

    const FlowGraph& graph_;
    const Region& region_;
    const LoopSet& loops_;
    SearchPool& searches_;
    Feeds& feeds_;
    std::vector<std::uint8_t> at_loop_;  // for each node
};

}  // namespace

void find_stores(const FlowGraph& graph, const Region& region, const LoopSet& loops,
                 std::span<const std::uint8_t> looped, const FeedRule& would_feed,
                 const FeedRule& feed, SearchPool& searches, Feeds& feeds) {
    StoreFinder(graph, region, loops, looped, searches, feeds).find(would_feed, feed);
}

}  // namespace loopwright
