#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <utility>
#include <vector>

#include <loopwright/graph/situation.h>

namespace loopwright {

/// What is taken for a setting that is not given.
enum class UnknownSetting : std::uint8_t { limits_nothing, zero };

/// For what ceilings are to hold: which side of each loop is high, what stands open. Where the two
/// standings are not the same, what is found is a bound for everything between them.
struct CeilingCase {
    std::span<const High> highs = {};  ///< for each loop; empty: every side is taken for high
    const Standing& ways_out;          ///< what lets oil away
    const Standing& ways_in;           ///< what hands pressure on
    UnknownSetting unknown = UnknownSetting::limits_nothing;
    /// In which two-way pumps deliver; none: they do not.
    Direction direction = Direction::none;
    /// Component whose missing setting is taken for the opposite of `unknown`; none: no such.
    Index otherwise = none;
    bool bounds_all = false;  ///< is to hold for all situations alike

    double for_missing(Index component) const {
        return (unknown == UnknownSetting::zero) != (component == otherwise)
                   ? 0.0
                   : std::numeric_limits<double>::infinity();
    }
};

/// The case of the situation itself.
inline CeilingCase case_of(const Situation& s, UnknownSetting unknown, Direction direction) {
    return {.highs = s.highs,
            .ways_out = s.standing,
            .ways_in = s.standing,
            .unknown = unknown,
            .direction = direction};
}

/// A bound for all situations alike.
inline CeilingCase any_of_alike(const Situation& s) {
    return {.highs = {}, .ways_out = *s.alike.shut, .ways_in = *s.alike.wide, .bounds_all = true};
}

/// The highest pressure that each node of a region can see, Pa over ambient; infinite where nothing
/// limits it, 0 where nothing drives it.
///
/// A node's limit is the least pressure at which oil gets away from it for good, over what nobody
/// can shut, reliefs at their full flow, down to a reservoir. A side that is not high stands at the
/// pressure of the charge line; so does the side that a relief discharges into, for the two sides
/// of a loop are not high at once. What restrictions lose is left out: that is a matter of flow.
///
/// A ceiling is what pumps, loads and accumulators can drive there, as far as the limits on the way
/// let them. A pump whose outlet is open to its inlet drives nothing.
struct Ceilings {
    std::vector<double> limit = {};    ///< for each node
    std::vector<double> ceiling = {};  ///< for each node
    /// For each node the pressure-opened edge, the first on its way out, that makes its limit; none
    /// where no such valve does.
    std::vector<Index> limited_by = {};
    Search drive = {};  ///< ways by which the ceilings were handed on; `way` alone
    /// Of the charge line where it enters the sides; infinite where nothing limits it, 0 where none
    /// does.
    double charge = 0.0;
};

/// What a reduced passage hands on at most, Pa; NaN where that is not given, infinite where it is
/// not limited.
double reduced_to(const Circuit& circuit, const Edge& way);

/// Whether a setting of this passage is missing that ceilings hang on.
bool has_unknown_setting(const Circuit& circuit, const Edge& edge);

Ceilings find_ceilings(const Situation& situation, const CeilingCase& one);

/// The pressure at the inlet of each of some relief valves (their edges) at its full flow, Pa:
/// its own, or its setting, over what it discharges against, unless its spring chamber is drained
/// apart. No side is taken for high: the one that it discharges into is not while its own is.
/// Infinite where nothing limits what it discharges against.
std::vector<double> find_full_pressures(const Situation& situation, const CeilingCase& one,
                                        std::span<const Index> reliefs);

}  // namespace loopwright
