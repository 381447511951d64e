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
    pressure("tolerance", "how far the setting may be off, either way"),
    yes_no("adjustable", "whether the setting can be changed on the machine", "yes"),
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

constexpr FailureMode failures[] = {
    {.id = "stuck-open", .doc = "holds no pressure"},
    {.id = "stuck-closed", .doc = "does not open at its setting"},
    {.id = "set-high", .doc = "opens too late"},
    {.id = "set-low", .doc = "opens too early"},
};

}  // namespace

extern constinit const Kind unloading_valve{
    .name = "unloading-valve",
    .title = "unloading valve",
    .doc = "Lets oil from P to T while the pressure at X is at or above its setting.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
