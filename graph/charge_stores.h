#pragma once

#include <loopwright/graph/feeds.h>

namespace loopwright {

/// Finds the reservoirs under pressure and the accumulators of a region that may charge a loop,
/// and adds those that do to the sources. What is pressureless must be known. `would_feed`: the
/// rule if nothing were open to a reservoir; `feed`: as all stands.
void find_stores(const FlowGraph& graph, const Region& region, const LoopSet& loops,
                 std::span<const std::uint8_t> looped, const FeedRule& would_feed,
                 const FeedRule& feed, SearchPool& searches, Feeds& feeds);

}  // namespace loopwright
