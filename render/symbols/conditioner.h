#pragma once

#include <loopwright/render/symbols/strokes.h>

/// What the symbols of filters and coolers share: the diamond with its stubs, the bypass branch,
/// the check of an element that may be passed one way only.
namespace loopwright {

/// Where the strokes of a conditioner end on the axis; A is on the left.
struct ConditionerAxis {
    double outlet = 0.0;  ///< x where the line leaves the diamond, or the check behind it
    double branch = 0.0;  ///< x where the bypass comes back; 0: it has none
    double port = 0.0;    ///< x of port B
};
ConditionerAxis draw_conditioner(Strokes& strokes, bool bypass, bool one_way);

}  // namespace loopwright
