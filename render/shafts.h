#pragma once

#include <vector>

#include <loopwright/render/route.h>
#include <loopwright/render/sketch.h>

namespace loopwright {

/// A piece of a shaft between machines, to be routed like a net: ends are the shaft stubs. A
/// machine that is driven through has its left stub in one piece and its right stub in another.
struct ShaftNet {
    Index shaft = none;
    RouteNet net = {};
};

struct RoutedShaft {
    Index shaft = none;
    std::vector<Run> runs = {};
};

/// Joins the machines of every shaft by the shortest pieces between facing stubs.
std::vector<ShaftNet> shaft_nets(const Circuit& circuit, const Sketch& sketch);

}  // namespace loopwright
