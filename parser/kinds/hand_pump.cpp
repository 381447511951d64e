#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "S", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "P", .use = PortUse::outlet, .doc = "outlet"},
};

constexpr AttributeSpec attributes[] = {
    positive("volume", Dimension::volume, "what one stroke of the lever delivers"),
    pressure("max-pressure", "highest pressure at its outlet"),
};

constexpr PassageSpec passages[] = {
    {.from = "S", .to = "P", .passage = PassageClass::displacement},
};

constexpr FailureMode failures[] = {
    {.id = "worn", .doc = "delivers nothing (inlet check or piston leaks)"},
};

}  // namespace

extern constinit const Kind hand_pump{
    .name = "hand-pump",
    .title = "hand pump",
    .doc = "Pump worked by a lever, as to release a brake for towing. It delivers in towing only.",
    .part = Part::hand_pump,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
