#pragma once

#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/render/roles.h>
#include <loopwright/render/sketch.h>

/// Placing: every part of the sketch gets its attitude and its place, by the convention of the
/// trade. A loop is a block of columns between its two working lines (place_loop.cpp); what is no
/// loop follows the flow from the bottom up (place_flow.cpp); blocks stand below one another
/// (place.cpp).
namespace loopwright {

/// Room that placing leaves for lines, whole modules; enlarged until everything can be routed.
struct Spacing {
    int column = 3;  ///< between neighbours in a row
    int row = 3;     ///< between a symbol and the level line that it hangs on
    int stack = 2;   ///< between symbols that stand on one another
    int spread = 1;  ///< distances between symbols are multiplied by it
    /// Choices that only a routing can judge, tried one after the other.
    bool drains_below = false;  ///< joined drains below the drain chain instead of above
    bool mirror_pumps = true;   ///< case ports to the outside
    bool mirror_actuators = false;
};

/// Parts that are placed together. Coordinates are the block's own until `arrange`.
struct Block {
    std::vector<int> parts = {};  ///< without hung marks
    int loop = -1;
    int axis_x = 0;  ///< of the first pump, where blocks are lined up
};

/// Names the block of each part: first the loops in their order, then the connected open parts.
std::vector<Block> blocks_of(const Sketch& sketch, const Roles& roles, const Structure& structure);

/// Places the parts of a loop's block; adds level stretches to the sketch's nets.
void place_loop(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing);

/// Places the parts of a block that holds no loop.
void place_flow(Sketch& sketch, const Roles& roles, Block& block, const Spacing& spacing);

/// Everything: blocks, their parts, and the blocks below one another in `columns` columns.
void place(Sketch& sketch, const Roles& roles, const Structure& structure, const Spacing& spacing,
           int columns);

/// Which way a port should look; `any` where it does not matter.
struct PortWish {
    int anchor = -1;
    Side side = Side::up;
    int weight = 1;
};

/// Turns the part so that the wishes are met best; ties go to the attitude at rest. Machines with
/// a shaft keep it level.
void turn_to_wishes(Sketch& sketch, int part, const std::vector<PortWish>& wishes);

/// Turns what stands on a shaft so that its first end comes first in its train.
void turn_on_shaft(Sketch& sketch, const Roles& roles, int part);

/// Chooses where the label of a placed part is meant to stand, by its kind and attitude.
void plan_label(Sketch& sketch, int part, PartRole role);

/// The places that a label may take beside its symbol, best first, relative to its origin.
std::vector<Box> label_places(const SketchPart& part, PartRole role);

}  // namespace loopwright
