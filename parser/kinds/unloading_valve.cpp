#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "T", .use = PortUse::outlet, .doc = "outlet"},
    {.letter = "X", .use = PortUse::pilot, .doc = "pilot"},
    {.letter = "Y",
     .use = PortUse::drain,
     .when = external_drain,
     .doc = "drain of the spring chamber"},
};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "pressure at X that opens it, counted over the spring chamber"),
    tolerance,
    adjustable,
    choice("drain", drains, "internal",
           "where the spring chamber opens: internal to T, external to Y"),
};

constexpr PassageSpec passages[] = {
    {.from = "P",
     .to = "T",
     .passage = PassageClass::switched,
     .shift = Shift::pilot_unloads,
     .opening = "setting",
     .pilot = "X",
     .spring_chamber = "Y"},
};

}  // namespace

extern constinit const Kind unloading_valve{
    .name = "unloading-valve",
    .title = "unloading valve",
    .doc = "Lets oil from P to T while the pressure at X is at or above its setting.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = setting_failures};

}  // namespace loopwright
