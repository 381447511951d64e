#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    positive("bore", Dimension::length, "diameter of the hole"),
    positive("flow", Dimension::flow, "flow that it passes at the pressure drop given"),
    positive("pressure-drop", Dimension::pressure, "pressure drop at that flow"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::metering, .both_ways = true},
};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "lets no oil through"},
};

}  // namespace

extern constinit const Kind orifice{
    .name = "orifice",
    .title = "orifice",
    .doc = "Sharp-edged restriction: what it passes hangs little on viscosity.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
