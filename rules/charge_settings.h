#pragma once

#include <optional>
#include <vector>

#include <loopwright/graph/situation.h>

/// What sets the pressure of the charge line: its own reliefs and, in motion, those behind the
/// flushing valve.
namespace loopwright {

/// Edges of the reliefs that limit the charge line: reached from the outlets of the charge sources
/// over what stands open and nobody can close, not over a side.
std::vector<Index> charge_reliefs(const Situation& s);

/// Edges of the reliefs reached likewise from the outlets of the flushing valves.
std::vector<Index> flushing_reliefs(const Situation& s);

/// The lowest pressure of the charge line in motion, as far as the settings tell it.
struct LowestCharge {
    double pressure = 0.0;            ///< Pa
    Index relief = none;              ///< edge of the relief that sets it
    std::vector<Index> unknown = {};  ///< components of those reliefs whose setting is not given
};

/// Nothing where no relief limits the charge line.
std::optional<LowestCharge> lowest_charge(const Situation& s);

}  // namespace loopwright
