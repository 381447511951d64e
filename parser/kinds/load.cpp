#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec attributes[] = {
    {.name = "torque",
     .type = AttributeType::quantity,
     .dimension = Dimension::torque,
     .least = -1e300,
     .doc = "torque that the load takes; negative where it drives"},
    yes_no("overrunning", "whether the load can drive its motor (a grade, a hoist)"),
};

}  // namespace

extern constinit const Kind load{.name = "load",
                                 .title = "load",
                                 .doc = "What an actuator moves: an axle, a drum, a mixer.",
                                 .part = Part::load,
                                 .turns = true,
                                 .attributes = attributes};

}  // namespace loopwright
