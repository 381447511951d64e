#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "B", .use = PortUse::outlet, .doc = "to the cooler"},
    {.letter = "C", .use = PortUse::outlet, .doc = "past the cooler"},
};

constexpr AttributeSpec attributes[] = {
    {.name = "opens-at",
     .type = AttributeType::quantity,
     .dimension = Dimension::temperature,
     .doc = "oil temperature at which it begins to lead oil to the cooler"},
    {.name = "open-at",
     .type = AttributeType::quantity,
     .dimension = Dimension::temperature,
     .doc = "oil temperature at which all oil goes to the cooler"},
};

// The oil's temperature moves it in every state, so it rests in both and each is asked.
constexpr PositionSpec positions[] = {{.id = "cold", .rest = true}, {.id = "warm", .rest = true}};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "C",
     .passage = PassageClass::element,
     .both_ways = true,
     .shift = Shift::position,
     .position = "cold"},
    {.from = "A",
     .to = "B",
     .passage = PassageClass::element,
     .both_ways = true,
     .shift = Shift::position,
     .position = "warm"},
};

constexpr FailureMode failures[] = {
    {.id = "stuck-cold", .doc = "leads no oil to the cooler"},
    {.id = "stuck-warm", .doc = "leads all oil to the cooler"},
};

}  // namespace

extern constinit const Kind thermostatic_bypass{
    .name = "thermostatic-bypass",
    .title = "thermostatic bypass",
    .doc = "Leads cold oil from A past the cooler to C and warm oil to the cooler at B.",
    .ports = ports,
    .attributes = attributes,
    .positions = positions,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
