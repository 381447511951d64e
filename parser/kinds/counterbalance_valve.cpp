#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "towards the pump"},
    {.letter = "B", .use = PortUse::outlet, .doc = "towards the actuator"},
    {.letter = "X", .use = PortUse::pilot, .when = external_pilot, .doc = "pilot"},
    {.letter = "Y",
     .use = PortUse::drain,
     .when = external_drain,
     .doc = "drain of the spring chamber"},
};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "opening pressure at B, counted over the spring chamber"),
    tolerance,
    adjustable,
    choice("pilot", pilot_sources, "external",
           "external: X opens it, too; internal: the load's pressure alone"),
    like("3", positive("pilot-ratio", Dimension::ratio, "pilot area over relief area")),
    choice("drain", drains, "internal",
           "where the spring chamber opens: internal to A, external to Y"),
    check_spring(),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::one_way, .opening = "check-opening-pressure"},
    {.from = "B",
     .to = "A",
     .passage = PassageClass::pressure_opened,
     .opening = "setting",
     .spring_chamber = "Y"},
    {.from = "B",
     .to = "A",
     .passage = PassageClass::switched,
     .shift = Shift::pilot_opens,
     .pilot = "X",
     .when = external_pilot},
};

}  // namespace

extern constinit const Kind counterbalance_valve{
    .name = "counterbalance-valve",
    .title = "counterbalance valve",
    .doc =
        "Free flow from A to B. Back from B to A it opens at its setting, or while the pilot at X "
        "is high, so that a load does not run away.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = setting_failures};

}  // namespace loopwright
