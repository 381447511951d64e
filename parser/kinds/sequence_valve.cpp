#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr When with_check = {"check", "yes"};

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "A", .use = PortUse::outlet, .doc = "outlet"},
    {.letter = "X", .use = PortUse::pilot, .when = external_pilot, .doc = "pilot"},
    {.letter = "Y",
     .use = PortUse::drain,
     .when = external_drain,
     .doc = "drain of the spring chamber"},
};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "opening pressure, counted over the spring chamber"),
    tolerance,
    adjustable,
    choice("pilot", pilot_sources, "internal", "internal: opened by P; external: opened by X"),
    choice("drain", drains, "external",
           "where the spring chamber opens: external to Y, internal to A"),
    yes_no("check", "whether a check beside it lets oil from A to P"),
    check_spring(),
};

constexpr PassageSpec passages[] = {
    {.from = "P",
     .to = "A",
     .passage = PassageClass::pressure_opened,
     .opening = "setting",
     .spring_chamber = "Y",
     .when = internal_pilot},
    {.from = "P",
     .to = "A",
     .passage = PassageClass::switched,
     .shift = Shift::pilot_unloads,
     .opening = "setting",
     .pilot = "X",
     .spring_chamber = "Y",
     .when = external_pilot},
    {.from = "A",
     .to = "P",
     .passage = PassageClass::one_way,
     .opening = "check-opening-pressure",
     .when = with_check},
};

}  // namespace

extern constinit const Kind sequence_valve{
    .name = "sequence-valve",
    .title = "sequence valve",
    .doc =
        "Opens from P to A once the pressure at P, or at X where it is piloted from there, reaches "
        "the setting. Its spring chamber drains outside.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = setting_failures};

}  // namespace loopwright
