#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include <loopwright/render/symbol.h>

/// Orthogonal routing on the module grid. A net becomes a tree of level and upright runs; where
/// three ends meet stands a joint. Nets may cross at right angles and in no other way touch.
///
/// Each net grows by searches (A*) from its nearest loose end to the tree it has so far, over
/// states (grid point, heading) with costs for length, bends and crossings. Then nets are taken
/// up and laid again against all others, as long as that makes the whole cheaper.
namespace loopwright {

/// A point of the routing grid, whole modules.
struct Cell {
    int x = 0;
    int y = 0;
    friend bool operator==(const Cell&, const Cell&) = default;
};

/// A level or upright run between two points.
struct Run {
    Cell from = {};
    Cell to = {};
    friend bool operator==(const Run&, const Run&) = default;
};

/// A loose end of a net: a port's stub end, and the way it leaves its symbol.
struct RouteEnd {
    Cell at = {};
    Side side = Side::up;
};

struct RouteNet {
    std::vector<RouteEnd> ends = {};
    /// Runs that are laid first, such as the long level stretch of a working line. What of them
    /// leads nowhere in the end is taken away.
    std::vector<Run> trunks = {};
    std::uint64_t frames = 0;  ///< a bit for each of the field's frames that it has an end in
};

/// The field's frames that can be told apart, a bit each; others count for nothing.
inline constexpr std::size_t most_frames = 64;

/// What the nets have to respect.
struct RouteField {
    std::vector<Box> bodies = {};      ///< M; nets keep 1 M away
    std::vector<Box> texts = {};       ///< M; nets go round them where that is not too dear
    std::vector<Box> letters = {};     ///< M, of ports; likewise, but nets may pass close by
    std::vector<Box> frames = {};      ///< M; nets without an end inside go round them likewise
    std::vector<Run> shafts = {};      ///< crossed at a right angle at most
    std::vector<RouteEnd> ports = {};  ///< further ports without a net: kept clear
};

struct RoutedNet {
    std::vector<Run> runs = {};     ///< split at bends and joints
    std::vector<Cell> joints = {};  ///< where three or more ends meet
};

/// Figures of a routing, each net's ink counted once.
struct RouteTally {
    int crossings = 0;
    int bends = 0;
    int length = 0;  ///< M
    friend bool operator==(const RouteTally&, const RouteTally&) = default;
};

/// All nets, in the order given, or nothing where one cannot be routed.
std::optional<std::vector<RoutedNet>> route(const RouteField& field,
                                            std::span<const RouteNet> nets);

RouteTally tally(std::span<const RoutedNet> nets);

}  // namespace loopwright
