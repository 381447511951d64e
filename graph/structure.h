#pragma once

#include <map>
#include <tuple>
#include <vector>

#include <loopwright/graph/situation.h>

namespace loopwright {

/// Gathers from the situations what the circuit is made of.
class StructureBuilder {
  public:
    explicit StructureBuilder(const FlowGraph& graph);

    void see(const Situation& situation);
    /// After the last situation of a region.
    void finish_region(const Region& region, std::span<const std::uint8_t> looped);
    Structure finish();

  private:
    /// Where a side is kept, and the nodes that it had when last seen.
    struct SideSlot {
        Index side = none;
        std::vector<Index> nodes = {};
    };

    Index loop_of(Index first_pump);
    void see_side(const JudgedSide& side, const Region& region);
    void see_charge(const Situation& situation);

    const FlowGraph& graph_;
    Structure structure_;
    std::vector<Index> loop_slot_;  // component -> structure_.loops
    // By loop, name and role.
    std::map<std::tuple<Index, Index, SideRole>, SideSlot> side_slots_;
    std::vector<std::uint8_t> on_loop_joint_;
    std::vector<std::uint8_t> charge_line_;
    const Region* charge_seen_ = nullptr;
};

}  // namespace loopwright
