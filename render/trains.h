#pragma once

#include <vector>

#include <loopwright/render/sketch.h>

/// What hangs together by shafts, gearboxes and clutches, in the order in which a draughtsman
/// stands it on the axis.
namespace loopwright {

/// A part of a train.
struct TrainPart {
    int part = -1;
    bool backwards = false;  ///< its second end comes first: to be mirrored
    Index shaft = none;      ///< the one behind it where it has two ends, else the one it is on
};

/// Left to right: prime movers first, or else actuators; then what is on their shaft, loads last;
/// then, behind gearboxes and clutches, what is on the next ones.
using Train = std::vector<TrainPart>;

/// All trains of the circuit; clutches count as engaged.
std::vector<Train> trains_of(const Sketch& sketch);

}  // namespace loopwright
