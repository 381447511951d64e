#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/loops.h>
#include <loopwright/graph/states.h>

namespace loopwright {

/// A loop as known from all combinations of valve positions together; edges of the region.
struct KnownLoop {
    Index first_pump = none;
    std::vector<Index> pump_edges = {};
    std::vector<Index> actuator_edges = {};
    bool reversible = false;  ///< a two-way pump, or an operated valve in the loop
    /// Which side its loads put under pressure, where they always pull one way and the pump is a
    /// two-way one.
    High pull = High::neither;

    StateSet states() const;
    /// Those of them in which that side may be the high one.
    StateSet states_with(High high) const { return pulled_away(pull, high) ? 0 : states(); }
};

/// Finds out `pull`. A load that drives its motor in reverse (a hoist: lowering) has side a under
/// pressure whether it is raised, lowered or held; one that drives it forward, side b.
void find_pull(const FlowGraph& graph, const Region& region, KnownLoop& loop);

/// What states make of the pumps of a region.
struct StillDrives {
    /// For each drive whether it stands in neutral: those of variable speed that drive a loop's
    /// pump. Empty: none does.
    std::vector<std::uint8_t> still = {};
    /// False where that, or a reversal, stops a pump in some states only: one that is in no loop,
    /// or a one-way pump that some valve position may take out of its loop.
    bool pumps_turn_alike = true;
    bool two_way_outside = false;  ///< a two-way pump is in no loop

    void find(const FlowGraph& graph, const Region& region, std::span<const KnownLoop> known,
              std::span<const std::uint8_t> looped);
};

}  // namespace loopwright
