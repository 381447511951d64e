#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    choice("position", hand_positions, "closed", "how it stands, and is drawn"),
    locked,
    position_switch,
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::hand},
};

constexpr FailureMode failures[] = {
    {.id = "left-open", .doc = "joins the sides while the machine drives"},
    {.id = "left-closed", .doc = "stays shut while the machine is towed"},
};

}  // namespace

extern constinit const Kind bypass_valve{
    .name = "bypass-valve",
    .title = "bypass valve",
    .doc =
        "Joins the sides of a loop by hand, as for towing. Closed unless the file says otherwise.",
    .for_towing = true,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
