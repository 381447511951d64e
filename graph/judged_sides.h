#pragma once

#include <span>
#include <vector>

#include <loopwright/graph/sections.h>
#include <loopwright/graph/situation.h>

namespace loopwright {

/// The sides that rules ask about in a situation whose other members are worked out: those of its
/// loops, and the sections of the loops known that hold pressure, by loop.
void find_judged_sides(const Situation& situation, std::span<const Section> sections,
                       std::span<const KnownLoop> known, std::vector<JudgedSide>& sides);

}  // namespace loopwright
