#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    yes_no("adjustable", "whether it can be changed on the machine", "yes"),
    check_spring(),
    positive("flow", Dimension::flow, "flow that it passes at the pressure drop given"),
    positive("pressure-drop", Dimension::pressure, "pressure drop at that flow"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::metering, .both_ways = true},
    {.from = "B", .to = "A", .passage = PassageClass::one_way, .opening = "check-opening-pressure"},
};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "does not let oil from A to B"},
    {.id = "check-stuck-closed", .doc = "throttles back as well"},
    {.id = "check-stuck-open", .doc = "throttles nothing"},
};

}  // namespace

extern constinit const Kind throttle_check{.name = "throttle-check",
                                           .title = "throttle with check",
                                           .doc = "Throttles from A to B and lets oil back freely.",
                                           .ports = ports,
                                           .attributes = attributes,
                                           .passages = passages,
                                           .failures = failures};

}  // namespace loopwright
