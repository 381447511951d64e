#pragma once

#include <cstddef>

#include <loopwright/hydraulics/dual.h>

namespace loopwright::hydraulics {

/// What laws of passive parts hang on: flow in m3/s from inlet to outlet (negative: back), or
/// pressure drop in Pa, and the oil's kinematic viscosity in m2/s; derivatives stand in that order.
struct ThroughFlow {
    enum Variable : std::size_t { flow, drop = flow, viscosity };
    static constexpr std::size_t count = 2;
    using Figure = Dual<count>;
};

}  // namespace loopwright::hydraulics
