#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr When sensing = {"load-sensing", "yes"};

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "CF", .use = PortUse::outlet, .doc = "priority outlet"},
    {.letter = "EF", .use = PortUse::outlet, .doc = "other outlet"},
    {.letter = "LS", .use = PortUse::pilot, .when = sensing, .doc = "load-sensing pilot"},
};

constexpr AttributeSpec attributes[] = {
    positive("priority-flow", Dimension::flow, "flow that CF gets first"),
    pressure("setting", "pressure that its spring holds against CF"),
    yes_no("load-sensing", "whether a pilot LS asks for the priority flow"),
};

constexpr PassageSpec passages[] = {
    {.from = "P", .to = "CF", .passage = PassageClass::reduced},
    {.from = "P", .to = "EF", .passage = PassageClass::pressure_opened, .opening = "setting"},
};

constexpr FailureMode failures[] = {
    {.id = "stuck-priority", .doc = "gives all oil to CF"},
    {.id = "stuck-other", .doc = "gives CF none"},
};

}  // namespace

extern constinit const Kind priority_valve{
    .name = "priority-valve",
    .title = "priority valve",
    .doc = "Serves the priority outlet CF first; what is left goes to EF.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
