#pragma once

#include <vector>

#include <loopwright/graph/disjoint_sets.h>
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
    /// A side of the region at hand, until its last situation was seen.
    struct SideSlot {
        Index loop = none;  // into structure_.loops
        Index side = none;  // of the loop
        Index named_after = none;
        SideRole role = SideRole::main;
        Index next = none;  // slot of another side named after the same port
        StateSet states = 0;
        std::vector<Index> nodes = {};  // when last seen
        std::vector<Index> ports = {};
        std::vector<Index> lines = {};
    };

    Index loop_of(Index first_pump);
    void see_loops(const Situation& situation);
    SideSlot& slot_of(const JudgedSide& side);
    void see_side(const JudgedSide& side, const Region& region);
    void finish_sides();
    void find_open_parts(const Region& region, std::span<const std::uint8_t> looped);
    void see_charge(const Situation& situation);

    const FlowGraph& graph_;
    Structure structure_;
    std::vector<Index> loop_slot_;      // component -> structure_.loops
    std::vector<Index> side_slot_;      // port -> the last slot of a side named after it
    std::vector<SideSlot> side_slots_;  // the first side_slots_used_ count
    Index side_slots_used_ = 0;
    std::vector<std::uint8_t> on_loop_joint_;
    std::vector<std::uint8_t> charge_line_;
    std::vector<std::uint8_t> charges_;  // by component: noted as a charge pump
    DisjointSets sets_;                  // of a region's nodes outside the loops
    std::vector<Index> part_;            // by leader: into structure_.open_parts
};

}  // namespace loopwright
