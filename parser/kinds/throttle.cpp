#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    yes_no("adjustable", "whether it can be changed on the machine", "yes"),
    positive("bore", Dimension::length, "diameter of its way"),
    positive("length", Dimension::length, "length of its way"),
    positive("flow", Dimension::flow, "flow that it passes at the pressure drop given"),
    positive("pressure-drop", Dimension::pressure, "pressure drop at that flow"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::metering, .both_ways = true},
};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "lets no oil through"},
    {.id = "set-wide", .doc = "restricts too little"},
};

}  // namespace

extern constinit const Kind throttle{
    .name = "throttle",
    .title = "throttle",
    .doc =
        "Restriction with a length, so that what it passes hangs on viscosity; often adjustable.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
