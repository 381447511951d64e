#pragma once

#include <compare>
#include <cstdint>
#include <map>
#include <set>
#include <vector>

#include <loopwright/render/place.h>

/// A loop's block as columns from the prime mover on the left to the load on the right. Zones lie
/// between the level lines: working line A, charge line, working line B, and below.
namespace loopwright {

enum class Zone : std::uint8_t {
    upper,  ///< between A and the charge line
    lower,  ///< between the charge line and B
    full,   ///< from A to B
    level_a,
    level_b,
    level_charge,  ///< in line, on the level itself
    below,         ///< hangs from B
    drain,         ///< case drains and coolers, below all
    under,         ///< in a machine's suction line
};

/// Parts that stand on one another, from the top down.
struct Slot {
    Zone zone = Zone::full;
    std::vector<int> parts = {};
    int host = -1;  ///< of `under`: the machine
};

/// Where a column stands from left to right.
struct Standing {
    int rank = 0;   ///< its own, or that of the machine that it stands beside
    int batch = 0;  ///< one machine after another with all that stands beside it
    int within = 0;
    friend auto operator<=>(const Standing&, const Standing&) = default;
};

struct Column {
    int rank = 0;  ///< order by convention, left to right
    Standing standing = {};
    std::vector<Slot> slots = {};
};

/// The columns of a loop's block in order, and what stands below them.
struct LoopColumns {
    std::vector<Column> columns = {};
    std::vector<Slot> drains = {};
    std::vector<int> marks = {};  ///< reservoir marks that several ends share
    bool has_charge = false;
    std::map<int, int> lower_axes = {};  ///< see `Standings`
};

LoopColumns columns_of(const Sketch& sketch, const Roles& roles, const Block& block);

}  // namespace loopwright
