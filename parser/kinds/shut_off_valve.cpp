#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    choice("position", hand_positions, "open", "how it stands, and is drawn"),
    locked,
    position_switch,
    positive("bore", Dimension::length, "diameter of its way when open"),
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::hand},
};

constexpr FailureMode failures[] = {
    {.id = "left-closed", .doc = "stands closed where it should be open"},
    {.id = "left-open", .doc = "stands open where it should be closed"},
};

}  // namespace

extern constinit const Kind shut_off_valve{
    .name = "shut-off-valve",
    .title = "shut-off valve",
    .doc = "Valve opened and closed by hand. Unless it is locked, somebody can turn it.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
