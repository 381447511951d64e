#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/hydraulics/duty.h>

namespace loopwright::hydraulics {

/// A loop as it is at a duty point.
struct PointLoop {
    Index first_pump = none;        ///< component that it is named after
    std::vector<Index> ports = {};  ///< on its sides
};

/// How a circuit stands at a duty point.
struct PointStanding {
    /// For each passage in which senses it stands open, bits as in `Standing`. Empty where valves
    /// are moved that no situation has so in the point's state: how they stand then is not known.
    std::vector<std::uint8_t> open = {};
    std::vector<PointLoop> loops = {};  ///< by region
};
/// Of points that are parted, where that has to be.
std::vector<PointStanding> standings(const FlowGraph& graph, std::span<const PointFigures> points);

/// Has to be done before `standings`. Parts the motions of those points whose commands go different
/// ways.
void part_motions(const FlowGraph& graph, std::span<PointFigures> points);

}  // namespace loopwright::hydraulics
