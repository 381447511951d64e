#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "working port; oil in at A turns it clockwise, seen at its shaft end"},
    {.letter = "B", .doc = "working port"},
};

constexpr AttributeSpec attributes[] = {
    positive("displacement", Dimension::displacement, "as for a whole turn"),
    positive("angle", Dimension::angle, "from one stop to the other"),
    yes_no("cushion", "whether it is slowed before its stops"),
    pressure("rated-pressure", "pressure for continuous work"),
    pressure("max-pressure", "highest pressure at a working port"),
    pressure("peak-pressure", "highest pressure in short peaks"),
    pressure("burst-pressure", "pressure at which it bursts"),
    positive("max-torque", Dimension::torque, "highest torque of its shaft end"),
    share("volumetric-efficiency", "at rated pressure"),
    share("torque-efficiency", "at rated pressure"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::displacement, .both_ways = true},
    {.from = "A", .to = "B", .passage = PassageClass::leakage, .both_ways = true},
};

constexpr FailureMode failures[] = {
    {.id = "seized", .doc = "the shaft does not turn"},
    {.id = "worn", .doc = "oil gets past the vane or piston, and it drifts under load"},
};

}  // namespace

extern constinit const Kind semi_rotary_actuator{
    .name = "semi-rotary-actuator",
    .title = "semi-rotary actuator",
    .doc = "Turns a shaft to and fro through part of a turn, or a few turns.",
    .part = Part::actuator,
    .turns = true,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
