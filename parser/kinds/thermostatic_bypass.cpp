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

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::element, .both_ways = true},
    {.from = "A", .to = "C", .passage = PassageClass::element, .both_ways = true},
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
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
