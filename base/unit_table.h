#pragma once

#include <array>
#include <span>

#include <loopwright/base/unit_text.h>

namespace loopwright {

/// The table's spellings by dimension, in each the one first that the program prints.
extern const std::array<std::span<const Unit>, dimension_count> units_by_dimension;

/// Those of one dimension. Here, since every quantity of a circuit asks for it.
inline std::span<const Unit> units_of(Dimension dimension) {
    return units_by_dimension[static_cast<std::size_t>(dimension)];
}

}  // namespace loopwright
