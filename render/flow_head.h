#pragma once

#include <optional>
#include <span>

#include <loopwright/render/label_room.h>
#include <loopwright/render/place_values.h>

namespace loopwright {

inline constexpr int flow_head_half = 2;  ///< quarter modules, of its length

/// A head for a line's flow on the first of the runs (each from where the oil comes) that has room
/// for one, as near to its middle as may be: clear of all but its own run.
std::optional<FlowArrow> flow_head_on(Index line, std::span<const StraightRun> runs,
                                      const Layout& layout, const LabelRoom& room);

}  // namespace loopwright
