#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "B", .use = PortUse::outlet, .doc = "outlet"},
};

constexpr AttributeSpec attributes[] = {
    like("125 um", positive("fineness", Dimension::length, "width of its mesh")),
    pressure("bypass", "opening pressure of the bypass; not given: it has none"),
    rated_flow,
    clean_drop,
    drop_viscosity,
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::element, .both_ways = true},
    {.from = "A",
     .to = "B",
     .passage = PassageClass::pressure_opened,
     .opening = "bypass",
     .needs_opening = true},
};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "starves the pump behind it"},
};

}  // namespace

extern constinit const Kind strainer{
    .name = "strainer",
    .title = "strainer",
    .doc = "Coarse mesh in a suction line. It never counts as a filter.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
