#pragma once

#include <loopwright/graph/situation.h>

namespace loopwright {

/// A pump's ends by its flow; none where it has no flow.
struct PumpFlow {
    Index inlet = none;   ///< node
    Index outlet = none;  ///< node
};

/// A one-way pump delivers where it turns ahead, whatever the direction; a two-way one as the
/// direction says, unless its loop stands by.
PumpFlow flow_of(const Situation& s, Index edge, Direction direction);

}  // namespace loopwright
