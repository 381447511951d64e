#pragma once

#include <span>

#include <loopwright/base/unit_text.h>

namespace loopwright {

/// The table's spellings of a dimension, the one that the program prints first.
std::span<const Unit> units_of(Dimension dimension);

}  // namespace loopwright
