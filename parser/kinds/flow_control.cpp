#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr When with_check = {"check", "yes"};

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "B", .use = PortUse::outlet, .doc = "outlet"},
};

constexpr AttributeSpec attributes[] = {
    positive("flow", Dimension::flow, "flow that it keeps"),
    pressure("pressure-drop", "least pressure drop at which it keeps it"),
    yes_no("adjustable", "whether the flow can be changed on the machine", "yes"),
    yes_no("check", "whether a check beside it lets oil from B to A"),
    check_spring(),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::metering},
    {.from = "B",
     .to = "A",
     .passage = PassageClass::one_way,
     .opening = "check-opening-pressure",
     .when = with_check},
};

constexpr FailureMode failures[] = {
    {.id = "stuck-open", .doc = "does not keep the flow down"},
    {.id = "clogged", .doc = "lets no oil through"},
};

}  // namespace

extern constinit const Kind flow_control{
    .name = "flow-control",
    .title = "flow control",
    .doc = "Keeps the flow from A to B whatever the pressures are.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
